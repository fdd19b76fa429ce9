// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/visit_rows.h"

namespace loopwright {
namespace {

template <class Reading>
Id rowOf(const std::vector<Reading>& rows, Id visit, Id Reading::*member, Id subject) {
    const Reading* row = findReading(rows, visit, member, subject);
    return row ? row->id : Id();
}

std::string_view subjectKey(RecordKind kind) {
    switch (kind) {
    case RecordKind::SupplyReading:
        return "supply";
    case RecordKind::BoardReading:
        return "board";
    default:
        return "circuit";
    }
}

} // namespace

bool isReading(RecordKind kind) {
    return kind == RecordKind::SupplyReading || kind == RecordKind::BoardReading ||
           kind == RecordKind::CircuitReading;
}

Id readingRow(const SiteView& view, RecordKind kind, Id subject) {
    const Installation& site = view.installation;
    switch (kind) {
    case RecordKind::SupplyReading:
        return rowOf(site.supplyReadings, view.visit, &SupplyReading::supply, subject);
    case RecordKind::BoardReading:
        return rowOf(site.boardReadings, view.visit, &BoardReading::board, subject);
    case RecordKind::CircuitReading:
        return rowOf(site.circuitReadings, view.visit, &CircuitReading::circuit, subject);
    default:
        return {};
    }
}

Edit setReading(const SiteView& view, RecordKind kind, Id subject, std::vector<Edit::Value> values,
                IdSource& ids) {
    if (const Id row = readingRow(view, kind, subject); !row.isNone())
        return {Edit::Step::Set, kind, row, std::move(values)};
    values.push_back({"visit", view.visit.text()});
    values.push_back({std::string(subjectKey(kind)), subject.text()});
    return {Edit::Step::Insert, kind, ids.next(), std::move(values)};
}

} // namespace loopwright
