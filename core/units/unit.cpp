// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/unit.h"

#include <array>

namespace loopwright {
namespace {

struct Spelling {
    std::string_view text;
    Unit unit;
};

// Ω has two code points (Greek omega and the ohm sign), and ohm is what a keyboard without either writes.
constexpr std::array spellings{
    Spelling{"A", units::ampere},
    Spelling{"a", units::ampere},
    Spelling{"mA", units::milliampere},
    Spelling{"ma", units::milliampere},
    Spelling{"kA", units::kiloampere},
    Spelling{"ka", units::kiloampere},
    Spelling{"V", units::volt},
    Spelling{"v", units::volt},
    Spelling{"Ω", units::ohm},
    Spelling{"Ω", units::ohm},
    Spelling{"ohm", units::ohm},
    Spelling{"Ohm", units::ohm},
    Spelling{"mΩ", units::milliohm},
    Spelling{"mΩ", units::milliohm},
    Spelling{"mohm", units::milliohm},
    Spelling{"MΩ", units::megohm},
    Spelling{"MΩ", units::megohm},
    Spelling{"Mohm", units::megohm},
    Spelling{"Megohm", units::megohm},
    Spelling{"megohm", units::megohm},
    Spelling{"s", units::second},
    Spelling{"ms", units::millisecond},
    Spelling{"min", units::minute},
    Spelling{"h", units::hour},
    Spelling{"m", units::metre},
    Spelling{"mm", units::millimetre},
    Spelling{"mm²", units::squareMillimetre},
    Spelling{"mm2", units::squareMillimetre},
    Spelling{"W", units::watt},
    Spelling{"w", units::watt},
    Spelling{"kW", units::kilowatt},
    Spelling{"kw", units::kilowatt},
    Spelling{"kVA", units::kilovoltampere},
    Spelling{"MVA", units::megavoltampere},
    Spelling{"hp", units::horsepower},
    Spelling{"°C", units::celsius},
    Spelling{"degC", units::celsius},
    Spelling{"C", units::celsius},
    Spelling{"K", units::kelvin},
    Spelling{"K·m/W", units::kelvinMetrePerWatt},
    Spelling{"Km/W", units::kelvinMetrePerWatt},
    Spelling{"%", units::percent},
};

} // namespace

std::optional<Unit> unitNamed(std::string_view text) {
    for (const Spelling& spelling : spellings)
        if (spelling.text == text) return spelling.unit;
    return std::nullopt;
}

} // namespace loopwright
