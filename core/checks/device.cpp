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

namespace {

/// What the place of a breaker leaves it, shown with its terms.
class Warmth {
  public:
    Warmth(const VisitContext& visit, const Board& board, Current rated, Temperature calibratedAt,
           Worksheet& sheet)
      : tables_(visit.tables)
      , board_(board)
      , rated_(rated)
      , calibratedAt_(calibratedAt)
      , warmest_(tables_.warmestAmbientFactor(rated, calibratedAt))
      , sheet_(sheet) {}

    Figure<Ratio> share() {
        const Entry<Temperature>& around = board_.ambient;
        const Bound bound = boundOf(around.state);
        if (bound != Bound::OrMore && around.value <= calibratedAt_) return {1};
        const auto factor = around.value <= calibratedAt_ ? std::optional<Ratio>(1) : at(around.value);
        if (!factor) return beyondTables();
        if (bound == Bound::Exact) return {*factor};
        sheet_.beyondRange(board_, "ambient_degC");
        return {*factor, bound == Bound::OrMore ? Bound::OrLess : Bound::OrMore};
    }

  private:
    /// Of the rating itself; where its series ends, or there is none, of the others, and no more than where
    /// its own ends.
    std::optional<Ratio> at(Temperature ambient) {
        if (const auto own = tables_.breakerAmbientFactor(rated_, calibratedAt_, ambient)) {
            sheet_.show([&] {
                return tableTerm("C_a", own->value, units::ratio, own->source,
                                 {"check.note.share-in-warmth", {}});
            });
            return std::min<Ratio>(1, own->value);
        }
        const auto others = tables_.leastAmbientFactor(ambient - calibratedAt_);
        if (!others) return std::nullopt;
        const Ratio least = std::min(others->value, warmest_ ? warmest_->value : others->value);
        sheet_.show([&] {
            return assumedTerm("C_a", least, units::ratio, {"check.note.share-of-others", {}},
                               others->source);
        });
        return least;
    }
    Figure<Ratio> beyondTables() {
        sheet_.unpublishedBeyond(board_, "ambient_degC");
        const auto least = warmest_ ? *warmest_ : tables_.leastAmbientFactor();
        sheet_.show([&] {
            return assumedTerm("C_a", least.value, units::ratio, {"check.note.share-at-most", {}},
                               least.source);
        });
        return {std::min<Ratio>(1, least.value), Bound::OrLess};
    }

    const ReferenceTables& tables_;
    const Board& board_;
    Current rated_;
    Temperature calibratedAt_;
    std::optional<Sourced<Ratio>> warmest_;
    Worksheet& sheet_;
};

} // namespace

Figure<Ratio> shareInWarmth(const VisitContext& visit, const Board& board, const DeviceFamily* family,
                            Current rated, Worksheet& sheet) {
    const Entry<Temperature>& around = board.ambient;
    if (!family || !around.hasFigure() || !isUsable(around.value)) return {1};
    const auto calibrated = visit.tables.calibrationTemperature(*family);
    if (!calibrated) {
        sheet.showAside([&] {
            return recordedTerm("θ_a", around, units::celsius, {"check.note.warmth-not-reckoned", {}});
        });
        return {1};
    }
    sheet.show([&] {
        return recordedTerm("θ_a", around, units::celsius, {"check.note.around-devices", {}});
    });
    sheet.show([&] {
        return tableTerm("θ_cal", calibrated->value, units::celsius, calibrated->source,
                         {"check.note.calibrated-at", {}});
    });
    return Warmth(visit, board, rated, calibrated->value, sheet).share();
}

std::optional<Ratio> shareInCold(const ReferenceTables& tables, const Board& board,
                                 const DeviceFamily* family) {
    const auto around = board.ambient.exact();
    const auto calibrated = family && around ? tables.calibrationTemperature(*family) : std::nullopt;
    if (!calibrated || !isUsable(*around) || *around >= calibrated->value) return 1;
    const auto most = tables.mostAmbientFactor(calibrated->value - *around);
    return most ? std::optional(most->value) : std::nullopt;
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
