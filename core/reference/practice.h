// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/choices.h"
#include "core/reference/source.h"
#include "core/units/quantity.h"

#include <cstddef>
#include <cstdint>
#include <optional>

/// What published guidance and our own judgement say beside the limits of a standard. Looked up through
/// ReferenceTables.
namespace loopwright {

/// A band of judgement: a row of judgement_bands.csv. Where no standard says how far two readings may differ,
/// the choice is ours and its row says so.
enum class Band : std::uint8_t {
    LoopShare,           ///< by which a loop may lie above the sum of its parts
    LoopAllowance,       ///< and by this many ohms besides
    ContinuityShare,     ///< by which R1+R2 may differ from what length and sizes lead to expect
    ContinuityAllowance, ///< and by this many ohms besides
    RingOpenMultiple,    ///< of what is expected, from which on a leg counts as open
    DriftLoop,           ///< multiple of the reading before
    DriftAllowance,      ///< least difference in ohms that counts as drift
    DriftElectrode,      ///< multiple of the reading before
    ImbalanceShare,      ///< by which one line's demand may differ from the mean of the three
    ImbalanceAllowance,  ///< and by this many amperes besides
    DeviceShift,         ///< share by which an overheated device is assumed to operate early
    ContinuousTime,      ///< hours without a rest from which on a load counts as continuous
    LoadShare,           ///< by which recorded equipment may draw more than was measured or typed
    ContinuousShare,     ///< of a plug fuse's rating that a continuous load may draw and nobody wonder
};

/// What an instrument measures, as far as its uncertainty goes.
enum class Measurand : std::uint8_t { Continuity, Insulation, Loop, ResidualTime, Electrode, LoadCurrent };
inline constexpr std::size_t measurandCount = 6;

/// The type of residual current device that a kind of equipment asks for.
struct ResidualTypeNeed {
    ResidualType type = ResidualType::Unknown;
    std::optional<ResidualType> onCondition; ///< does as well where the maker promises what the row says
    Source source;
};

/// The protective conductors at the intake.
enum class MainConductor : std::uint8_t { Earthing, Bonding };

} // namespace loopwright
