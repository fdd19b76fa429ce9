// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/fault.h"
#include "core/sums/shared_inputs.h"

/// Inputs of the sums that begin at a transformer (IEC 60909-0).
namespace loopwright::sums {

inline const Source impedances{.title = "IEC 60909-0"};

inline constexpr auto ratedPower = number<Power>("ratedPower_kVA", "S_r", units::kilovoltampere);
inline constexpr auto voltage = number<Voltage>("lineToLineVoltage_V", "U", units::volt);
inline constexpr auto impedanceVoltage =
    within({.least = 1e-3, .most = 1}, number<Ratio>("impedanceVoltage_percent", "u_k", units::percent));
inline constexpr auto loadLoss = optional<Power>("loadLoss_W", "P_kr", units::watt);
inline constexpr auto networkLevel = optional<Power>("networkFaultLevel_MVA", "S_k", units::megavoltampere);
/// c of a fault current; 1 unless given.
inline constexpr auto prospectiveFactor = number<Ratio>("prospectiveFactor", "c", units::ratio, one);

inline physics::TransformerPlate plateOf(const Given& given) {
    return {given[ratedPower], given[voltage], given[impedanceVoltage], given[loadLoss]};
}

} // namespace loopwright::sums
