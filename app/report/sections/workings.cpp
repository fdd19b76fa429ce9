// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/places.h"
#include "app/report/sections/cards.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double inside = columnWidth - 2 * framePadding;
constexpr double symbolRoom = 12 * mm;
constexpr double valueRoom = 22 * mm;
constexpr double fromRoom = inside - symbolRoom - valueRoom;
constexpr double termPadding = 0.7 * mm;

class WorkingCard {
  public:
    WorkingCard(const Composing& composing, const Finding& finding)
      : composing_(composing)
      , finding_(finding) {}

    Stack make() const {
        Stack stack = title();
        const Working& working = *finding_.working;
        if (!working.formula.empty()) {
            stack.push_back(gap(1.5 * mm));
            append(stack, formula(text(working.formula), style::body));
            stack.push_back(gap(1 * mm));
        }
        const std::vector<WorkingLine> terms = termLines(working, words());
        for (std::size_t index = 0; index < terms.size(); ++index)
            append(stack, row(terms[index], style::cell, index + 1 < terms.size()));
        append(stack, result());
        append(stack, source());
        return stack;
    }

    Box continued() const {
        return joined(composing_.type.fitted(
            QCoreApplication::translate("Report", "%1, continued").arg(checkName(finding_, words())),
            style::soft, inside, Align::Right));
    }

    /// Workings of one verdict about one board.
    std::string group() const {
        const Place place = placeOf(composing_.input.installation, finding_.subject);
        return std::string(verdictKey(finding_.verdict)) + (place.board ? place.board->id.text() : "");
    }

  private:
    const Words& words() const { return composing_.input.words; }

    Stack title() const {
        const Installation& installation = composing_.input.installation;
        Stack stack{marked(composing_.type, markOf(finding_.verdict), inkOf(finding_.verdict),
                           checkName(finding_, words()), style::strong, inside)};
        append(stack,
               composing_.type.paragraph(fullNameOf(installation, placeOf(installation, finding_.subject)),
                                         style::cellSoft, inside));
        stack.push_back(gap(1 * mm));
        append(stack, composing_.type.paragraph(findingText(finding_, words()), style::cell, inside,
                                                Align::Left, Notation::Symbols));
        return stack;
    }

    /// Broken at spaces where it is too wide for one line.
    Stack formula(const QString& notation, const TextStyle& style) const {
        Stack stack;
        QString line;
        const auto put = [&] {
            if (line.isEmpty()) return;
            const double width = composing_.type.symbolWidth(line, style);
            TextStyle fitting = style;
            if (width > inside) fitting.scale = style.scale * 0.99 * inside / width;
            const double height = composing_.type.lineHeight(style) * 1.15;
            stack.push_back(symbol(line, fitting, inside, height));
        };
        for (const QString& word : notation.split(u' ')) {
            const QString longer = line.isEmpty() ? word : line + u' ' + word;
            if (!line.isEmpty() && composing_.type.symbolWidth(longer, style) > inside) {
                put();
                line = word;
            } else {
                line = longer;
            }
        }
        put();
        return stack;
    }

    static Box symbol(const QString& notation, const TextStyle& style, double width, double height) {
        Box box{width, height, {}};
        box.add(SymbolInk{QRectF(0, 0, width, height), notation, style});
        return box;
    }

    Stack row(const WorkingLine& said, const TextStyle& style, bool ruled) const {
        const TextStyle soft = style == style::cell ? style::cellSoft : style;
        const Stack symbol = formulaCell(said.symbol, style);
        const Stack value =
            composing_.type.fitted(said.value, style, valueRoom - 2 * mm, Align::Left, Notation::Symbols);
        const Stack from =
            composing_.type.paragraph(said.from, soft, fromRoom, Align::Left, Notation::Symbols);
        Box box{inside, std::max({heightOf(symbol), heightOf(value), heightOf(from)}) + 2 * termPadding, {}};
        box.put(joined(symbol), {0, termPadding});
        box.put(joined(value), {symbolRoom, termPadding});
        box.put(joined(from), {symbolRoom + valueRoom, termPadding});
        if (ruled) box.add(LineInk{{0, box.height}, {inside, box.height}, hairline, &Look::line});
        return {box};
    }

    Stack formulaCell(const QString& symbol, const TextStyle& style) const {
        const double room = symbolRoom - 1 * mm;
        const double width = composing_.type.symbolWidth(symbol, style);
        TextStyle fitting = style;
        if (width > room) fitting.scale = 0.99 * room / width;
        const double height = composing_.type.lineHeight(style);
        return {this->symbol(symbol, fitting, room, height)};
    }

    Stack result() const {
        const auto said = resultLine(*finding_.working, words());
        if (!said) return {};
        Stack stack = row(*said, style::inked(style::cellStrong, inkOf(finding_.verdict)), false);
        stack.front().add(LineInk{{0, 0}, {inside, 0}, headLine, &Look::ink});
        return stack;
    }

    Stack source() const {
        const Working& working = *finding_.working;
        QStringList lines;
        if (working.restsOnAssumption)
            lines << QCoreApplication::translate("Report", "This rests on an assumed figure, marked ~.");
        if (const QString rule = sourceLine(working); !rule.isEmpty()) lines << rule;
        if (lines.isEmpty()) return {};
        Stack stack{gap(1 * mm)};
        append(stack, composing_.type.paragraph(lines.join(u'\n'), style::foot, inside));
        return stack;
    }

    const Composing& composing_;
    const Finding& finding_;
};

} // namespace

void writeWorkings(const Composing& composing, Flow& flow) {
    const auto& findings = composing.input.assessment.findings;
    std::vector<Card> cards;
    for (const Verdict verdict : {Verdict::Fails, Verdict::Close})
        for (std::size_t index = 0; index < findings.size(); ++index) {
            if (findings[index].verdict != verdict) continue;
            const WorkingCard card(composing, findings[index]);
            cards.push_back({card.make(), {workingAnchor(index)}, card.continued(), card.group()});
        }
    if (cards.empty()) return;
    const QString title = QCoreApplication::translate("Report", "Workings of what fails or is close");
    flow.section(title, PageForm::Portrait);
    flow.startPage();
    writeTitle(composing, flow, title);
    addCards(flow, std::move(cards));
}

} // namespace loopwright::report
