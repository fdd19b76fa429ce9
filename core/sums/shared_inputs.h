// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"

#include <numbers>

/// Inputs that several families of sums ask for, and the defaults that a rule set gives.
namespace loopwright::sums {

inline Standard nominalVoltage(const SumContext& context) {
    return {context.rules.nominalVoltage.base(), context.rules.sourceOf("nominalVoltage_V")};
}
inline Standard smallestVoltageFactor(const SumContext& context) {
    return {context.rules.voltageFactorMin, context.rules.sourceOf("voltageFactorMin")};
}
inline Standard largestVoltageFactor(const SumContext& context) {
    return {context.rules.voltageFactorMax, context.rules.sourceOf("voltageFactorMax")};
}
inline Standard largestTouchVoltage(const SumContext& context) {
    return {context.rules.touchVoltage.base(), context.rules.sourceOf("touchVoltage_V")};
}
inline Standard conventionalFactor(const SumContext& context) {
    return {context.rules.conventionalFactor, context.rules.sourceOf("conventionalFactor")};
}

inline constexpr auto lineToEarth =
    number<Voltage>("lineToEarthVoltage_V", "U_0", units::volt, nominalVoltage);
inline constexpr auto voltageFactor = within(
    {.least = 0.5, .most = 1.5}, number<Ratio>("voltageFactor", "c", units::ratio, smallestVoltageFactor));
/// Between lines where there are three phases, otherwise between line and neutral.
inline constexpr auto nominal = number<Voltage>("voltage_V", "U", units::volt);
inline constexpr auto isThreePhase = flag("threePhase");
inline constexpr auto powerFactor =
    within({.least = 0.01, .most = 1}, number<Ratio>("powerFactor", "cos φ", units::ratio, one));
inline constexpr auto efficiency =
    within({.least = 0.01, .most = 1}, number<Ratio>("efficiency", "η", units::ratio, one));
inline constexpr auto length = number<Length>("length_m", "l", units::metre);
inline constexpr auto ratedCurrent = number<Current>("ratedCurrent_A", "I_n", units::ampere);
inline constexpr auto loadCurrent = number<Current>("loadCurrent_A", "I_b", units::ampere);
inline constexpr auto conductorSize = number<CrossSection>("size_mm2", "S", units::squareMillimetre);

inline std::vector<std::string> deviceFamilyKeys(const SumContext& context) {
    std::vector<std::string> keys;
    for (const DeviceFamily& family : context.tables.deviceFamilies())
        keys.push_back(family.key);
    return keys;
}
/// A device family by its key in the tables; a given one is always there.
inline constexpr auto deviceFamily = name("device", deviceFamilyKeys);
inline constexpr auto disconnectionTime = number<Time>("time_s", "t", units::second);

/// Title and number of the clause that the rule set names for a purpose; empty where it names none.
Source ruleSource(const SumContext& context, std::string_view purpose);

/// The family of a sum that asks for `deviceFamily` and `ratedCurrent`; refused where it does not make that
/// rating, or where the tables know none.
tl::expected<const DeviceFamily*, Refusal> madeFamily(const Given& given, const SumContext& context);

/// The permitted loop of a sum that asks for `deviceFamily`, `ratedCurrent`, `disconnectionTime`,
/// `lineToEarth` and `voltageFactor`. Tables are printed for the factor of their rules; for any other the
/// loop follows from the device's operating current.
tl::expected<Sourced<Resistance>, Refusal> publishedLoop(const Given& given, const SumContext& context);

/// A refusal where two lists that belong together item by item are not equally long.
std::optional<Refusal> refuseUnlike(const Input& one, std::size_t oneCount, const Input& other,
                                    std::size_t otherCount);

/// The voltage of one phase, of a sum that asks for `nominal` and `isThreePhase`.
inline Voltage lineToEarthOf(const Given& given) {
    return given[isThreePhase] ? given[nominal] / std::numbers::sqrt3 : given[nominal];
}

} // namespace loopwright::sums
