// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/duty.h"

#include <optional>
#include <span>
#include <vector>

/// What the pieces of equipment on one circuit draw over time. Nobody records when each begins, so two things
/// are said: what they come to at the worst alignment, and what is sure whatever the alignment.
namespace loopwright::overload {

/// Pieces alike. Currents, counts and durations are finite and not negative.
struct Piece {
    Current each;
    double count = 1;
    std::optional<Time> on; ///< how long it runs; nothing: without end
    Time off;               ///< how long it rests after a run
    /// Nobody knows for sure how it runs: it may do so without end, and counts for nothing in what is sure.
    bool isDutyUnknown = false;
};

using Steps = std::vector<physics::DutyStep>;

/// A current that never rests, as one step that outlasts everything.
physics::DutyStep steadyStep(Current current);

struct Load {
    /// A cycle in which all runs end at the same moment, which is what warms most: heat fades, so what a body
    /// has taken up counts the more the later it came. Begins after the longest rest. A steady current is one
    /// step that outlasts everything.
    Steps together;
    /// One piece alone, with those that run without end: I at any time is at least that, so what operates
    /// under one of these operates however the pieces fall. One entry where there is nothing to align; pieces
    /// whose duty is not known are left out.
    std::vector<Steps> apart;
    Current peak;               ///< all at once
    Current rms;                ///< over a long time of independent runs: what warms a slow body
    bool isSteady = false;      ///< nothing rests
    bool isAligned = false;     ///< `together` is one of many alignments
    bool isDutyUnknown = false; ///< of some piece, which counts as running without end in all but `apart`
};

/// Work is bounded whatever is handed in: a cycle has at most some dozens of steps. Where the common cycle of
/// several pieces would be longer it is cut after its last runs, and beyond a dozen different duties the
/// lightest count as running without end; both err on the warm side in `together` and leave `apart` as it is.
/// No piece that draws anything: a steady current of 0.
Load loadOf(std::span<const Piece> pieces);

/// What a cycle may begin with where nobody knows how its runs fall: with the first of its steps, with all
/// that runs in it together, or with any other step that more begins to run in. A few, however long the
/// cycle: the rises to the largest currents.
std::vector<Steps> beginningsOf(const Load& load);

/// How long in each cycle the current is above `current`, and how long the cycle is.
struct Stretch {
    Time above;
    Time period;
};
Stretch stretchAbove(const Steps& cycle, Current current);

/// The longest that the current is above `current` without a break in a cycle that repeats; the whole cycle
/// where it is never at it or below.
Time longestAbove(const Steps& cycle, Current current);

/// The same steps with every current multiplied.
Steps scaled(const Steps& steps, Ratio factor);

/// The share of a long time in which independent runs come to more than `current`; nothing where more than a
/// dozen pieces would have to be combined.
std::optional<Ratio> shareAbove(std::span<const Piece> pieces, Current current);

} // namespace loopwright::overload
