// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

namespace loopwright {

/// The largest prospective fault current at a board: what was read there, else c_max U_0 / Z_db (twice that
/// between three phases), else what was read or follows at the supply, which is an upper bound further in.
/// Shown under `symbol`.
std::optional<Figure<Current>> prospectiveCurrent(const BoardContext& context, Worksheet& sheet,
                                                  std::string_view symbol = "I_pf");

} // namespace loopwright
