// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <optional>
#include <string_view>

namespace loopwright {

/// What a unit is called and how it relates to the base unit: base = value * multiplier / divisor.
/// Milli-units divide by 1000 instead of multiplying by 0.001, so that 300 ms is exactly the 0.3 s of a
/// table.
struct Unit {
    std::string_view symbol; ///< as shown to people: "MΩ", "mm²"
    std::string_view suffix; ///< as it ends a key: "Mohm", "mm2"; empty for a plain number
    Dimension dimension;
    double multiplier = 1;
    double divisor = 1;
    bool isTemperature = false; ///< a point on the Celsius scale, not a difference

    constexpr double toBase(double value) const { return value * multiplier / divisor; }
    constexpr double fromBase(double base) const { return base * divisor / multiplier; }
    friend constexpr bool operator==(const Unit& a, const Unit& b) {
        return a.suffix == b.suffix && a.symbol == b.symbol;
    }
};

namespace units {
inline constexpr Unit ampere{"A", "A", Current::dimension};
inline constexpr Unit milliampere{"mA", "mA", Current::dimension, 1, 1000};
inline constexpr Unit kiloampere{"kA", "kA", Current::dimension, 1000};
inline constexpr Unit volt{"V", "V", Voltage::dimension};
inline constexpr Unit ohm{"Ω", "ohm", Resistance::dimension};
inline constexpr Unit milliohm{"mΩ", "mohm", Resistance::dimension, 1, 1000};
inline constexpr Unit megohm{"MΩ", "Mohm", Resistance::dimension, 1e6};
inline constexpr Unit second{"s", "s", Time::dimension};
inline constexpr Unit millisecond{"ms", "ms", Time::dimension, 1, 1000};
inline constexpr Unit minute{"min", "min", Time::dimension, 60};
inline constexpr Unit hour{"h", "h", Time::dimension, 3600};
inline constexpr Unit metre{"m", "m", Length::dimension};
inline constexpr Unit millimetre{"mm", "mm", Length::dimension, 1, 1000};
inline constexpr Unit squareMillimetre{"mm²", "mm2", CrossSection::dimension};
inline constexpr Unit watt{"W", "W", Power::dimension};
inline constexpr Unit kilowatt{"kW", "kW", Power::dimension, 1000};
inline constexpr Unit kilovoltampere{"kVA", "kVA", Power::dimension, 1000}; ///< apparent power
inline constexpr Unit megavoltampere{"MVA", "MVA", Power::dimension, 1e6};
inline constexpr Unit horsepower{"hp", "hp", Power::dimension, 745.7}; ///< mechanical, 550 ft lbf/s
inline constexpr Unit joule{"J", "J", Power::dimension + Time::dimension};
inline constexpr Unit celsius{"°C", "degC", TemperatureDifference::dimension, 1, 1, true};
inline constexpr Unit kelvin{"K", "K", TemperatureDifference::dimension};
inline constexpr Unit kelvinMetrePerWatt{"K·m/W", "Km_per_W", ThermalResistivity::dimension};
inline constexpr Unit ratio{"", "", Dimension{}};
inline constexpr Unit percent{"%", "percent", Dimension{}, 1, 100};
inline constexpr Unit ampereSquaredSecond{"A²s", "A2s", JouleIntegral::dimension};
inline constexpr Unit adiabaticFactor{"A·√s/mm²", "A_s05_per_mm2", AdiabaticFactor::dimension};
inline constexpr Unit milliohmPerMetre{"mΩ/m", "mohm_per_m", ResistancePerLength::dimension, 1, 1000};
inline constexpr Unit ohmSquareMillimetrePerMetre{"Ω·mm²/m", "ohm_mm2_per_m",
                                                  ResistancePerLength::dimension + CrossSection::dimension};
inline constexpr Unit millivoltPerAmpereMetre{"mV/A/m", "mV_per_A_m", ResistancePerLength::dimension, 1,
                                              1000};
} // namespace units

/// The unit that a person means by `text` ("kW", "mΩ", "ohm", "Mohm", "mm2"); nothing if it is not one we
/// know. Several spellings of the ohm and the micro sign are understood; letters' case matters only between m
/// and M.
std::optional<Unit> unitNamed(std::string_view text);

/// The number as `unit` counts it.
template <Dimension D>
constexpr double in(Quantity<D> quantity, const Unit& unit) {
    return unit.fromBase(quantity.base());
}
constexpr double in(Temperature temperature, const Unit& unit) {
    return unit.fromBase(temperature.base());
}

} // namespace loopwright
