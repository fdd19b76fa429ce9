// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"
#include "app/report/places.h"
#include "app/report/sections/cards.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double inside = columnWidth - 2 * framePadding;
constexpr double leastRoom = 140 * mm;   ///< for the title and its first cards; with less they begin a page
constexpr double small = 1.2 * mm;       ///< between the parts of a card
constexpr double keptTogether = 50 * mm; ///< what to do, unless there is more of it

class ObservationCard {
  public:
    ObservationCard(const Composing& composing, const Observation& observation)
      : composing_(composing)
      , observation_(observation)
      , place_(placeOf(composing.input.installation, observation)) {}

    Stack make(int number, bool withFindings, int& photoNumber) const {
        Stack stack = head(number);
        append(stack, lines(text(observation_.text), style::strong));
        stack.push_back(gap(small / 2));
        append(stack, lines(fullNameOf(composing_.input.installation, place_), style::cellSoft));
        append(stack, lines(text(observation_.place), style::cellSoft));
        if (withFindings) append(stack, findings());
        append(stack, photos(photoNumber));
        append(stack, whatToDo());
        return stack;
    }

    Box continued(int number) const {
        return composing_.type.line(
            QCoreApplication::translate("Report", "%1, continued").arg(words().number(std::int64_t{number})),
            style::soft, inside, Align::Right);
    }

  private:
    const Words& words() const { return composing_.input.words; }

    Stack lines(const QString& said, const TextStyle& style) const {
        return composing_.type.paragraph(said, style, inside);
    }

    Stack head(int number) const {
        constexpr double numberRoom = 14 * mm;
        const QString word = words().word(wordKey(observation_.grade));
        Box line = marked(composing_.type, markOf(observation_.grade), inkOf(observation_.grade), word,
                          style::strong, inside - numberRoom);
        line.put(
            composing_.type.line(words().number(std::int64_t{number}), style::soft, numberRoom, Align::Right),
            {inside - numberRoom, 0});
        Stack stack{line};
        append(stack, lines(composing_.input.officeLabels[static_cast<std::size_t>(observation_.grade)],
                            style::cellSoft));
        if (observation_.putRight)
            append(stack, lines(QStringLiteral("%1 %2").arg(words().word("field.observation.putRight"),
                                                            words().date(*observation_.putRight)),
                                style::strong));
        stack.push_back(gap(small));
        return stack;
    }

    /// Readings against their limits, each with the page of its working.
    Stack findings() const {
        constexpr double indent = 5 * mm;
        Stack stack;
        for (const Verdict verdict : {Verdict::Fails, Verdict::Close})
            for (const std::size_t index : findingsAt(composing_.input, observation_, verdict)) {
                const Finding& finding = composing_.input.assessment.findings[index];
                const QString page =
                    QCoreApplication::translate("Report", "Page\u00A0%1.")
                        .arg(words().number(std::int64_t{composing_.pageOf(workingAnchor(index))}));
                const QString said = QStringLiteral("%1 %2").arg(findingText(finding, words()), page);
                stack.push_back(gap(small));
                bool isFirst = true;
                for (const Box& line : composing_.type.paragraph(said, style::cell, inside - indent,
                                                                 Align::Left, Notation::Symbols)) {
                    Box indented{inside, line.height, {}};
                    indented.put(line, {indent, 0});
                    const double side = line.height * 0.75;
                    if (isFirst)
                        indented.add(MarkInk{QRectF(0, (line.height - side) / 2, side, side), markOf(verdict),
                                             inkOf(verdict)});
                    isFirst = false;
                    stack.push_back(indented);
                }
            }
        return stack;
    }

    /// Two a row, each in a place of 4 to 3, with its number and what it shows.
    Stack photos(int& number) const {
        constexpr double between = 3 * mm;
        const auto isOurs = [&](const Photo& photo) { return photo.observation == observation_.id; };
        const auto count = std::ranges::count_if(composing_.input.installation.photos, isOurs);
        const double width = count == 1 ? inside * 0.6 : (inside - between) / 2, height = width * 3 / 4;
        std::vector<Box> pictures;
        for (const Photo& photo : composing_.input.installation.photos) {
            if (!isOurs(photo)) continue;
            const QRectF place(0, 0, width, height);
            Box box{width, height, {}};
            box.add(FillInk{place, &Look::header});
            if (const QImage picture = composing_.album.picture(photo.digest, place.size());
                !picture.isNull())
                box.add(PictureInk{place, picture});
            else
                box.put(joined(composing_.type.paragraph(
                            QCoreApplication::translate("Report", "This photo is not in the workbook."),
                            style::foot, width - 4 * mm)),
                        {2 * mm, 2 * mm});
            const QString caption =
                QStringLiteral("%1  %2").arg(words().number(std::int64_t{++number}), text(photo.caption));
            const Stack below = composing_.type.paragraph(caption, style::foot, width);
            box.put(joined(below), {0, height + 0.5 * mm});
            box.height += heightOf(below) + 0.5 * mm;
            pictures.push_back(box);
        }
        Stack stack;
        for (std::size_t at = 0; at < pictures.size(); at += 2) {
            Box row{inside, pictures[at].height, {}};
            row.put(pictures[at], {0, 0});
            if (at + 1 < pictures.size()) {
                row.put(pictures[at + 1], {width + between, 0});
                row.height = std::max(row.height, pictures[at + 1].height);
            }
            stack.push_back(gap(2 * small));
            stack.push_back(row);
        }
        return stack;
    }

    /// What was put right asks for nothing any more.
    Stack whatToDo() const {
        if (observation_.putRight) return {};
        Stack stack;
        for (const auto& [key, said] : {std::pair{"field.observation.action", text(observation_.action)},
                                        std::pair{"field.observation.byWhen", text(observation_.byWhen)},
                                        std::pair{"field.observation.whoActs", text(observation_.whoActs)}})
            append(stack, fact(words().word(key), said));
        if (stack.empty()) return {};
        stack.insert(stack.begin(), gap(2 * small));
        return heightOf(stack) <= keptTogether ? Stack{joined(stack)} : stack;
    }

    Stack fact(const QString& name, const QString& said) const {
        constexpr double nameWidth = 19 * mm;
        if (said.isEmpty()) return {};
        Stack stack;
        for (const Box& line : composing_.type.paragraph(said, style::cell, inside - nameWidth)) {
            Box box{inside, line.height, {}};
            if (stack.empty())
                box.put(joined(composing_.type.fitted(name, style::cellSoft, nameWidth - 1 * mm)), {0, 0});
            box.put(line, {nameWidth, 0});
            stack.push_back(box);
        }
        return stack;
    }

    const Composing& composing_;
    const Observation& observation_;
    Place place_;
};

void writeCards(const Composing& composing, Flow& flow) {
    std::vector<Id> told; // places whose findings an earlier card has listed
    std::vector<Card> cards;
    int photoNumber = 0;
    for (const Observation* observation : observationsOf(composing.input)) {
        const Id place = placeOf(composing.input.installation, *observation).id();
        const bool isFirst = std::ranges::find(told, place) == told.end();
        told.push_back(place);
        const ObservationCard card(composing, *observation);
        const int number = static_cast<int>(cards.size()) + 1;
        cards.push_back({card.make(number, isFirst, photoNumber),
                         {observationAnchor(observation->id)},
                         card.continued(number),
                         {}});
    }
    addCards(flow, std::move(cards));
}

void writeUnmentioned(const Composing& composing, Flow& flow) {
    const std::vector<std::size_t> indices = unmentionedFailures(composing.input);
    if (indices.empty()) return;
    const Words& words = composing.input.words;
    writeSubject(
        composing, flow,
        QCoreApplication::translate("Report", "Checks that fail at places that no observation is about"));
    const Table table(composing.type,
                      {{58 * mm, QCoreApplication::translate("Report", "Where")},
                       {98 * mm, QCoreApplication::translate("Report", "What was found")},
                       {18 * mm, QCoreApplication::translate("Report", "Working"), Align::Right}});
    flow.anchor(unmentionedAnchor);
    flow.openTable(table.head());
    for (const std::size_t index : indices) {
        const Finding& finding = composing.input.assessment.findings[index];
        const Place place = placeOf(composing.input.installation, finding.subject);
        const Box name = marked(composing.type, markOf(finding.verdict), inkOf(finding.verdict),
                                checkName(finding, words), style::cellStrong, table.room(1));
        Stack said{name};
        append(said, table.text(1, findingText(finding, words), style::cell, Notation::Symbols));
        const QString page = QCoreApplication::translate("Report", "page %1")
                                 .arg(words.number(std::int64_t{composing.pageOf(workingAnchor(index))}));
        flow.row(table.row({table.text(0, fullNameOf(composing.input.installation, place)), said,
                            table.text(2, page, style::cellSoft)}));
    }
    flow.closeTable();
}

} // namespace

void writeObservations(const Composing& composing, Flow& flow) {
    const QString title = QCoreApplication::translate("Report", "Observations");
    flow.section(title, PageForm::Portrait);
    if (sheetOf(PageForm::Portrait).bodyHeight - flow.heightOnPage() < leastRoom) flow.startPage();
    writeTitle(composing, flow, title);
    if (observationsOf(composing.input).empty())
        flow.add(composing.type.paragraph(
                     QCoreApplication::translate("Report", "Nothing was observed that is worth a note."),
                     style::soft, sheetOf(PageForm::Portrait).width),
                 0);
    writeCards(composing, flow);
    writeUnmentioned(composing, flow);
}

} // namespace loopwright::report
