// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/hidden_overload.h"
#include "core/physics/time_current.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the pictures of an overload show, as values: a screen and a page draw the same ones.
namespace loopwright::overload {

/// When a sound device operates at a steady current, between two edges.
struct TimeCurrentPicture {
    std::string_view device; ///< the phrase that names it: "check.word.fuse"; static storage
    Current rated;
    /// Of the earliest sound device; current rising. Empty where nobody knows what warmth does to it.
    std::vector<physics::TimeCurrent> earliest;
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
        Temperature conductor; ///< counts only with a limit
        /// Thermal state of the earliest and the latest sound device, which operates at 1; nothing once it
        /// has operated, and where nothing says how warm it gets.
        std::optional<Ratio> earliest;
        std::optional<Ratio> latest;
    };
    struct Run {
        Time from;
        Time to;
    };
    std::string_view device;
    std::string loadName;
    std::vector<Moment> moments;      ///< time rising
    std::vector<Run> runs;            ///< while the load is on
    std::optional<Temperature> limit; ///< of the conductor's insulation
};

/// The edges of a device from cold, at currents from below its rating to `highest`. Where the standard's
/// points leave a gap the replicas that meet them all fill it; `times` is what standard and tables promise
/// of it in its place.
void addEdges(TimeCurrentPicture& picture, const Question& question, const physics::DeviceTimes& times,
              Current highest);

/// The first cycles of the load from cold: the conductor at its warmest, the earliest device at the worst and
/// the latest at the best that any sound one is. Without a conductor its temperature stays that of nothing
/// and `limit` is empty.
HeatPicture heatPicture(const Question& question);

} // namespace loopwright::overload
