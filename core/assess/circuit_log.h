// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/load_over_time.h"
#include "core/overload/log_picture.h"

namespace loopwright {

/// What a logged current did to a circuit's device and wiring, with everything that a screen or a page shows
/// about it.
struct CircuitLog {
    overload::LoggedAnswer found;
    Current rated;
    bool holdsOut = false; ///< something limits how early the earliest device may operate above its rating
    std::optional<overload::Conductor> conductor;
    overload::LogPicture picture;
};

/// Nothing where the device is not known well enough, or the visit or circuit is not there.
std::optional<CircuitLog> circuitLog(const Installation& installation, Id visit, Id circuit,
                                     const ReferenceTables& tables, const RuleSet& rules,
                                     const overload::LoggedChannel& channel);

/// The logs of a circuit in a visit, in the order in which they were added.
std::vector<const CurrentLog*> logsOf(const Installation& installation, Id visit, Id circuit);

} // namespace loopwright
