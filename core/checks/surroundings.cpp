// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/surroundings.h"

#include <algorithm>

namespace loopwright {

namespace {

/// What the warmth of its place leaves a breaker of its rating, and how that is known.
struct Warmth {
    enum class From : std::uint8_t {
        Rating,      ///< it is not warm
        Own,         ///< published for the rating
        Others,      ///< for others, which stand in
        BeyondTables ///< the warmest place that is published is cooler
    };
    Figure<Ratio> share{1};
    From from = From::Rating;
    Sourced<Ratio> published;
};

/// Of the rating itself; where its series ends, or there is none, of the others, and no more than where its
/// own ends.
Warmth warmthAt(const ReferenceTables& tables, Current rated, Temperature calibratedAt, Temperature ambient) {
    if (ambient <= calibratedAt) return {};
    const auto least = [](const Sourced<Ratio>& published) { return std::min<Ratio>(1, published.value); };
    if (const auto own = tables.breakerAmbientFactor(rated, calibratedAt, ambient))
        return {{least(*own)}, Warmth::From::Own, *own};
    const auto warmest = tables.warmestAmbientFactor(rated, calibratedAt);
    auto others = tables.leastAmbientFactor(ambient - calibratedAt);
    if (!others) {
        const Sourced<Ratio> beyond = warmest ? *warmest : tables.leastAmbientFactor();
        return {{least(beyond), Bound::OrLess}, Warmth::From::BeyondTables, beyond};
    }
    if (warmest) others->value = std::min(others->value, warmest->value);
    return {{least(*others)}, Warmth::From::Others, *others};
}

/// A place that is no warmer than something leaves more than that would, and one that is warmer less.
Warmth warmthOf(const ReferenceTables& tables, const Board& board, Current rated, Temperature calibratedAt) {
    Warmth warmth = warmthAt(tables, rated, calibratedAt, board.ambient.value);
    const Bound bound = boundOf(board.ambient.state);
    if (bound == Bound::OrMore) warmth.share.bound = Bound::OrLess;
    if (bound == Bound::OrLess && warmth.from != Warmth::From::Rating)
        warmth.share.bound =
            warmth.share.bound == Bound::Exact ? Bound::OrMore : combined(warmth.share.bound, Bound::OrMore);
    return warmth;
}

void show(const Warmth& warmth, Worksheet& sheet) {
    if (warmth.from == Warmth::From::Rating) return;
    sheet.show([&] {
        const bool isOwn = warmth.from == Warmth::From::Own;
        const std::string_view note = isOwn                                 ? "check.note.share-in-warmth"
                                      : warmth.from == Warmth::From::Others ? "check.note.share-of-others"
                                                                            : "check.note.share-at-most";
        const auto& [value, source] = warmth.published;
        return isOwn ? tableTerm("C_a", value, units::ratio, source, {note, {}})
                     : assumedTerm("C_a", value, units::ratio, {note, {}}, source);
    });
}

std::optional<Sourced<Temperature>> calibrationOf(const ReferenceTables& tables, const Board& board,
                                                  const DeviceFamily* family) {
    const bool isRecorded = board.ambient.hasFigure() && isUsable(board.ambient.value);
    return family && isRecorded ? tables.calibrationTemperature(*family) : std::nullopt;
}

/// What is published of times, for a breaker in its place: heat operates the earliest at less in the warmth,
/// or nobody knows, and the latest at more in the cold. What its magnet does within `atOnce` stays.
physics::DeviceTimes inPlace(physics::DeviceTimes times, const Figure<Ratio>& warmth,
                             const std::optional<Ratio>& cold, Time atOnce) {
    const auto move = [&](std::vector<physics::TimeCurrent>& points, const std::optional<Ratio>& share) {
        std::erase_if(points, [&](const auto& point) { return !share && point.time > atOnce; });
        for (physics::TimeCurrent& point : points)
            if (point.time > atOnce) point.current = point.current * *share;
    };
    const bool isKnown = warmth.bound == Bound::Exact || warmth.bound == Bound::OrMore;
    move(times.notBefore, isKnown ? std::optional(warmth.value) : std::nullopt);
    move(times.operatedBy, cold);
    move(times.curve, cold);
    return times;
}

} // namespace

Figure<Ratio> shareInWarmth(const VisitContext& visit, const Board& board, const DeviceFamily* family,
                            Current rated, Worksheet& sheet) {
    const Entry<Temperature>& around = board.ambient;
    if (!family || !around.hasFigure() || !isUsable(around.value)) return {1};
    const auto calibrated = calibrationOf(visit.tables, board, family);
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
    const Warmth warmth = warmthOf(visit.tables, board, rated, calibrated->value);
    show(warmth, sheet);
    if (warmth.from == Warmth::From::BeyondTables)
        sheet.unpublishedBeyond(board, "ambient_degC");
    else if (warmth.share.bound != Bound::Exact)
        sheet.beyondRange(board, "ambient_degC");
    return warmth.share;
}

std::optional<Ratio> shareInCold(const ReferenceTables& tables, const Board& board,
                                 const DeviceFamily* family) {
    const auto around = board.ambient.exact();
    const auto calibrated = calibrationOf(tables, board, family);
    if (!around || !calibrated || *around >= calibrated->value) return 1;
    const auto most = tables.mostAmbientFactor(calibrated->value - *around);
    return most ? std::optional(most->value) : std::nullopt;
}

Figure<Ratio> shareUnder(const CircuitContext& context, Current load, Current rated, Worksheet& sheet) {
    const Figure<Ratio> share = shareInWarmth(context, context.board, context.family, rated, sheet);
    return share.bound == Bound::OrMore && load > rated ? Figure<Ratio>{1, Bound::OrLess} : share;
}

std::optional<physics::DeviceTimes> timesInPlace(const ReferenceTables& tables, const Board& board,
                                                 const DeviceFamily& family, Current rated,
                                                 const physics::DeviceTimes& published) {
    const auto calibrated = calibrationOf(tables, board, &family);
    if (!calibrated) return std::nullopt;
    const Figure<Ratio> warmth = warmthOf(tables, board, rated, calibrated->value).share;
    const auto cold = shareInCold(tables, board, &family);
    if (warmth.bound == Bound::Exact && warmth.value == 1 && cold == 1) return std::nullopt;
    const auto band = tables.instantaneousBand(family, rated);
    return inPlace(published, warmth, cold, band ? band->within : Time());
}

} // namespace loopwright
