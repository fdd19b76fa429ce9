// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"
#include "core/reference/rule_set.h"
#include "core/reference/tables.h"

#include <algorithm>

// When a device operates, by what is published about its family, and which loop lets it.
namespace loopwright {

namespace {

bool holdsFor(const TripRow& row, Current rated) {
    return row.above < rated && rated <= row.upTo;
}

const TripRow* trip(const DeviceData& data, Current rated, TripTest test) {
    const auto found = std::ranges::find_if(
        data.trips, [&](const TripRow& row) { return row.test == test && holdsFor(row, rated); });
    return found == data.trips.end() ? nullptr : &*found;
}

const FusingRow* fusing(const DeviceData& data, Current rated) {
    const auto found = std::ranges::find_if(
        data.fusing, [&](const FusingRow& row) { return row.above < rated && rated <= row.upTo; });
    return found == data.fusing.end() ? nullptr : &*found;
}

/// Published points of one rating.
std::span<const FusePoint> pointsOf(const DeviceData& data, Current rated) {
    return {std::ranges::lower_bound(data.points, rated, {}, &FusePoint::rated),
            std::ranges::upper_bound(data.points, rated, {}, &FusePoint::rated)};
}

const GateRow* gates(const DeviceData& data, Current rated) {
    const auto found = std::ranges::lower_bound(data.gates, rated, {}, &GateRow::rated);
    return found == data.gates.end() || found->rated != rated ? nullptr : &*found;
}

enum class Promise { NotBefore, OperatedBy, Curve };

/// Calls take(promise, point, source) for everything that is published about one rating.
template <class Take>
void forPromises(const DeviceData& data, Current rated, Take take) {
    using physics::TimeCurrent;
    for (const TripRow& row : data.trips) {
        if (!holdsFor(row, rated)) continue;
        if (row.notBefore) take(Promise::NotBefore, TimeCurrent{rated * row.low, *row.notBefore}, row.source);
        if (row.notAfter) take(Promise::OperatedBy, TimeCurrent{rated * row.high, *row.notAfter}, row.source);
    }
    if (const FusingRow* row = fusing(data, rated)) {
        const Time time = row->conventionalTime;
        if (row->nonFusing) take(Promise::NotBefore, TimeCurrent{rated * *row->nonFusing, time}, row->source);
        take(Promise::OperatedBy, TimeCurrent{rated * row->fusing, time}, row->source);
    }
    if (const GateRow* row = gates(data, rated)) {
        for (const TimeCurrent& point : row->notBefore)
            take(Promise::NotBefore, point, row->source);
        for (const TimeCurrent& point : row->operatedBy)
            take(Promise::OperatedBy, point, row->source);
    }
    for (const FusePoint& row : pointsOf(data, rated)) {
        if (row.notBefore)
            take(Promise::NotBefore, TimeCurrent{row.point.current, *row.notBefore}, row.source);
        take(row.isZone ? Promise::OperatedBy : Promise::Curve, row.point, row.source);
    }
}

/// What is promised of one device; from memory where any part of it is.
std::optional<Sourced<physics::DeviceTimes>> promised(const DeviceData& data, Current rated) {
    Sourced<physics::DeviceTimes> times;
    bool any = false;
    forPromises(data, rated, [&](Promise promise, const physics::TimeCurrent& point, const Source& source) {
        auto& list = promise == Promise::NotBefore    ? times.value.notBefore
                     : promise == Promise::OperatedBy ? times.value.operatedBy
                                                      : times.value.curve;
        list.push_back(point);
        if (!any) times.source = source;
        any = true;
        times.source.fromMemory |= source.fromMemory;
    });
    if (!any) return std::nullopt;
    return times;
}

/// The first row of this rating and time that `fits`.
template <class Fits>
const LoopRow* findLoop(const std::vector<LoopRow>& loops, Current rated, Time time, Fits fits) {
    const auto key = [](const LoopRow& row) { return std::pair(row.rated, row.time); };
    auto row = std::ranges::lower_bound(loops, std::pair(rated, time), {}, key);
    for (; row != loops.end() && key(*row) == std::pair(rated, time); ++row)
        if (fits(*row)) return &*row;
    return nullptr;
}

} // namespace

std::optional<ConventionalCurrents> ReferenceTables::conventionalCurrents(const DeviceFamily& family,
                                                                          Current rated) const {
    const DeviceData& data = tables_->devices.of(family);
    if (const FusingRow* row = fusing(data, rated))
        return ConventionalCurrents{row->nonFusing, row->fusing, row->conventionalTime, row->source};
    const TripRow* operating = trip(data, rated, TripTest::ConventionalTripping);
    if (!operating) return std::nullopt;
    const TripRow* nonOperating = trip(data, rated, TripTest::ConventionalNonTripping);
    return ConventionalCurrents{nonOperating ? std::optional<Ratio>(nonOperating->low) : std::nullopt,
                                operating->high, operating->notAfter, operating->source};
}

std::optional<InstantaneousBand> ReferenceTables::instantaneousBand(const DeviceFamily& family,
                                                                    Current rated) const {
    const TripRow* row = trip(tables_->devices.of(family), rated, TripTest::InstantaneousRange);
    if (!row) return std::nullopt;
    return InstantaneousBand{row->low, row->high, row->source, {}, row->notAfter.value_or(Time())};
}

const Sourced<physics::DeviceTimes>* ReferenceTables::deviceTimes(const DeviceFamily& family,
                                                                  Current rated) const {
    KnownDeviceTimes& known = tables_->deviceTimes;
    const std::lock_guard lock(known.mutex);
    const DeviceData& data = tables_->devices.of(family);
    const auto [at, isNew] = known.times.try_emplace({&data, rated.base()});
    if (isNew) at->second = promised(data, rated);
    return at->second ? &*at->second : nullptr;
}

std::optional<Sourced<Current>> ReferenceTables::operatingCurrent(const DeviceFamily& family, Current rated,
                                                                  Time time) const {
    std::optional<Sourced<Current>> least;
    forPromises(tables_->devices.of(family), rated,
                [&](Promise promise, const physics::TimeCurrent& point, const Source& source) {
                    if (promise == Promise::NotBefore || point.time > time) return;
                    if (!least || point.current < least->value) least = {point.current, source};
                });
    return least;
}

namespace {

/// Notes where a limit was published: the first counts, and memory weighs on all.
void add(Source& sources, const Source& source) {
    const bool recalled = sources.fromMemory || source.fromMemory;
    if (sources.title.empty()) sources = source;
    sources.fromMemory = recalled;
}

/// The tests of a breaker that concern its overload release (IEC 60898-1, table 7: a, b and c). Test b
/// follows straight on test a.
void addTests(const DeviceData& data, Current rated, Sourced<physics::ThermalLimits>& limits) {
    const TripRow* nonOperating = trip(data, rated, TripTest::ConventionalNonTripping);
    const TripRow* operating = trip(data, rated, TripTest::ConventionalTripping);
    const TripRow* point = trip(data, rated, TripTest::ThermalPoint);
    for (const TripRow* row : {nonOperating, point})
        if (row && row->notBefore) {
            limits.value.notBefore.push_back({rated * row->low, *row->notBefore});
            add(limits.source, row->source);
        }
    if (point && point->notAfter) limits.value.operatedBy.push_back({rated * point->high, *point->notAfter});
    if (nonOperating && nonOperating->notBefore && operating && operating->notAfter)
        limits.value.warm = {{rated * nonOperating->low, *nonOperating->notBefore},
                             {rated * operating->high, *operating->notAfter}};
}

/// Every promise about a fuse is one about its heat.
void addPromises(const DeviceData& data, Current rated, Sourced<physics::ThermalLimits>& limits) {
    forPromises(data, rated, [&](Promise promise, const physics::TimeCurrent& point, const Source& source) {
        (promise == Promise::NotBefore ? limits.value.notBefore : limits.value.operatedBy).push_back(point);
        add(limits.source, source);
    });
}

/// An adjustable breaker by its setting; `delay` is stated at 6 I_r (IEC 60947-2).
void addSettings(const physics::BreakerSpreads& spreads, Current setting, std::optional<Time> delay,
                 physics::ThermalLimits& limits) {
    constexpr Ratio delayStatedAt = 6;
    const Current holds = setting * spreads.conventional.low;
    limits.notBefore.push_back({holds, spreads.conventionalTime});
    limits.warm = {{holds, spreads.conventionalTime},
                   {setting * spreads.conventional.high, spreads.conventionalTime}};
    if (!delay) return;
    limits.notBefore.push_back({setting * delayStatedAt, *delay * spreads.overloadTime.low});
    limits.operatedBy.push_back({setting * delayStatedAt, *delay * spreads.overloadTime.high});
}

} // namespace

Sourced<physics::ThermalLimits> ReferenceTables::thermalLimits(const DeviceFamily& family, Current rated,
                                                               std::optional<Time> delay,
                                                               Current frame) const {
    const DeviceData& data = tables_->devices.of(family);
    Sourced<physics::ThermalLimits> limits;
    limits.value.carries = rated;
    if (family.adjustable) {
        const auto spreads = breakerSpreads(frame);
        addSettings(spreads.value, rated, delay, limits.value);
        limits.source = spreads.source;
    } else if (family.kind == DeviceKind::Breaker || family.kind == DeviceKind::Rcbo) {
        addTests(data, rated, limits);
    } else {
        addPromises(data, rated, limits);
    }
    if (limits.source.title.empty()) limits.source.title = family.label;
    return limits;
}

std::optional<Sourced<Resistance>> ReferenceTables::permittedLoop(const RuleSet& rules, Voltage lineToEarth,
                                                                  const DeviceFamily& family, Current rated,
                                                                  Time time) const {
    const std::vector<LoopRow>& loops = tables_->devices.of(family).loops;
    if (!rules.loopTableEdition.empty()) {
        const LoopRow* row = findLoop(loops, rated, time, [&](const LoopRow& printed) {
            return printed.edition == rules.loopTableEdition && printed.lineToEarth == lineToEarth;
        });
        if (!row)
            row = findLoop(loops, rated, time, [&](const LoopRow& other) {
                return other.computed && other.lineToEarth == lineToEarth &&
                       other.voltageFactor == rules.voltageFactorMin;
            });
        if (row) return Sourced<Resistance>{row->loop, row->source};
    }
    const auto operating = operatingCurrent(family, rated, time);
    if (!operating) return std::nullopt;
    static const SharedText computed("computed"); // made once, since every look-up hands it out
    Sourced<Resistance> result{physics::permittedLoop(lineToEarth, rules.voltageFactorMin, operating->value),
                               operating->source};
    result.source.confidence = computed;
    return result;
}

} // namespace loopwright
