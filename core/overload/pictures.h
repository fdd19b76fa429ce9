// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/time_current.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the pictures of an overload show, as values: a screen and a page draw the same ones.
namespace loopwright {

/// When a sound device operates at a steady current, between two edges.
struct TimeCurrentPicture {
    std::string_view device; ///< the phrase that names it: "check.word.fuse"; static storage
    Current rated;
    std::vector<physics::TimeCurrent> earliest; ///< of the earliest sound device; current rising
    std::vector<physics::TimeCurrent> latest; ///< of the latest; below its first current it may never operate
    std::vector<physics::TimeCurrent> published; ///< points that a standard or a maker prints
    bool isModelled = false; ///< between the published points the edges are those of a model

    std::string loadName;                   ///< "Kiln, glaze room"
    std::optional<Current> load;            ///< what it draws while it runs
    std::optional<Time> onTime;             ///< for how long at a time; nothing: without end
    std::optional<Current> start;           ///< what a motor draws as it starts
    std::optional<Current> fault;           ///< to earth at the far end
    std::optional<Time> required;           ///< within which that fault must be cut off
    std::optional<JouleIntegral> withstand; ///< k2S2 of the conductor
    Time adiabaticUpTo = seconds(0); ///< how long heat stays in the conductor, so that k2S2 is its limit
};

/// Heat in conductor and device while a duty runs.
struct HeatPicture {
    struct Moment {
        Time time;
        Temperature conductor;
        Ratio earliest = 0; ///< thermal state of the earliest sound device; it operates at 1
        Ratio latest = 0;
    };
    struct Run {
        Time from;
        Time to;
    };
    std::string_view device;
    std::string loadName;
    std::vector<Moment> moments; ///< time rising
    std::vector<Run> runs;       ///< while the load is on
    Temperature limit;           ///< of the conductor's insulation
};

} // namespace loopwright
