// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/device.h"

#include "core/checks/surroundings.h"

namespace loopwright {

Word deviceWord(const DeviceFamily* family) {
    if (!family) return {"check.word.device"};
    switch (family->kind) {
    case DeviceKind::Breaker:
        return {"check.word.breaker"};
    case DeviceKind::Rcbo:
        return {"check.word.rcbo"};
    case DeviceKind::CartridgeFuse:
        return {"check.word.fuse"};
    case DeviceKind::RewirableFuse:
        return {"check.word.rewirable-fuse"};
    case DeviceKind::PlugFuse:
        return {"check.word.plug-fuse"};
    }
    return {"check.word.device"};
}

bool isFuse(const DeviceFamily& family) {
    return family.kind == DeviceKind::CartridgeFuse || family.kind == DeviceKind::RewirableFuse ||
           family.kind == DeviceKind::PlugFuse;
}

std::optional<Current> ratedCurrent(const CircuitRecords& records, Worksheet& sheet) {
    return sheet.exact("I_n", records.circuit, records.circuit.device.ratedCurrent, "device.ratedCurrent_A");
}

const DeviceFamily* deviceFamily(const CircuitRecords& records, Worksheet& sheet) {
    if (!records.family) sheet.lacks(records.circuit, "device.family");
    return records.family;
}

namespace {

/// The multiple of I_r that an overload delay is stated at (Device::thermalDelay).
constexpr double delayStatedAt = 6;

physics::BreakerSettings settingsOf(const Device& device, Current rated) {
    physics::BreakerSettings settings{usable(device.thermalSetting).value_or(rated), {}, {}, {}};
    if (const auto delay = usable(device.thermalDelay))
        settings.overloadTime = {settings.overload * delayStatedAt, *delay};
    const auto shortTime = usable(device.shortTimeSetting);
    const auto delay = device.shortTimeDelay.exact();
    const bool isWithoutDelay = delay == Time();
    if (shortTime && delay && (isWithoutDelay || isUsable(*delay))) settings.shortTime = {*shortTime, *delay};
    settings.instantaneous = usable(device.instantaneousSetting);
    return settings;
}

} // namespace

InstantaneousBand setBand(Current setting, Current rated, const physics::Spread& spread,
                          const Source& source) {
    return {setting / rated * spread.low, setting / rated * spread.high, source};
}

OvercurrentTimes overcurrentTimes(const ReferenceTables& tables, const Device& device, const Board* board) {
    const DeviceFamily* family = tables.deviceFamily(device.family);
    const auto rated = usable(device.ratedCurrent);
    if (!family || !rated) return nullptr;
    if (family->adjustable) {
        const physics::BreakerSettings settings = settingsOf(device, *rated);
        const auto spreads = tables.breakerSpreads(*rated);
        return std::make_shared<const Sourced<physics::DeviceTimes>>(
            Sourced<physics::DeviceTimes>{physics::breakerTimes(settings, spreads.value), spreads.source});
    }
    const auto* published = tables.deviceTimes(*family, *rated);
    auto moved =
        published && board ? timesInPlace(tables, *board, *family, *rated, published->value) : std::nullopt;
    if (!moved) return {OvercurrentTimes(), published};
    return std::make_shared<const Sourced<physics::DeviceTimes>>(
        Sourced<physics::DeviceTimes>{std::move(*moved), published->source});
}

} // namespace loopwright
