// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/load_over_time.h"
#include "core/overload/pictures.h"

#include <array>
#include <string_view>

namespace loopwright {

/// A circuit's load over time, with everything that a screen or a page shows about it. It is asked of the
/// circuit's own device; of a plug fuse on it where that is what is overloaded and the circuit's device is
/// not.
struct CircuitOverload {
    OverloadAnswer found;
    overload::TimeCurrentPicture band;
    overload::HeatPicture heat;
};

/// The checks that speak of a load over time, the plainest first.
inline constexpr std::array checksOverTime{std::string_view("hidden-overload"),
                                           std::string_view("early-operation"),
                                           std::string_view("conductor-heat")};

/// Nothing where the load or the device is not known well enough, or the visit or circuit is not there.
std::optional<CircuitOverload> circuitOverload(const Installation& installation, Id visit, Id circuit,
                                               const ReferenceTables& tables, const RuleSet& rules);

} // namespace loopwright
