// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"
#include "app/report/places.h"
#include "forms/inspection/inspection_rows.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

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

    void item(const InspectionRow& row) {
        const QString word = composing_.input.words.word(wordKey(row.result));
        const std::optional<Verdict> look = verdictOf(row.result);
        Stack outcome = look ? Stack{marked(composing_.type, markOf(*look), inkOf(*look), word, style::cell,
                                            table_.room(1))}
                             : table_.text(1, word, style::cellStrong);
        if (row.result == InspectionResult::Observed)
            append(outcome, table_.text(1, pagesOfObservations(), style::cellSoft));
        flow_.row(table_.row({table_.text(0, row.text), outcome, table_.text(2, row.remark)}));
    }

  private:
    /// No record says which observation an item led to.
    QString pagesOfObservations() const {
        std::set<int> pages;
        for (const Observation* observation : observationsOf(composing_.input))
            pages.insert(composing_.pageOf(observationAnchor(observation->id)));
        return pagesText(composing_, pages);
    }

    const Composing& composing_;
    Flow& flow_;
    Table table_;
};

void writeItems(const Composing& composing, Flow& flow) {
    Items items(composing, flow);
    flow.openTable(items.head());
    const ReportInput& input = composing.input;
    for (const InspectionRow& row : inspectionRows(input.installation, composing.visit.id, input.tables)) {
        if (row.isHeading())
            items.group(row.text);
        else
            items.item(row);
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
