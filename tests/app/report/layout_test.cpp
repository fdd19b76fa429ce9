// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/report/proof.h"
#include "tests/app/report/sites.h"

#include "app/report/places.h"
#include "forms/words/working_text.h"

#include <gtest/gtest.h>

#include <algorithm>

#include <QRegularExpression>

namespace loopwright::test {
namespace {

class ReportLayout : public testing::TestWithParam<const char*> {
  protected:
    ReportedSite site = std::string_view(GetParam()) == "small"   ? smallSite()
                        : std::string_view(GetParam()) == "empty" ? emptySite()
                        : std::string_view(GetParam()) == "nasty" ? nastySite()
                                                                  : demoSite();
    Report report = site.report();
};

INSTANTIATE_TEST_SUITE_P(Sites, ReportLayout, testing::Values("small", "empty", "nasty", "demo"),
                         [](const auto& tested) { return std::string(tested.param); });

/// What a text looks like when lines may have been broken anywhere.
QString withoutSpaces(QString said) {
    said.removeIf([](QChar character) { return character.isSpace(); });
    return said;
}

TEST_P(ReportLayout, cutsNoTextAndLaysNoneOverAnother) {
    const QStringList faults = faultsIn(report);
    EXPECT_TRUE(faults.isEmpty()) << faults.mid(0, 12).join(u'\n').toStdString() << "\n"
                                  << faults.size() << " in all";
}

TEST_P(ReportLayout, numbersEachPage) {
    for (std::size_t page = 0; page < report.pages.size(); ++page) {
        const QString number = QStringLiteral("%1 of %2").arg(page + 1).arg(report.pages.size());
        EXPECT_TRUE(textOf(report.pages[page]).contains(number)) << number.toStdString();
    }
}

TEST_P(ReportLayout, hasNoPageWithNothingButItsHeads) {
    constexpr qsizetype headsAlone = 6; // site, section, days, standing twice, printed, rules, number
    for (std::size_t page = 0; page < report.pages.size(); ++page)
        EXPECT_GT(saidOn(report.pages[page]).size(), headsAlone + 2)
            << "page " << page + 1 << ": " << textOf(report.pages[page]).toStdString();
}

TEST_P(ReportLayout, leavesNoTitleAloneAtTheFootOfAPage) {
    for (std::size_t index = 0; index < report.pages.size(); ++index) {
        const Report::Page& page = report.pages[index];
        double title = 0;
        double below = 0;
        for (const report::Ink& ink : page.inks) {
            const auto* said = std::get_if<report::TextInk>(&ink);
            if (!said || said->style.role == PageText::Foot) continue;
            const bool isTitle =
                said->style.role == PageText::WorkingTitle || said->style.role == PageText::Subject;
            double& lowest = isTitle ? title : below;
            lowest = std::max(lowest, said->place.bottom());
        }
        EXPECT_LE(title, below) << "page " << index + 1;
    }
}

TEST_P(ReportLayout, namesEveryCircuitOnASchedule) {
    QString schedules;
    for (const Report::Page& page : report.pages)
        if (page.form == report::PageForm::Landscape) schedules += textOf(page);
    schedules = withoutSpaces(schedules);
    for (const Circuit& circuit : site.installation.circuits)
        EXPECT_TRUE(schedules.contains(withoutSpaces(text(circuit.name)))) << circuit.name;
}

TEST_P(ReportLayout, tellsEveryFailureWithItsWorking) {
    const QString all = withoutSpaces(textOf(report));
    for (const Finding& finding : site.assessment().findings) {
        if (finding.verdict != Verdict::Fails && finding.verdict != Verdict::Close) continue;
        QString said = withoutSpaces(findingText(finding, site.words()));
        EXPECT_TRUE(all.contains(said)) << said.toStdString();
    }
}

TEST_P(ReportLayout, tellsEveryObservation) {
    const QString all = withoutSpaces(textOf(report));
    for (const Observation* observation : report::observationsOf(site.input())) {
        // A card that is higher than a page goes on in another frame, so only its beginning is sure to be in
        // one piece.
        EXPECT_TRUE(all.contains(withoutSpaces(text(observation->text)).left(400)))
            << observation->text.substr(0, 80);
        if (!observation->putRight) {
            EXPECT_TRUE(all.contains(withoutSpaces(text(observation->action)))) << observation->action;
        }
    }
}

TEST_P(ReportLayout, leavesNoPlaceholder) {
    const QString all = textOf(report);
    for (const QString& left :
         {QStringLiteral("%1"), QStringLiteral("%2"), QStringLiteral("{0}"), QStringLiteral("{1}"),
          QStringLiteral("check."), QStringLiteral("field."), QStringLiteral("choice.")})
        EXPECT_FALSE(all.contains(left))
            << left.toStdString() << " … "
            << all.mid(std::max<qsizetype>(0, all.indexOf(left) - 40), 100).toStdString();
}

TEST_P(ReportLayout, keepsTwentyCircuitsAPageAtMost) {
    for (std::size_t page = 0; page < report.pages.size(); ++page) {
        int marks = 0; // one a row in the last column
        for (const report::Ink& ink : report.pages[page].inks)
            if (const auto* mark = std::get_if<report::MarkInk>(&ink))
                marks += mark->place.left() > 260 * report::mm ? 1 : 0;
        EXPECT_LE(marks, 20) << "page " << page + 1;
    }
}

/// Everything between the margins, "Page 7" first of all, is where the reader is sent.
TEST(ReportReferences, leadToTheRightPage) {
    int references = 0;
    for (ReportedSite site : {smallSite(), nastySite(), demoSite()}) {
        const Report report = site.report();
        const QString all = textOf(report);
        for (const Finding& finding : site.assessment().findings) {
            if (finding.verdict != Verdict::Fails) continue;
            const QString said = findingText(finding, site.words());
            static const QRegularExpression reference(QStringLiteral("Page\u00A0(\\d+)\\."));
            const QString sending = said + QStringLiteral(" Page\u00A0");
            for (qsizetype at = all.indexOf(sending); at >= 0; at = all.indexOf(sending, at + 1)) {
                ++references;
                const int page = reference.match(all, at + said.size()).captured(1).toInt();
                ASSERT_GT(page, 0);
                ASSERT_LE(page, static_cast<int>(report.pages.size()));
                const QString there = textOf(report.pages[static_cast<std::size_t>(page - 1)]);
                EXPECT_TRUE(there.contains(said))
                    << "page " << page << " does not say: " << said.toStdString();
                EXPECT_TRUE(std::ranges::any_of(site.assessment().findings,
                                                [&](const Finding& same) {
                                                    return findingText(same, site.words()) == said &&
                                                           there.contains(checkName(same, site.words()));
                                                }))
                    << "page " << page << " names no check that says: " << said.toStdString();
            }
        }
    }
    EXPECT_GT(references, 10) << "nothing was tested";
}

TEST(ReportReferences, sendPageOneToTheCards) {
    ReportedSite site = smallSite();
    const Report report = site.report();
    EXPECT_TRUE(textOf(report.pages[0])
                    .contains(QStringLiteral("Board B, way\u00A0F1. The fuse carrier is charred. Page 3.")))
        << textOf(report.pages[0]).toStdString();
    EXPECT_TRUE(textOf(report.pages[2]).contains(QStringLiteral("The fuse carrier is charred.")));
    const int undecided = pageThatSays(report, QStringLiteral("What could not be decided"));
    EXPECT_TRUE(saidOn(report.pages[0]).contains(QStringLiteral("page %1").arg(undecided)))
        << undecided << ": " << saidOn(report.pages[0]).join(u'|').toStdString();
}

TEST(ReportPageOne, saysWhatMustBeDone) {
    ReportedSite site = smallSite();
    const QString first = textOf(site.report().pages[0]);
    for (const QString& said :
         {QStringLiteral("Not fit to stay in service as it is."), QStringLiteral("One danger was found."),
          QStringLiteral("Keep the kiln circuit isolated until it is rewired."),
          QStringLiteral("4 more checks that fail."), QStringLiteral("2 of 2"), QStringLiteral("5 of 7"),
          QStringLiteral("36 of 52"), QStringLiteral("could not be taken 1"),
          QStringLiteral("Inspector 2, 11 March 2026"), QStringLiteral("Not issued"),
          QStringLiteral("Visit 9 to 11 March 2026"), QStringLiteral("Printed 16 March 2026"),
          QStringLiteral("Judged by bs-7671-2018")})
        EXPECT_TRUE(first.contains(said)) << said.toStdString() << "\n in " << first.toStdString();
}

TEST(ReportPageOne, tellsADangerThatWasPutRightFromOneThatRemains) {
    ReportedSite site = smallSite();
    site.installation.observations.push_back({.id = SequentialIds(1000).next(),
                                              .visit = site.visit,
                                              .grade = Grade::MakeSafe,
                                              .text = "A cover is off.",
                                              .action = "Put it back.",
                                              .putRight = Date{std::chrono::year(2026) / 3 / 9}});
    const QString said = textOf(site.report());
    EXPECT_TRUE(said.contains(QStringLiteral("One danger remains. One danger was put right already.")))
        << said.left(2000).toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("Done on 9\u00A0March\u00A02026 A cover is off.")));
    EXPECT_FALSE(said.contains(QStringLiteral("Put it back."))) << "it asks for nothing any more";
}

TEST(ReportPageOne, holdsWhatTheDemoSiteNeeds) {
    ReportedSite site = demoSite();
    const Report report = site.report();
    EXPECT_TRUE(textOf(report.pages[0]).contains(QStringLiteral("Who says so")));
    EXPECT_TRUE(textOf(report.pages[1]).contains(QStringLiteral("What was covered, and what was not")));
}

TEST(ReportOverloads, sayWhereNoStandardChangeWouldPutItRight) {
    ReportedSite site = demoSite();
    const QString none = QStringLiteral("No standard change was found that makes every check hold");
    EXPECT_FALSE(textOf(site.report()).contains(none)) << "each of the demo has one";
    const auto heater = std::ranges::find(site.installation.circuits, "Heater, bindery", &Circuit::name);
    ASSERT_NE(heater, site.installation.circuits.end());
    heater->use = CircuitUse::Sockets; // its plug stays, and so does the fuse in it
    EXPECT_TRUE(textOf(site.report()).contains(none)) << textOf(site.report()).toStdString();
}

TEST(ReportGrades, printTheOfficesLabelBesideOurs) {
    ReportedSite site = smallSite();
    EXPECT_FALSE(textOf(site.report()).contains(QStringLiteral("Urgent here")));
    site.officeLabels[static_cast<std::size_t>(Grade::MakeSafe)] = QStringLiteral("Urgent here");
    const Report report = site.report();
    EXPECT_TRUE(textOf(report.pages[0]).contains(QStringLiteral("Make safe Urgent here")));
    EXPECT_TRUE(textOf(report.pages[2]).contains(QStringLiteral("Urgent here")));
    EXPECT_TRUE(textOf(report.pages.back()).contains(QStringLiteral("The local scheme says: Urgent here.")));
}

TEST(ReportSchedule, showsWhereFiguresCameFromAndWhatIsMissing) {
    ReportedSite site = smallSite();
    const Report report = site.report();
    const int page = pageThatSays(report, QStringLiteral("Board A, hall cupboard: schedule"));
    const Report::Page& schedule = report.pages[static_cast<std::size_t>(page - 1)];
    EXPECT_TRUE(textOf(schedule).contains(QStringLiteral("‹\u200924"))) << textOf(schedule).toStdString();
    EXPECT_TRUE(textOf(schedule).contains(QStringLiteral("no circuit")));
    const auto corners = std::ranges::count_if(schedule.inks, [](const report::Ink& ink) {
        return std::holds_alternative<report::CornersInk>(ink);
    });
    EXPECT_EQ(corners, 6) << "three ends of the ring, two tests of its residual current device, and the key";
    const int second = pageThatSays(report, QStringLiteral("Board B, workshop: schedule"));
    EXPECT_TRUE(textOf(report.pages[static_cast<std::size_t>(second - 1)])
                    .contains(QStringLiteral("LIM: saw in use")));
}

TEST(ReportSchedule, tellsOnceWhyACircuitWasNotRead) {
    ReportedSite site = smallSite();
    CircuitReading& saw =
        *std::ranges::find_if(site.installation.circuitReadings, [](const CircuitReading& reading) {
            return reading.loopImpedance.state == EntryState::Limited;
        });
    saw.continuity = saw.loopImpedance;
    saw.polarity = TestOutcome::Limited;
    const Report report = site.report();
    const int page = pageThatSays(report, QStringLiteral("Board B, workshop: schedule"));
    const QString said = textOf(report.pages[static_cast<std::size_t>(page - 1)]);
    EXPECT_EQ(said.count(QStringLiteral("saw in use")), 1) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("LIM throughout: saw in use"))) << said.toStdString();

    saw.continuity.reason = "tails too short";
    const QString both = textOf(site.report());
    for (const char* part : {"LIM: saw in use", "LIM: tails too short", "LIM, no reason is recorded"})
        EXPECT_TRUE(both.contains(QString::fromLatin1(part))) << part;
}

TEST(ReportSchedule, explainsOnlyWhatItShows) {
    ReportedSite site = smallSite();
    const Report report = site.report();
    const int page = pageThatSays(report, QStringLiteral("Board A, hall cupboard: schedule"));
    const QString said = textOf(report.pages[static_cast<std::size_t>(page - 1)]);
    EXPECT_TRUE(said.contains(QStringLiteral("not read")));
    EXPECT_FALSE(said.contains(QStringLiteral("could not be read"))) << "everything could";
}

TEST(ReportSchedule, saysWhereAResidualCurrentDeviceIsMissing) {
    ReportedSite site = smallSite();
    const auto saysNone = [&](const Report& report) {
        const int page = pageThatSays(report, QStringLiteral("Board B, workshop: schedule"));
        return saidOn(report.pages[static_cast<std::size_t>(page - 1)]).contains(QStringLiteral("none"));
    };
    EXPECT_FALSE(saysNone(site.report())) << "nothing asks for one";
    std::ranges::find(site.installation.circuits, "Long bench", &Circuit::name)->use = CircuitUse::Sockets;
    EXPECT_TRUE(saysNone(site.report()));
}

TEST(ReportSchedule, keepsItsNotesWithItsRows) {
    ReportedSite site = demoSite();
    const Report report = site.report();
    EXPECT_TRUE(textOf(report).contains(QStringLiteral("Old fuse ways, beside the board")));
    for (const Report::Page& page : report.pages)
        if (page.form == report::PageForm::Landscape) {
            EXPECT_TRUE(textOf(page).contains(QStringLiteral("worst check"))) << textOf(page).toStdString();
        }
}

TEST(ReportSchedule, repeatsItsHeadsOnEveryPage) {
    ReportedSite site = nastySite();
    int pages = 0;
    for (const Report::Page& page : site.report().pages) {
        const QStringList said = saidOn(page);
        if (page.form != report::PageForm::Landscape || !said.contains(QStringLiteral("worst check")))
            continue;
        ++pages;
        EXPECT_TRUE(said.contains(QStringLiteral("Way")));
        EXPECT_TRUE(said.contains(QStringLiteral("~ assumed"))) << "the key stands below each part";
    }
    EXPECT_GE(pages, 3) << "60 circuits, 20 a page";
}

} // namespace
} // namespace loopwright::test
