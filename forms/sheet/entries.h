// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/sheet/columns.h"

/// What people may type into the columns of the sheet, and what an editor starts from.
namespace loopwright::entries {

using Result = tl::expected<CellEntry, CellRefusal>;

/// Into one field, by parseField of core.
Result field(const RowFacts& facts, const SheetColumn& column, const QString& typed);
/// "+", "-", "LIM", "N/A", or the word of the outcome.
Result outcome(const RowFacts& facts, const SheetColumn& column, const QString& typed);
/// "B32·30", "B32/30", "1361 30", "32": family by its short name, rating, residual current. A family that is
/// not named stays; without a residual current there is no residual device.
Result device(const RowFacts& facts, const SheetColumn& column, const QString& typed);
/// "4.0 / 1.5": line and protective conductor; the second may be left out.
Result sizes(const RowFacts& facts, const SheetColumn& column, const QString& typed);

QString fieldText(const RowFacts& facts, const SheetColumn& column);
/// What the cell shows.
QString shownText(const RowFacts& facts, const SheetColumn& column);

} // namespace loopwright::entries
