// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/inspection_rows.h"

#include "forms/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <numeric>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Inspection", text);
}

InspectionRow heading(const QString& name) {
    InspectionRow row;
    row.text = name;
    return row;
}

void record(InspectionRow& row, const InspectionOutcome& outcome) {
    row.result = outcome.result;
    row.remark = text(outcome.remark);
    row.outcome = outcome.id;
}

} // namespace

std::vector<InspectionRow> inspectionRows(const Installation& installation, Id visit,
                                          const ReferenceTables& tables) {
    std::vector<const InspectionOutcome*> left;
    for (const InspectionOutcome& outcome : installation.inspectionOutcomes)
        if (outcome.visit == visit) left.push_back(&outcome);
    std::vector<InspectionRow> rows;
    const std::string* group = nullptr;
    for (const InspectionItem& item : tables.inspectionItems()) {
        if (!group || *group != item.group) rows.push_back(heading(text(item.group)));
        group = &item.group;
        InspectionRow row;
        row.item = item.key;
        row.text = text(item.text);
        row.pointer = text(item.pointer);
        if (const auto found = std::ranges::find(left, item.key, &InspectionOutcome::item);
            found != left.end()) {
            record(row, **found);
            left.erase(found);
        }
        rows.push_back(std::move(row));
    }
    if (!left.empty()) rows.push_back(heading(tr("Other items")));
    for (const InspectionOutcome* outcome : left) {
        InspectionRow row;
        row.item = outcome->item;
        row.text = text(outcome->item);
        record(row, *outcome);
        rows.push_back(std::move(row));
    }
    return rows;
}

ResultCounts::ResultCounts(const std::vector<InspectionRow>& rows) {
    for (const InspectionRow& row : rows)
        if (!row.isHeading()) ++counts_[static_cast<std::size_t>(row.result)];
}

int ResultCounts::all() const {
    return std::accumulate(counts_.begin(), counts_.end(), 0);
}

std::optional<Verdict> verdictOf(InspectionResult result) {
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

std::string wordKey(InspectionResult result) {
    return "choice.inspection-result." + std::string(choiceKey(result));
}

} // namespace loopwright
