// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/load.h"

#include <algorithm>
#include <cmath>

namespace loopwright::overload {

namespace {

constexpr std::size_t mostDuties = 12; // that are aligned
constexpr double mostEvents = 96;      // in a cycle
constexpr double mostCombined = 12;    // pieces whose chances are combined
constexpr std::size_t mostBeginnings = 4;
constexpr Time steadyFor = hours(1e5); // outlasts every time constant
constexpr double wholeCycles = 1e-6;   // how near a cycle must come to a whole number of periods

bool rests(const Piece& piece) {
    return !piece.isDutyUnknown && piece.on && *piece.on > Time() && piece.off > Time();
}
bool draws(const Piece& piece) {
    return piece.each * piece.count > Current() && (piece.isDutyUnknown || !piece.on || *piece.on > Time());
}
Time periodOf(const Piece& piece) {
    return *piece.on + piece.off;
}

/// Pieces of one duty, added up.
struct Runs {
    Current current;
    Time on, period;
};

/// Those that rest, one entry a duty, the heaviest first.
std::vector<Runs> runsOf(std::span<const Piece> pieces) {
    std::vector<Runs> runs;
    for (const Piece& piece : pieces)
        if (draws(piece) && rests(piece))
            runs.push_back({piece.each * piece.count, *piece.on, periodOf(piece)});
    const auto duty = [](const Runs& each) { return std::pair(each.on, each.period); };
    std::ranges::sort(runs, {}, duty);
    std::vector<Runs> added;
    for (const Runs& each : runs)
        if (!added.empty() && duty(added.back()) == duty(each))
            added.back().current += each.current;
        else
            added.push_back(each);
    std::ranges::stable_sort(added, std::greater<>{}, &Runs::current);
    return added;
}

Current withoutRest(std::span<const Piece> pieces) {
    Current sum;
    for (const Piece& piece : pieces)
        if (draws(piece) && !rests(piece)) sum += piece.each * piece.count;
    return sum;
}

/// Of that what is known to be so.
Current surelyWithoutRest(std::span<const Piece> pieces) {
    Current sum;
    for (const Piece& piece : pieces)
        if (draws(piece) && !rests(piece) && !piece.isDutyUnknown) sum += piece.each * piece.count;
    return sum;
}

/// The shortest time that holds a whole number of every period, or as many of the longest as the events
/// allow.
Time commonCycle(const std::vector<Runs>& runs) {
    Time longest;
    double eventsPerSecond = 0;
    for (const Runs& each : runs) {
        longest = std::max(longest, each.period);
        eventsPerSecond += 2 / each.period.base();
    }
    const int most = static_cast<int>(mostEvents / (eventsPerSecond * longest.base()));
    for (int times = 1; times <= most; ++times) {
        const auto isWhole = [&](const Runs& each) {
            const double periods = longest * times / each.period;
            return std::abs(periods - std::round(periods)) < wholeCycles;
        };
        if (std::ranges::all_of(runs, isWhole)) return longest * times;
    }
    return most >= 1 ? longest * most : seconds(mostEvents / eventsPerSecond);
}

/// Whether a run is on, so long before the moment at which all end.
bool isOn(const Runs& runs, Time age) {
    return std::fmod(age.base(), runs.period.base()) < runs.on.base();
}

/// The ages at which something switches.
std::vector<double> switchesOf(const std::vector<Runs>& runs, Time cycle) {
    std::vector<double> ages{0, cycle.base()};
    for (const Runs& each : runs)
        for (int run = 0; run * each.period < cycle; ++run)
            for (const Time age : {run * each.period, run * each.period + each.on})
                if (age < cycle) ages.push_back(age.base());
    std::ranges::sort(ages);
    ages.erase(std::unique(ages.begin(), ages.end()), ages.end());
    return ages;
}

/// Begins the cycle right after its longest stretch of least current.
void beginAfterRest(Steps& steps) {
    const auto rest = std::ranges::min_element(
        steps, {}, [](const physics::DutyStep& step) { return std::pair(step.current, -step.duration); });
    std::rotate(steps.begin(), std::next(rest), steps.end());
}

Steps alignedAtTheirEnds(Current base, const std::vector<Runs>& runs) {
    const std::vector<double> ages = switchesOf(runs, commonCycle(runs));
    Steps steps;
    for (std::size_t i = ages.size() - 1; i > 0; --i) {
        const Time middle = seconds((ages[i] + ages[i - 1]) / 2);
        Current current = base;
        for (const Runs& each : runs)
            if (isOn(each, middle)) current += each.current;
        const Time duration = seconds(ages[i] - ages[i - 1]);
        if (!steps.empty() && steps.back().current == current)
            steps.back().duration += duration;
        else
            steps.push_back({current, duration});
    }
    if (steps.size() > 1) beginAfterRest(steps);
    return steps;
}

Steps alone(Current base, const Piece& piece) {
    return {{base + piece.each, *piece.on}, {base, piece.off}};
}

std::vector<Steps> apartOf(std::span<const Piece> pieces, Current base) {
    // Of one duty the heaviest piece says all; of many the heaviest of them do.
    std::vector<const Piece*> resting;
    for (const Piece& piece : pieces)
        if (draws(piece) && rests(piece)) resting.push_back(&piece);
    const std::size_t kept = std::min(resting.size(), mostDuties);
    std::ranges::partial_sort(resting, resting.begin() + static_cast<std::ptrdiff_t>(kept), std::greater<>{},
                              [](const Piece* piece) { return piece->each; });
    std::vector<Steps> apart;
    for (std::size_t i = 0; i < kept; ++i)
        apart.push_back(alone(base, *resting[i]));
    return apart;
}

/// The current whose square is the mean of I2 over independent runs: that of the mean, and the variances.
Current independentRms(std::span<const Piece> pieces, Current base) {
    double mean = base.base(), variance = 0;
    for (const Piece& piece : pieces) {
        if (!draws(piece) || !rests(piece)) continue;
        const double share = *piece.on / periodOf(piece), each = piece.each.base();
        mean += piece.count * each * share;
        variance += piece.count * each * each * share * (1 - share);
    }
    return amperes(std::sqrt(mean * mean + variance));
}

} // namespace

physics::DutyStep steadyStep(Current current) {
    return {current, steadyFor};
}

Load loadOf(std::span<const Piece> pieces) {
    const Current base = withoutRest(pieces), sure = surelyWithoutRest(pieces);
    std::vector<Runs> runs = runsOf(pieces);
    Load load;
    load.rms = independentRms(pieces, base);
    load.peak = base;
    load.isDutyUnknown = sure < base;
    for (const Runs& each : runs)
        load.peak += each.current;
    if (runs.empty()) {
        load.together = {steadyStep(base)};
        load.apart = {{steadyStep(sure)}};
        load.isSteady = true;
        return load;
    }
    Current warmBase = base;
    for (; runs.size() > mostDuties; runs.pop_back())
        warmBase += runs.back().current;
    load.together = alignedAtTheirEnds(warmBase, runs);
    load.apart = apartOf(pieces, sure);
    const auto inTurns = [](const Piece& piece) { return draws(piece) && rests(piece); };
    const auto first = std::ranges::find_if(pieces, inTurns);
    load.isAligned = std::ranges::count_if(pieces, inTurns) > 1 || first->count > 1;
    return load;
}

std::vector<Steps> beginningsOf(const Load& load) {
    if (!load.isAligned) return {load.together};
    std::vector<Steps> beginnings;
    // Turned round, a cycle whose runs end together is one whose runs begin together.
    const Steps turned(load.together.rbegin(), load.together.rend());
    for (const Steps* cycle : {&load.together, &turned}) {
        std::vector<std::size_t> rises;
        for (std::size_t i = 0; i < cycle->size(); ++i)
            if ((*cycle)[(i + cycle->size() - 1) % cycle->size()].current < (*cycle)[i].current)
                rises.push_back(i);
        std::ranges::stable_sort(rises, std::greater<>{}, [&](std::size_t i) {
            return std::pair((*cycle)[i].current, (*cycle)[i].duration);
        });
        rises.resize(std::min(rises.size(), mostBeginnings));
        for (const std::size_t rise : rises) {
            Steps steps = *cycle;
            std::rotate(steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(rise), steps.end());
            beginnings.push_back(std::move(steps));
        }
    }
    beginnings.push_back(load.together);
    return beginnings;
}

Stretch stretchAbove(const Steps& cycle, Current current) {
    Stretch stretch;
    for (const physics::DutyStep& step : cycle) {
        stretch.period += step.duration;
        if (step.current > current) stretch.above += step.duration;
    }
    return stretch;
}

Time longestAbove(const Steps& cycle, Current current) {
    const Time period = physics::lengthOf(cycle);
    Time longest, there;
    for (int round = 0; round < 2; ++round) // a stretch may go on into the next cycle
        for (const physics::DutyStep& step : cycle) {
            there = step.current > current ? there + step.duration : Time();
            longest = std::max(longest, there);
        }
    return std::min(longest, period);
}

Steps scaled(const Steps& steps, Ratio factor) {
    Steps result = steps;
    for (physics::DutyStep& step : result)
        step.current = step.current * factor;
    return result;
}

std::optional<Ratio> shareAbove(std::span<const Piece> pieces, Current current) {
    struct Chance {
        Current current;
        Ratio share;
    };
    std::vector<Chance> chances;
    for (const Piece& piece : pieces) {
        if (!draws(piece) || !rests(piece)) continue;
        if (!(static_cast<double>(chances.size()) + piece.count <= mostCombined)) return std::nullopt;
        chances.insert(chances.end(), static_cast<std::size_t>(std::ceil(piece.count)),
                       {piece.each, *piece.on / periodOf(piece)});
    }
    const Current base = withoutRest(pieces);
    Ratio share = 0;
    for (std::size_t set = 0; set < std::size_t{1} << chances.size(); ++set) {
        Current sum = base;
        Ratio chance = 1;
        for (std::size_t i = 0; i < chances.size(); ++i) {
            const bool runs = (set >> i & 1) != 0;
            if (runs) sum += chances[i].current;
            chance *= runs ? chances[i].share : 1 - chances[i].share;
        }
        if (sum > current) share += chance;
    }
    return share;
}

} // namespace loopwright::overload
