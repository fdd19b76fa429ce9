// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/conductor.h"
#include "core/overload/load.h"
#include "core/reference/reference_tables.h"

#include <cstdint>
#include <optional>

/// Whether a load can go on unnoticed through a device that is too small for it, and what it does meanwhile.
/// The device is not one curve but all that its standard allows: answers are the two extremes of that set,
/// from cold. In a warmer place than it was calibrated in the earliest operates sooner, in a cooler one the
/// latest later.
namespace loopwright::overload {

struct Question {
    const ThermalDevice& device;
    Current rated; ///< I_n, or the overload setting I_r
    std::optional<InstantaneousBand> instantaneous;
    const Load& load;
    std::optional<Conductor> conductor;
    Ratio shift = 0; ///< by which a device that has been hot for years is assumed to operate early
    std::optional<InstantaneousBand> shortTime; ///< of a breaker whose short-time stage is set
    /// What the warmth of its place leaves of every current at which heat operates the earliest; nothing:
    /// that is not known, and it may operate sooner than is said.
    std::optional<Ratio> inWarmth = 1;
    /// What the cold of its place makes of every current at which heat is sure to operate the latest, 1 or
    /// more; nothing: that is not known, and heat is not sure to operate it.
    std::optional<Ratio> inCold = 1;
};

/// When one extreme operates. `run` and `after` count only where it does.
struct Edge {
    physics::Operation operation = physics::Operation::Unknown;
    std::uint64_t run = 0; ///< the first is 1
    Time after;            ///< since the first run began
    bool operates() const { return operation == physics::Operation::Operates; }
};

struct HiddenOverload {
    Ratio toDevice = 0;            ///< I_b / I_n
    std::optional<Ratio> toWiring; ///< I_b / I_z
    Stretch overRating;            ///< how long in a cycle the load is above I_n
    /// The soonest that any way in which the runs fall allows, since the first of them began: at the latest
    /// when everything runs together from cold. Never: not even the earliest operates at the worst alignment.
    /// Unknown: only its warmth might operate it, and that is not known.
    Edge earliest;
    Edge latest;           ///< whatever the alignment; Never, Unknown: nothing assures operation
    Edge latestTogether;   ///< at the worst alignment
    Edge agedEarliest;     ///< the earliest, shifted
    bool holdsOut = false; ///< something limits how early the earliest may be above I_n
    /// At which load, in the same runs, a sound device may operate, and is sure to; nothing where nothing
    /// assures it at any load.
    Current mayOperateAt;
    std::optional<Current> mustOperateAt;
    Current agedMayOperateAt;
    Ratio contactPeak = 0; ///< (I / I_n)2: heat in contacts as a multiple of that at the rating
    Ratio contactMean = 0; ///< over a cycle
    std::optional<ConductorHeat> conductor;

    /// Over the rating, and no sound device is sure to end it.
    bool isHidden() const { return toDevice > 1 && !latest.operates(); }
};

HiddenOverload answer(const Question& question);

/// HiddenOverload::latest, ::mayOperateAt and ::mustOperateAt on their own.
Edge sureToOperate(const Question& question);
Current mayOperateAt(const Question& question);
std::optional<Current> mustOperateAt(const Question& question);

} // namespace loopwright::overload
