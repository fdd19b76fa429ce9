// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

namespace loopwright {

/// The largest prospective fault current at a board: of what was read there, c_max U_0 / Z of the loops to
/// earth and to neutral, and twice that of one phase between three. Else what the largest of the same at the
/// supply leaves behind the line conductors of the circuits that lead to the board, which is an upper bound.
/// Where only the loop to earth is known, and earth and neutral are not one conductor, it is a lower bound,
/// unless it is within `limit` and the supply's upper bound is known.
/// Each is shown, the largest under `symbol`.
std::optional<Figure<Current>> prospectiveCurrent(const BoardContext& context, Worksheet& sheet,
                                                  std::string_view symbol = "I_pf",
                                                  std::optional<Current> limit = {});

/// c_max U_0 / Z: the most that flows through a loop.
Figure<Current> mostThrough(const VisitContext& visit, const Figure<Resistance>& loop);

/// The line conductors of one circuit from end to end at 20 degC, those in parallel together; nothing where
/// what they are made of is not known.
std::optional<Resistance> lineResistance(const ReferenceTables& tables, const Circuit& circuit);

} // namespace loopwright
