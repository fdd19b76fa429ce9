// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/device.h"

#include <algorithm>

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

Figure<Ratio> shareInWarmth(const CircuitContext& context, Current rated, Worksheet& sheet) {
    const Entry<Temperature>& around = context.board.ambient;
    const auto calibrated =
        context.family ? context.tables.calibrationTemperature(*context.family) : std::nullopt;
    if (!calibrated || !around.hasFigure() || !isUsable(around.value)) return {1};
    sheet.show([&] {
        return recordedTerm("θ_a", around, units::celsius, {"check.note.around-devices", {}});
    });
    sheet.show([&] {
        return tableTerm("θ_cal", calibrated->value, units::celsius, calibrated->source,
                         {"check.note.calibrated-at", {}});
    });
    if (around.state != EntryState::Above && around.value <= calibrated->value) return {1};
    if (boundOf(around.state) != Bound::Exact) {
        sheet.beyondRange(context.board, "ambient_degC");
        return {1, Bound::OrLess};
    }
    const auto published = context.tables.breakerAmbientFactor(rated, calibrated->value, around.value);
    if (published) {
        sheet.show([&] {
            return tableTerm("C_a", published->value, units::ratio, published->source,
                             {"check.note.share-in-warmth", {}});
        });
        return {std::min<Ratio>(1, published->value)};
    }
    const auto least = context.tables.leastBreakerAmbientFactor(rated, calibrated->value);
    const bool isListed = least && least->value < 1;
    const auto ofOthers = context.tables.strictestAmbientFactor(calibrated->value, around.value);
    if (!isListed && ofOthers) {
        sheet.show([&] {
            return assumedTerm("C_a", ofOthers->value, units::ratio, {"check.note.share-of-others", {}},
                               ofOthers->source);
        });
        return {std::min<Ratio>(1, ofOthers->value)};
    }
    sheet.unpublishedBeyond(context.board, "ambient_degC");
    if (!isListed) return {1, Bound::OrLess};
    sheet.show([&] {
        return tableTerm("C_a", least->value, units::ratio, least->source, {"check.note.share-at-most", {}});
    });
    return {least->value, Bound::OrLess};
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

OvercurrentTimes overcurrentTimes(const ReferenceTables& tables, const Device& device) {
    const DeviceFamily* family = tables.deviceFamily(device.family);
    const auto rated = usable(device.ratedCurrent);
    if (!family || !rated) return nullptr;
    if (!family->adjustable) return {OvercurrentTimes(), tables.deviceTimes(*family, *rated)};
    const physics::BreakerSettings settings = settingsOf(device, *rated);
    const auto spreads = tables.breakerSpreads(*rated);
    return std::make_shared<const Sourced<physics::DeviceTimes>>(
        Sourced<physics::DeviceTimes>{physics::breakerTimes(settings, spreads.value), spreads.source});
}

} // namespace loopwright
