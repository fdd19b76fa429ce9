// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/thermal_replica.h"

#include <algorithm>
#include <cmath>

namespace loopwright::physics {

namespace {

/// c_1 exp(-t / tau_1) + c_2 exp(-t / tau_2), what is added to a steady state on the way to it.
struct Transient {
    std::array<double, 2> c;
    std::array<double, 2> constant; ///< seconds

    double at(double t) const {
        return c[0] * std::exp(-t / constant[0]) + c[1] * std::exp(-t / constant[1]);
    }
    /// Where it turns: at most once, and only if its two parts pull in opposite directions.
    std::optional<double> turn() const {
        const double ratio = -(c[0] * constant[1]) / (c[1] * constant[0]);
        if (!(ratio > 0) || !std::isfinite(ratio) || constant[0] == constant[1]) return std::nullopt;
        const double t = std::log(ratio) / (1 / constant[0] - 1 / constant[1]);
        return t > 0 ? std::optional(t) : std::nullopt;
    }
    bool isSingle() const { return c[0] == 0 || c[1] == 0 || constant[0] == constant[1]; }
};

double squared(double v) {
    return v * v;
}

double endOf(const ThermalReplica& replica, Current current) {
    return squared(current / replica.reference);
}

Transient transient(const ThermalReplica& replica, const ReplicaState& from, const ReplicaState& to) {
    Transient result{};
    for (std::size_t i = 0; i < 2; ++i) {
        result.c[i] = replica.branches[i].weight * (from[i] - to[i]);
        result.constant[i] = replica.branches[i].constant.base();
    }
    return result;
}

Transient during(const ThermalReplica& replica, const ReplicaState& state, const DutyStep& piece) {
    const double end = endOf(replica, piece.current);
    return transient(replica, state, {end, end});
}

ReplicaState advanced(const ThermalReplica& replica, ReplicaState state, const DutyStep& piece) {
    const double end = endOf(replica, piece.current);
    for (std::size_t i = 0; i < 2; ++i)
        state[i] -= (end - state[i]) * std::expm1(-(piece.duration / replica.branches[i].constant));
    return state;
}

/// A time between `below`, where the transient is less than `level`, and `above`, where it is not.
double bisected(const Transient& transient, double level, double below, double above) {
    for (int step = 0; step < 200; ++step) {
        const double middle = below + (above - below) / 2;
        if (middle <= std::min(below, above) || middle >= std::max(below, above)) break;
        (transient.at(middle) < level ? below : above) = middle;
    }
    return above;
}

/// When theta reaches 1 within one piece.
std::optional<double> crossingIn(const ThermalReplica& replica, const ReplicaState& state,
                                 const DutyStep& piece) {
    const Transient way = during(replica, state, piece);
    const double level = 1 - endOf(replica, piece.current), duration = piece.duration.base();
    if (way.at(0) >= level) return 0;
    if (way.isSingle()) {
        const double c = way.c[0] + way.c[1], constant = way.constant[way.c[0] == 0 ? 1 : 0];
        if (!(level < 0)) return std::nullopt;
        const double t = constant * std::log(c / level);
        return t <= duration ? std::optional(t) : std::nullopt;
    }
    const auto turn = way.turn();
    const double bend = turn ? std::min(*turn, duration) : duration;
    if (way.at(bend) >= level) return bisected(way, level, 0, bend);
    if (way.at(duration) >= level) return bisected(way, level, bend, duration);
    return std::nullopt;
}

/// A duty that begins its cycles away from the settled state.
class Repetition {
  public:
    Repetition(const ThermalReplica& replica, Duty duty, const LimitCycle& settled, const ReplicaState& start,
               double length)
      : replica_(replica)
      , duty_(duty)
      , settled_(settled)
      , start_(start)
      , length_(length) {}

    ReplicaState startOf(std::uint64_t cycle) const {
        ReplicaState state = settled_.start;
        for (std::size_t i = 0; i < 2; ++i)
            state[i] += (start_[i] - settled_.start[i]) * std::exp(-static_cast<double>(cycle) * length_ /
                                                                   replica_.branches[i].constant.base());
        return state;
    }
    bool crosses(std::uint64_t cycle) const { return peakDuring(replica_, startOf(cycle), duty_) >= 1; }

    /// The cycle that the way to the settled state turns in.
    std::optional<std::uint64_t> turn() const {
        const auto t = transient(replica_, start_, settled_.start).turn();
        if (!t || !(*t / length_ < 1e18)) return std::nullopt;
        return static_cast<std::uint64_t>(*t / length_);
    }
    /// After so many cycles nothing is left of the start that a double could tell.
    std::uint64_t settledAfter() const {
        const double slowest = std::max(replica_.branches[0].constant, replica_.branches[1].constant).base();
        return static_cast<std::uint64_t>(std::min(1e18, std::ceil(40 * slowest / length_)));
    }
    /// The first of the cycles from `first` to `last`, whose peaks are in order, that crosses.
    std::optional<std::uint64_t> firstIn(std::uint64_t first, std::uint64_t last) const {
        if (crosses(first)) return first;
        if (first == last || !crosses(last)) return std::nullopt;
        while (last - first > 1) {
            const std::uint64_t middle = first + (last - first) / 2;
            (crosses(middle) ? last : first) = middle;
        }
        return last;
    }

  private:
    const ThermalReplica& replica_;
    Duty duty_;
    const LimitCycle& settled_;
    const ReplicaState& start_;
    double length_;
};

std::optional<std::uint64_t> firstCycle(const Repetition& repetition, std::uint64_t cycles) {
    const std::uint64_t last = cycles - 1;
    std::uint64_t from = 0;
    if (const auto turn = repetition.turn()) {
        if (*turn > 0)
            if (const auto found = repetition.firstIn(0, std::min(last, *turn - 1))) return found;
        if (*turn > last) return std::nullopt;
        if (repetition.crosses(*turn)) return turn;
        from = *turn + 1;
    }
    if (from > last) return std::nullopt;
    const std::uint64_t settled = repetition.settledAfter();
    return repetition.firstIn(from, last - from < settled ? last : from + settled);
}

/// Where in its cycle, once it is known to be in this one.
Reached reachedIn(const ThermalReplica& replica, ReplicaState state, Duty duty) {
    Time since;
    for (std::size_t step = 0; step < duty.size(); ++step) {
        if (const auto t = crossingIn(replica, state, duty[step]))
            return {0, step, since + seconds(*t), since + seconds(*t)};
        state = advanced(replica, state, duty[step]);
        since += duty[step].duration;
    }
    return {0, duty.size() - 1, since, since}; // a peak that rounding put a hair's breadth above 1
}

} // namespace

ReplicaState steadyState(const ThermalReplica& replica, Current current) {
    const double end = endOf(replica, current);
    return {end, end};
}

Ratio thermalState(const ThermalReplica& replica, const ReplicaState& state) {
    return replica.branches[0].weight * state[0] + replica.branches[1].weight * state[1];
}

ReplicaState stateAfter(const ThermalReplica& replica, ReplicaState start, Duty duty) {
    for (const DutyStep& piece : duty)
        start = advanced(replica, start, piece);
    return start;
}

Ratio peakDuring(const ThermalReplica& replica, ReplicaState start, Duty duty) {
    Ratio peak = thermalState(replica, start);
    for (const DutyStep& piece : duty) {
        const Transient way = during(replica, start, piece);
        if (const auto turn = way.turn(); turn && *turn < piece.duration.base())
            peak = std::max(peak, endOf(replica, piece.current) + way.at(*turn));
        start = advanced(replica, start, piece);
        peak = std::max(peak, thermalState(replica, start));
    }
    return peak;
}

std::optional<LimitCycle> limitCycle(const ThermalReplica& replica, Duty duty) {
    const Time length = lengthOf(duty);
    if (!(length > Time())) return std::nullopt;
    LimitCycle cycle;
    // From nothing a cycle leads to b, and of what was there before it leaves exp(-T / tau): the state that
    // it leads back to itself is b / (1 - exp(-T / tau)).
    const ReplicaState fromNothing = stateAfter(replica, {}, duty);
    for (std::size_t i = 0; i < 2; ++i)
        cycle.start[i] = fromNothing[i] / -std::expm1(-(length / replica.branches[i].constant));
    cycle.peak = peakDuring(replica, cycle.start, duty);
    for (const DutyStep& piece : duty)
        cycle.mean += endOf(replica, piece.current) * (piece.duration / length);
    return cycle;
}

std::optional<Reached> firstCrossing(const ThermalReplica& replica, Duty duty, ReplicaState start,
                                     std::uint64_t cycles) {
    if (cycles == 0) return std::nullopt;
    if (thermalState(replica, start) >= 1) return Reached{};
    const auto settled = limitCycle(replica, duty);
    if (!settled) return std::nullopt;
    // From below the settled cycle is only come near to; rounding must not make it reached.
    constexpr double rounding = 1e-14;
    if (start[0] <= settled->start[0] && start[1] <= settled->start[1] && settled->peak <= 1 + rounding)
        return std::nullopt;
    const Time length = lengthOf(duty);
    const Repetition repetition(replica, duty, *settled, start, length.base());
    const auto cycle = firstCycle(repetition, cycles);
    if (!cycle) return std::nullopt;
    Reached reached = reachedIn(replica, repetition.startOf(*cycle), duty);
    reached.cycle = *cycle;
    reached.inAll = length * static_cast<double>(*cycle) + reached.inCycle;
    return reached;
}

} // namespace loopwright::physics
