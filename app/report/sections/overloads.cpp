// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"
#include "app/report/places.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double small = 1 * mm;

QString tr(const char* text) {
    return QCoreApplication::translate("Report", text);
}

/// One circuit's page, or the better part of one.
class OverloadPart {
  public:
    OverloadPart(const Composing& composing, const OverloadSheet& sheet)
      : composing_(composing)
      , sheet_(sheet) {}

    void write(Flow& flow) const {
        const Installation& installation = composing_.input.installation;
        writeSubject(composing_, flow,
                     fullNameOf(installation, placeOf(installation, {RecordKind::Circuit, sheet_.circuit})),
                     9 * mm);
        if (isTold()) writeFound(flow);
        for (const LogSheet& log : sheet_.logs)
            writeLog(log, flow);
    }

    /// Whether a check speaks of it; otherwise only a log does.
    bool isTold() const { return !sheet_.findings.empty(); }

  private:
    const Words& words() const { return composing_.input.words; }
    double width() const { return sheetOf(PageForm::Portrait).width; }

    void writeFound(Flow& flow) const {
        for (const std::size_t finding : sheet_.findings)
            flow.add(plate(composing_.input.assessment.findings[finding]), small, Keep::WithNext);
        if (isUnnoticed())
            flow.add(
                composing_.type.paragraph(
                    tr("No sound device is sure to end this, so nobody need notice it between two visits. "
                       "Until it is put right, that is a reason to look again sooner than usual."),
                    style::body, width()),
                small, Keep::WithNext);
        flow.add(
            sideBySide(
                {titled(tr("Time against current"), tr("between the lines a sound device may operate"))},
                {titled(tr("Heat against time"), tr("from cold; hatched: more than the insulation bears"))}),
            3 * mm, Keep::WithNext);
        flow.add(pictures(), small);
        flow.add(titled(tr("What it does meanwhile"), {}), 3 * mm, Keep::WithNext);
        flow.add(inHalves(sheet_.facts), small);
        if (asksForRemedy() || !sheet_.remedies.empty()) writeRemedies(flow);
    }

    bool asksForRemedy() const {
        return std::ranges::any_of(
            composing_.input.assessment.about(sheet_.circuit),
            [](const Finding* finding) { return loopwright::asksForRemedy(*finding); });
    }

    bool isUnnoticed() const {
        return std::ranges::any_of(sheet_.findings, [&](std::size_t finding) {
            return composing_.input.assessment.findings[finding].check == "hidden-overload";
        });
    }

    /// A bar in the verdict's colour, its mark, and what the check says.
    Box plate(const Finding& finding) const {
        constexpr double bar = 1.2 * mm, indent = 5 * mm;
        Stack said{marked(composing_.type, markOf(finding.verdict), inkOf(finding.verdict),
                          checkName(finding, words()), style::strong, width() - indent)};
        append(said, composing_.type.paragraph(findingText(finding, words()), style::body, width() - indent,
                                               Align::Left, Notation::Symbols));
        Box box{width(), heightOf(said) + small, {}};
        box.add(FillInk{QRectF(0, 0, bar, box.height), inkOf(finding.verdict)});
        box.put(joined(said), {indent, small / 2});
        return box;
    }

    Box titled(const QString& title, const QString& hint) const {
        Stack stack = composing_.type.paragraph(title, style::strong, columnWidth);
        append(stack, composing_.type.paragraph(hint, style::foot, columnWidth));
        return joined(stack);
    }

    static Box sideBySide(const Stack& left, const Stack& right) {
        Box box{2 * columnWidth + columnGap, std::max(heightOf(left), heightOf(right)), {}};
        box.put(joined(left), {0, 0});
        box.put(joined(right), {columnWidth + columnGap, 0});
        return box;
    }

    Box pictures() const {
        const QSizeF& size = composing_.overloads.size();
        const double height = columnWidth * size.height() / size.width();
        Box box{2 * columnWidth + columnGap, height, {}};
        box.add(PlotInk{QRectF(0, 0, columnWidth, height), size, sheet_.band});
        box.add(PlotInk{QRectF(columnWidth + columnGap, 0, columnWidth, height), size, sheet_.heat});
        return box;
    }

    void writeLog(const LogSheet& log, Flow& flow) const {
        const Installation& installation = composing_.input.installation;
        const Place place = placeOf(installation, {RecordKind::Circuit, sheet_.circuit});
        const QString name = place.circuit && !place.circuit->name.empty() ? text(place.circuit->name)
                                                                           : addressOf(installation, place);
        Stack head = composing_.type.paragraph(tr("Logged current of %1: %2").arg(name, log.name),
                                               style::strong, width());
        append(head, composing_.type.paragraph(log.said, style::body, width()));
        const bool isShown = !log.facts.empty();
        flow.add(joined(head), 5 * mm, isShown ? Keep::WithNext : Keep::Free);
        if (!isShown) return;
        const QSizeF& size = composing_.overloads.logSize();
        const double across = 2 * columnWidth + columnGap, height = across * size.height() / size.width();
        Box picture{across, height, {}};
        picture.add(PlotInk{QRectF(0, 0, across, height), size, log.picture});
        flow.add(picture, small, Keep::WithNext);
        flow.add(inHalves(log.facts), small);
    }

    /// The first half of them at the left, the others at the right.
    Box inHalves(const std::vector<OverloadFact>& facts) const {
        const auto half = static_cast<std::ptrdiff_t>((facts.size() + 1) / 2);
        return sideBySide(rows({facts.begin(), facts.begin() + half}),
                          rows({facts.begin() + half, facts.end()}));
    }

    Stack rows(const std::vector<OverloadFact>& facts) const {
        Stack stack;
        for (const OverloadFact& fact : facts)
            stack.push_back(ruled(fact.what, fact.isAssumed ? QStringLiteral("~ ") + fact.said : fact.said));
        return stack;
    }

    /// What at the left and how much at the right, a hairline below.
    Box ruled(const QString& what, const QString& said) const {
        constexpr double share = 0.56, padding = 0.8 * mm;
        const Stack left = composing_.type.paragraph(what, style::cell, columnWidth * share - padding);
        const Stack right =
            composing_.type.paragraph(said, style::cell, columnWidth * (1 - share), Align::Right);
        Box box{columnWidth, std::max(heightOf(left), heightOf(right)) + 2 * padding, {}};
        box.put(joined(left), {0, padding});
        box.put(joined(right), {columnWidth * share, padding});
        box.add(LineInk{{0, box.height}, {columnWidth, box.height}, hairline, &Look::line});
        return box;
    }

    void writeRemedies(Flow& flow) const {
        flow.add(titled(tr("What would put it right"), {}), 3 * mm, Keep::WithNext);
        for (const Remedy& remedy : sheet_.remedies) {
            Stack told =
                composing_.type.paragraph(words().sentence(remedy.change.label), style::cellStrong, width());
            append(told, composing_.type.paragraph(
                             remedyConsequences(remedy, composing_.input.installation, words()),
                             style::cellSoft, width()));
            const bool isLast = &remedy == &sheet_.remedies.back();
            flow.add(joined(told), small, isLast ? Keep::WithNext : Keep::Free);
        }
        const bool isNone = sheet_.remedies.empty();
        flow.add(composing_.type.paragraph(isNone ? words().word("remedy.none")
                                                  : remedyAdvice(sheet_.remedies, words()),
                                           isNone ? style::body : style::foot, width()),
                 small);
    }

    const Composing& composing_;
    const OverloadSheet& sheet_;
};

} // namespace

void writeOverloads(const Composing& composing, Flow& flow) {
    const auto& sheets = composing.overloads.sheets();
    if (sheets.empty()) return;
    const QString title = tr("Loads over time");
    flow.section(title, PageForm::Portrait);
    flow.startPage();
    writeTitle(composing, flow, title);
    for (const OverloadSheet& sheet : sheets) {
        const OverloadPart part(composing, sheet);
        const bool fillsAPage = part.isTold() && &sheet != &sheets.front();
        if (fillsAPage) flow.startPage();
        part.write(flow);
    }
}

} // namespace loopwright::report
