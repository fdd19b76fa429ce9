// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/load_over_time.h"
#include "core/overload/pictures.h"

namespace loopwright {

/// A circuit's load over time, with everything that a screen or a page shows about it. It is asked of the
/// circuit's own device; of a plug fuse on it where that is what is overloaded and the circuit's device is
/// not.
struct CircuitOverload {
    OverloadAnswer found;
    overload::TimeCurrentPicture band;
    overload::HeatPicture heat;
};

/// Nothing where the load or the device is not known well enough, or the visit or circuit is not there.
std::optional<CircuitOverload> circuitOverload(const Installation& installation, Id visit, Id circuit,
                                               const ReferenceTables& tables, const RuleSet& rules);

} // namespace loopwright
