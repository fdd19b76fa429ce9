// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/sheet/columns.h"

namespace loopwright {

/// One cell of the sheet in words.

/// For screen readers: "Way F1, Load, A, 41.7, computed, fails".
QString spokenCell(const QString& way, const SheetColumn& column, const SheetCell& cell, const Words& words);

/// For the eye, in notation: "F1 load: 41.7 A, computed, fails". What a cell is too narrow for is said whole.
QString writtenCell(const RowFacts& facts, const SheetColumn& column, const SheetCell& cell);

} // namespace loopwright
