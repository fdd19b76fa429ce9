// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/log_pass.h"
#include "core/physics/thermal_replica.h"

/// How warm things may have been when a log begins: nobody knows what flowed before.
namespace loopwright::overload {

/// Taken to have gone on for long as the log begins, or as it goes on the whole, whichever is more: each
/// element is in the state that the mean square of the current over its own first time constant settles in,
/// or that over all of the log. The other end of what begins cold; with more before than the log shows it may
/// have been warmer still. Refers to what it was made from.
class LogStart {
  public:
    /// `meanSquare` over what was logged, in A2.
    LogStart(const LoggedChannel& channel, const std::vector<Block>& blocks, double meanSquare)
      : channel_(channel)
      , blocks_(blocks)
      , meanSquare_(meanSquare) {}

    physics::ReplicaState stateOf(const physics::ThermalReplica& replica) const;
    /// The warmest that a conductor gets which begins so. What the log leaves of its beginning after many
    /// time constants is what begins cold as well, so that only the time up to there is gone through.
    Temperature warmest(const Conductor& conductor, Time constant) const;

  private:
    /// In A2, of an element with so many seconds for a time constant.
    double squareBefore(double constant) const;
    double meanSquareOfFirst(double time) const;

    const LoggedChannel& channel_;
    const std::vector<Block>& blocks_;
    double meanSquare_;
};

} // namespace loopwright::overload
