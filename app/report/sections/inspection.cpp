// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

const InspectionOutcome* outcomeOf(const Composing& composing, const std::string& item) {
    for (const InspectionOutcome& outcome : composing.input.installation.inspectionOutcomes)
        if (outcome.visit == composing.visit.id && outcome.item == item) return &outcome;
    return nullptr;
}

/// What was seen and noted has no mark of its own: its observation carries the grade's.
std::optional<Verdict> lookOf(InspectionResult result) {
    switch (result) {
    case InspectionResult::InOrder:
        return Verdict::Holds;
    case InspectionResult::NotLooked:
    case InspectionResult::Limited:
        return Verdict::CannotTell;
    case InspectionResult::NotApplicable:
        return Verdict::DoesNotApply;
    case InspectionResult::Observed:
        break;
    }
    return std::nullopt;
}

class Items {
  public:
    Items(const Composing& composing, Flow& flow)
      : composing_(composing)
      , flow_(flow)
      , table_(composing.type, {{91 * mm, QCoreApplication::translate("Report", "What was looked at")},
                                {43 * mm, QCoreApplication::translate("Report", "Outcome")},
                                {40 * mm, QCoreApplication::translate("Report", "Remark")}}) {}

    Box head() const { return table_.head(); }

    void group(const QString& name) {
        Box box = joined(composing_.type.paragraph(name, style::cellStrong, table_.width() - 4 * mm));
        Box band{table_.width(), box.height + 2 * mm, {}};
        band.add(FillInk{QRectF(0, 0, band.width, band.height), &Look::header});
        band.put(box, {1.5 * mm, 1 * mm});
        flow_.row({band}, Keep::WithNext);
    }

    void item(const QString& name, InspectionResult result, const QString& remark) {
        const QString word =
            composing_.input.words.word("choice.inspection-result." + std::string(choiceKey(result)));
        const std::optional<Verdict> look = lookOf(result);
        const Stack outcome = look ? Stack{marked(composing_.type, markOf(*look), inkOf(*look), word,
                                                  style::cell, table_.room(1))}
                                   : table_.text(1, word, style::cellStrong);
        flow_.row(table_.row({table_.text(0, name), outcome, table_.text(2, remark)}));
    }

  private:
    const Composing& composing_;
    Flow& flow_;
    Table table_;
};

void writeItems(const Composing& composing, Flow& flow) {
    Items items(composing, flow);
    flow.openTable(items.head());
    std::string group;
    const auto known = composing.input.tables.inspectionItems();
    for (const InspectionItem& item : known) {
        if (item.group != group) items.group(text(item.group));
        group = item.group;
        const InspectionOutcome* outcome = outcomeOf(composing, item.key);
        items.item(text(item.text), outcome ? outcome->result : InspectionResult::NotLooked,
                   outcome ? text(outcome->remark) : QString());
    }
    bool isFirst = true;
    for (const InspectionOutcome& outcome : composing.input.installation.inspectionOutcomes) {
        const bool isKnown =
            std::ranges::any_of(known, [&](const InspectionItem& item) { return item.key == outcome.item; });
        if (outcome.visit != composing.visit.id || isKnown) continue;
        if (isFirst) items.group(QCoreApplication::translate("Report", "Other items"));
        isFirst = false;
        items.item(text(outcome.item), outcome.result, text(outcome.remark));
    }
    flow.closeTable();
}

} // namespace

void writeInspection(const Composing& composing, Flow& flow) {
    const QString title = QCoreApplication::translate("Report", "Inspection");
    flow.section(title, PageForm::Portrait);
    writeTitle(composing, flow, title);
    writeItems(composing, flow);
}

} // namespace loopwright::report
