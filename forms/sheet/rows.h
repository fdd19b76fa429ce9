// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/sheet/columns.h"

namespace loopwright {

/// A row of a board's sheet: a circuit, or the heading of a section.
struct SheetRow {
    Id circuit;                   ///< none: a heading
    QString heading;              ///< of a section
    std::vector<SheetCell> cells; ///< one a column; empty for a heading
    bool isSpare = false;
    bool closesWay = false; ///< the last phase of a three-phase way: a thicker line below
    bool isHeading() const { return circuit.isNone(); }
    friend bool operator==(const SheetRow&, const SheetRow&) = default;
};

/// The facts of a circuit's row. `circuit` must be one of the view's.
RowFacts factsOf(const SiteView& view, const Circuit& circuit, const Words& words);

/// The rows of a board's sheet, in the order in which the circuits were recorded, each section under its
/// heading.
std::vector<SheetRow> sheetRows(const SiteView& view, Id board, const Words& words);

/// Whether the board has a ring final circuit, so that the ring readings are wanted.
bool hasRings(const SiteView& view, Id board);

} // namespace loopwright
