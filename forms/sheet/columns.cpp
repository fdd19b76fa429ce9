// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/columns.h"

#include "core/checks/answering_field.h"
#include "forms/sheet/cells.h"
#include "forms/sheet/entries.h"
#include "forms/words/notation.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

using Column = SheetColumnId;
using Group = SheetGroup;

ColumnField ofCircuit(std::string_view key) {
    return {RecordKind::Circuit, key};
}
ColumnField ofReading(std::string_view key) {
    return {RecordKind::CircuitReading, key};
}

/// A text of the circuit.
SheetColumn textual(Column id, Group group, const char* head, int width, std::string_view key) {
    return {id, group, head, width, false, {ofCircuit(key)}, cells::text, entries::field, entries::fieldText};
}
/// A figure of the circuit or of its reading.
SheetColumn figure(Column id, Group group, const char* head, int width, ColumnField field) {
    return {id, group, head, width, true, {field}, cells::figure, entries::field, entries::fieldText};
}
SheetColumn reading(Column id, Group group, const char* head, int width, std::string_view key) {
    return figure(id, group, head, width, ofReading(key));
}

std::vector<SheetColumn> makeColumns() {
    return {
        textual(Column::Way, Group::Identity, QT_TRANSLATE_NOOP("Sheet", "Way"), 30, "way"),
        textual(Column::Circuit, Group::Identity, QT_TRANSLATE_NOOP("Sheet", "Circuit"), 166, "name"),
        {Column::Device,
         Group::Device,
         QT_TRANSLATE_NOOP("Sheet", "type, mA"),
         62,
         false,
         {ofCircuit("device.family"), ofCircuit("device.ratedCurrent_A"),
          ofCircuit("residual.residualCurrent_mA"), ofCircuit("residual.fitted")},
         cells::device,
         entries::device,
         entries::shownText},
        {Column::Sizes,
         Group::Wiring,
         QT_TRANSLATE_NOOP("Sheet", "mm²"),
         70,
         false,
         {ofCircuit("wiring.lineSize_mm2"), ofCircuit("wiring.protectiveSize_mm2")},
         cells::sizes,
         entries::sizes,
         entries::shownText},
        figure(Column::CableLength, Group::Wiring, QT_TRANSLATE_NOOP("Sheet", "m"), 40,
               ofCircuit("wiring.length_m")),
        {Column::Load,
         Group::Load,
         QT_TRANSLATE_NOOP("Sheet", "A"),
         52,
         true,
         {ofReading("measuredLoad_A"), ofCircuit("load_A")},
         cells::load,
         entries::field,
         entries::fieldText},
        reading(Column::RingLine, Group::Ring, QT_TRANSLATE_NOOP("Sheet", "r_1 Ω"), 46, "ringLine_ohm"),
        reading(Column::RingNeutral, Group::Ring, QT_TRANSLATE_NOOP("Sheet", "r_n Ω"), 46, "ringNeutral_ohm"),
        reading(Column::RingProtective, Group::Ring, QT_TRANSLATE_NOOP("Sheet", "r_2 Ω"), 46,
                "ringProtective_ohm"),
        reading(Column::Continuity, Group::Readings, QT_TRANSLATE_NOOP("Sheet", "R_1+R_2"), 50,
                "continuity_ohm"),
        reading(Column::InsulationEarth, Group::Readings, QT_TRANSLATE_NOOP("Sheet", "IR MΩ"), 50,
                "insulationEarth_Mohm"),
        {Column::Polarity,
         Group::Readings,
         QT_TRANSLATE_NOOP("Sheet", "Pol"),
         28,
         false,
         {ofReading("polarity")},
         cells::outcome,
         entries::outcome,
         entries::shownText},
        reading(Column::Loop, Group::Readings, QT_TRANSLATE_NOOP("Sheet", "Z_s Ω"), 54, "loopImpedance_ohm"),
        {Column::LoopLimit,
         Group::Readings,
         QT_TRANSLATE_NOOP("Sheet", "limit"),
         44,
         true,
         {},
         cells::loopLimit,
         nullptr,
         nullptr},
        reading(Column::ResidualTime, Group::Readings, QT_TRANSLATE_NOOP("Sheet", "RCD"), 42,
                "residualTime_ms"),
        reading(Column::InsulationLive, Group::More, QT_TRANSLATE_NOOP("Sheet", "IR live"), 52,
                "insulationLive_Mohm"),
        reading(Column::ResidualTimeFive, Group::More, QT_TRANSLATE_NOOP("Sheet", "RCD 5×"), 52,
                "residualTimeFive_ms"),
        {Column::ResidualHalf,
         Group::More,
         QT_TRANSLATE_NOOP("Sheet", "RCD ½×"),
         52,
         false,
         {ofReading("residualHalf")},
         cells::outcome,
         entries::outcome,
         entries::shownText},
        {Column::ResidualButton,
         Group::More,
         QT_TRANSLATE_NOOP("Sheet", "button"),
         46,
         false,
         {ofReading("residualButton")},
         cells::outcome,
         entries::outcome,
         entries::shownText},
        {Column::Verdict,
         Group::Verdict,
         QT_TRANSLATE_NOOP("Sheet", "worst check"),
         96,
         false,
         {},
         cells::verdict,
         nullptr,
         nullptr},
    };
}

} // namespace

std::span<const SheetColumn> sheetColumns() {
    static const std::vector<SheetColumn> columns = makeColumns();
    return columns;
}

const SheetColumn& sheetColumn(int index) {
    return sheetColumns()[static_cast<std::size_t>(index)];
}

int indexOf(SheetColumnId id) {
    return static_cast<int>(std::ranges::find(sheetColumns(), id, &SheetColumn::id) - sheetColumns().begin());
}

bool isCentred(const SheetColumn& column) {
    return column.id == Column::Way || column.show == cells::outcome;
}

QString groupTitle(SheetGroup group) {
    static constexpr std::array<const char*, sheetGroupCount> titles{
        "",
        QT_TRANSLATE_NOOP("Sheet", "Device"),
        QT_TRANSLATE_NOOP("Sheet", "Wiring"),
        QT_TRANSLATE_NOOP("Sheet", "Load"),
        QT_TRANSLATE_NOOP("Sheet", "Ring"),
        QT_TRANSLATE_NOOP("Sheet", "Readings"),
        QT_TRANSLATE_NOOP("Sheet", "More readings"),
        QT_TRANSLATE_NOOP("Sheet", "Verdict")};
    const char* title = titles[static_cast<std::size_t>(group)];
    return *title ? QCoreApplication::translate("Sheet", title) : QString();
}

QString columnHead(const SheetColumn& column) {
    return QCoreApplication::translate("Sheet", column.head);
}

QString fieldName(const ColumnField& field, const Words& words) {
    return words.word("field." + std::string(recordName(field.kind)) + '.' + std::string(field.key));
}

QString quantityName(const SheetColumn& column, const Words& words) {
    if (column.id == Column::LoopLimit)
        return QCoreApplication::translate("Sheet", "Permitted loop impedance");
    return column.fields.empty() ? groupTitle(column.group) : fieldName(column.fields.front(), words);
}

QString columnUnit(const SheetColumn& column) {
    if (column.id == Column::LoopLimit) return text(units::ohm.symbol);
    if (column.fields.empty()) return {};
    return text(fieldInfo(column.fields.front().kind, column.fields.front().key)->unit.symbol);
}

QString columnName(const SheetColumn& column, const Words& words) {
    const QString name = plainNotation(quantityName(column, words)), unit = columnUnit(column);
    return unit.isEmpty() ? name : name + QStringLiteral(", ") + unit;
}

std::optional<SheetColumnId> columnOf(const Finding& finding) {
    const auto field = answeringField(finding);
    if (!field) return std::nullopt;
    const auto answers = [&](const SheetColumn& column) {
        return std::ranges::any_of(column.fields, [&](const ColumnField& each) {
            return each.kind == field->kind && each.key == field->key;
        });
    };
    const auto column = std::ranges::find_if(sheetColumns(), answers);
    if (column != sheetColumns().end()) return column->id;
    // What is known of a device beyond its rating has no column of its own.
    return field->key.starts_with("device.") ? std::optional(Column::Device) : std::nullopt;
}

} // namespace loopwright
