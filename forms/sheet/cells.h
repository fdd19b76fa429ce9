// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/sheet/columns.h"

/// What the columns of the sheet show. Each is a pure function of a row's facts.
namespace loopwright::cells {

SheetCell text(const RowFacts& facts, const SheetColumn& column);    ///< of the first field, as it is
SheetCell figure(const RowFacts& facts, const SheetColumn& column);  ///< of the first field, an Entry
SheetCell outcome(const RowFacts& facts, const SheetColumn& column); ///< of the first field, a test outcome
SheetCell device(const RowFacts& facts, const SheetColumn& column);  ///< "B32·30", "1361 30 A"
SheetCell sizes(const RowFacts& facts, const SheetColumn& column);   ///< "4.0 / 1.5"
SheetCell load(const RowFacts& facts, const SheetColumn& column);
SheetCell loopLimit(const RowFacts& facts, const SheetColumn& column);
SheetCell verdict(const RowFacts& facts, const SheetColumn& column);

/// What a family is called on the sheet: its short name; an RCBO goes by the type of its breaker, because its
/// residual current stands behind it anyway.
QString familyName(const DeviceFamily& family);
/// "B32", "1361 30 A": family and rating of a device, as short as the trade writes them.
QString deviceText(const Device& device, const RowFacts& facts);
/// "+", "−", "LIM", "N/A"; empty when the test was not done.
QString outcomeText(TestOutcome outcome);

} // namespace loopwright::cells
