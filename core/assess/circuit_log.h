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
    bool isWarmthKnown = true; ///< else nothing is known of when the earliest device operates

    /// It was above the rating, where nothing says how early such a device may operate; the picture marks no
    /// moment for it then.
    bool mayOperateAtAnyTime() const { return !holdsOut && found.shareAbove > 0; }
};

/// Asks one channel of a log, the first where the name is empty. The refusal says that there is none of that
/// name, or that the circuit's device is not known well enough.
tl::expected<CircuitLog, Message> circuitLog(const Installation& installation, Id visit, Id circuit,
                                             const ReferenceTables& tables, const RuleSet& rules,
                                             const overload::LoggedCurrents& log, std::string_view channel);

/// Reads a log by its bytes as they are kept; nothing stands for bytes that are not at hand, which is refused
/// as what cannot be read is.
tl::expected<overload::LoggedCurrents, Message> readKeptLog(std::optional<std::string_view> bytes);

/// The logs of a circuit in a visit, in the order in which they were added.
std::vector<const CurrentLog*> logsOf(const Installation& installation, Id visit, Id circuit);

} // namespace loopwright
