// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/sheet/cell.h"
#include "forms/sheet/row_facts.h"

#include <span>
#include <vector>

namespace loopwright {

/// Columns that are shown and hidden together, in their order on the sheet.
enum class SheetGroup : std::uint8_t { Identity, Device, Wiring, Load, Ring, Readings, More, Verdict };
inline constexpr int sheetGroupCount = 8;

enum class SheetColumnId : std::uint8_t {
    Way,
    Circuit,
    Device,
    Sizes,
    CableLength,
    Load,
    RingLine,
    RingNeutral,
    RingProtective,
    Continuity,
    InsulationEarth,
    Polarity,
    Loop,
    LoopLimit,
    ResidualTime,
    InsulationLive,
    ResidualTimeFive,
    ResidualHalf,
    ResidualButton,
    Verdict,
};

/// A field that a column shows or is filled from.
struct ColumnField {
    RecordKind kind;
    std::string_view key;
};

struct SheetColumn;

/// What a person typed, as fields of one record; or the sentence that says why it cannot be.
struct CellEntry {
    RecordKind kind = RecordKind::CircuitReading;
    std::vector<Edit::Value> values;
};
using CellRefusal = QString;

/// One column of a board's sheet: everything about it, said once.
struct SheetColumn {
    SheetColumnId id;
    SheetGroup group;
    const char* head; ///< lower head, with `_` before subscripts; translated in the context "Sheet"
    int width;        ///< px at text factor 1
    bool isFigure;    ///< set at the right edge
    std::vector<ColumnField> fields;
    SheetCell (*show)(const RowFacts&, const SheetColumn&);
    /// nullptr: nobody types here.
    tl::expected<CellEntry, CellRefusal> (*enter)(const RowFacts&, const SheetColumn&, const QString& typed);
    /// What the editor starts from.
    QString (*editText)(const RowFacts&, const SheetColumn&);
};

std::span<const SheetColumn> sheetColumns();
const SheetColumn& sheetColumn(int index);
int indexOf(SheetColumnId id);
/// Whether the column holds single signs, which stand in its middle.
bool isCentred(const SheetColumn& column);

/// Columns that stay when the sheet scrolls: way and circuit.
inline constexpr int frozenColumns = 2;

QString groupTitle(SheetGroup group);
QString columnHead(const SheetColumn& column);
/// In notation: "Loop impedance, Z_s".
QString fieldName(const ColumnField& field, const Words& words);
/// What the column shows, in notation; of the first field where it is filled from several.
QString quantityName(const SheetColumn& column, const Words& words);
/// Empty where what it shows has none.
QString columnUnit(const SheetColumn& column);
/// For screen readers and notes: "Loop impedance, Zs, Ω".
QString columnName(const SheetColumn& column, const Words& words);

/// Which column answers for a finding; nothing when only the verdict column does.
std::optional<SheetColumnId> columnOf(const Finding& finding);

} // namespace loopwright
