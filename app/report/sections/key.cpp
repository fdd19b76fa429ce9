// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

/// A mark with its word, and what it means.
struct Meaning {
    Mark mark;
    Role ink;
    QString word;
    QString said;
};

void writeMeanings(const Composing& composing, Flow& flow, const std::vector<Meaning>& meanings) {
    const Table table(composing.type, {{44 * mm, {}}, {130 * mm, {}}});
    flow.openTable({});
    for (const Meaning& meaning : meanings)
        flow.row(table.row({{marked(composing.type, meaning.mark, meaning.ink, meaning.word,
                                    style::cellStrong, table.room(0))},
                            table.text(1, meaning.said)}));
    flow.closeTable();
}

void writeGrades(const Composing& composing, Flow& flow) {
    const std::array<std::pair<Grade, QString>, 4> grades{{
        {Grade::MakeSafe, QCoreApplication::translate(
                              "Report", "A danger now. Do not leave it energised until it is put right.")},
        {Grade::PutRight, QCoreApplication::translate(
                              "Report", "It could become a danger. Have it put right by the date given.")},
        {Grade::LookFurther,
         QCoreApplication::translate("Report",
                                     "It could not be decided. Have it looked into by the date given.")},
        {Grade::WorthImproving,
         QCoreApplication::translate("Report", "No danger. Below what would be done today.")},
    }};
    std::vector<Meaning> meanings;
    for (const auto& [grade, said] : grades) {
        const QString label = composing.input.officeLabels[static_cast<std::size_t>(grade)];
        const QString local =
            label.isEmpty() ? QString()
                            : QCoreApplication::translate("Report", " The local scheme says: %1.").arg(label);
        meanings.push_back(
            {markOf(grade), inkOf(grade), composing.input.words.word(wordKey(grade)), said + local});
    }
    writeMeanings(composing, flow, meanings);
    flow.add(composing.type.paragraph(
                 QCoreApplication::translate(
                     "Report", "Any of the first three makes the installation not fit to stay in service as "
                               "it is, and so does a check that fails."),
                 style::cellSoft, sheetOf(PageForm::Portrait).width),
             2 * mm);
}

void writeVerdicts(const Composing& composing, Flow& flow) {
    const std::array<std::pair<Verdict, QString>, 5> verdicts{{
        {Verdict::Fails, QCoreApplication::translate(
                             "Report", "The limit is passed. The working shows reading, limit and rule.")},
        {Verdict::CannotTell,
         QCoreApplication::translate("Report",
                                     "Something that the check needs is missing; the list says what.")},
        {Verdict::Close, QCoreApplication::translate(
                             "Report", "It holds with little to spare, or it passes a figure that is only "
                                       "advice. Look at it before the next visit.")},
        {Verdict::Holds, QCoreApplication::translate("Report", "The limit is kept.")},
        {Verdict::DoesNotApply,
         QCoreApplication::translate("Report", "There is nothing here that the check could be about.")},
    }};
    std::vector<Meaning> meanings;
    meanings.reserve(verdicts.size());
    for (const auto& [verdict, said] : verdicts)
        meanings.push_back(
            {markOf(verdict), inkOf(verdict), composing.input.words.word(wordKey(verdict)), said});
    writeMeanings(composing, flow, meanings);
    flow.add(composing.type.paragraph(
                 QCoreApplication::translate(
                     "Report", "Where “(from memory)” stands after a source, the figure or clause was not "
                               "compared with the printed standard."),
                 style::cellSoft, sheetOf(PageForm::Portrait).width),
             2 * mm);
}

void writeCautions(const Composing& composing, Flow& flow) {
    const std::array cautions{
        QCoreApplication::translate(
            "Report",
            "This report shows the installation as it was on the days of the visit, as far as it was "
            "looked at. What changed since is not in it."),
        QCoreApplication::translate(
            "Report", "Work on it only when it is isolated, locked off and proved dead, with an instrument "
                      "that was itself proved before and after."),
        QCoreApplication::translate(
            "Report", "Only people who are competent and licensed for it where the law asks for that may "
                      "put right what is listed here."),
        QCoreApplication::translate(
            "Report", "The checks compare what was recorded with published limits. They do not replace the "
                      "judgement of the person who inspects: local codes and licensed practice decide."),
        QCoreApplication::translate(
            "Report", "A device that has not operated does not prove that a circuit is not overloaded."),
    };
    const Table table(composing.type, {{174 * mm, {}}});
    flow.openTable({});
    for (const QString& caution : cautions)
        flow.row(table.row({table.text(0, caution, style::body)}));
    flow.closeTable();
}

} // namespace

void writeKey(const Composing& composing, Flow& flow) {
    const QString title = QCoreApplication::translate("Report", "Cautions, and what the marks mean");
    flow.section(title, PageForm::Portrait);
    flow.startPage();
    writeTitle(composing, flow, title);
    writeCautions(composing, flow);
    writeSubject(composing, flow, QCoreApplication::translate("Report", "Grades of observations"));
    writeGrades(composing, flow);
    writeSubject(composing, flow, QCoreApplication::translate("Report", "What a check says"));
    writeVerdicts(composing, flow);
}

} // namespace loopwright::report
