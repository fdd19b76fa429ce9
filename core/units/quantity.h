// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <compare>

/// Dimension-checked quantities in the units of the trade.
///
/// The base units are ampere, volt, second, metre, square millimetre and kelvin. A cross-section is a base
/// dimension of its own, not a length squared: tables key conductors by "2.5 mm2", and a detour through
/// square metres would turn that key into 2.4999999999999996. Everything else follows: ohm = V/A, watt = V A,
/// k of the adiabatic equation = A s^0.5 / mm2. Exponents are kept in halves, so that the square root of a
/// second has a place.
namespace loopwright {

struct Dimension {
    int ampere = 0, volt = 0, second = 0, metre = 0, squareMillimetre = 0, kelvin = 0;
    friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
};

constexpr Dimension operator+(const Dimension& a, const Dimension& b) {
    return {a.ampere + b.ampere,
            a.volt + b.volt,
            a.second + b.second,
            a.metre + b.metre,
            a.squareMillimetre + b.squareMillimetre,
            a.kelvin + b.kelvin};
}
constexpr Dimension operator-(const Dimension& a, const Dimension& b) {
    return {a.ampere - b.ampere,
            a.volt - b.volt,
            a.second - b.second,
            a.metre - b.metre,
            a.squareMillimetre - b.squareMillimetre,
            a.kelvin - b.kelvin};
}
constexpr Dimension half(const Dimension& d) {
    return {d.ampere / 2, d.volt / 2, d.second / 2, d.metre / 2, d.squareMillimetre / 2, d.kelvin / 2};
}

/// A number of one dimension, held in base units. Only like can be added to like or compared with it.
template <Dimension D>
class Quantity {
  public:
    static constexpr Dimension dimension = D;

    constexpr Quantity() = default;
    /// The value in base units; prefer the named makers below, which say the unit.
    constexpr explicit Quantity(double base)
      : base_(base) {}
    constexpr double base() const { return base_; }

    constexpr Quantity& operator+=(Quantity other) {
        base_ += other.base_;
        return *this;
    }
    constexpr Quantity operator-() const { return Quantity(-base_); }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.base_ + b.base_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.base_ - b.base_); }
    friend constexpr Quantity operator*(Quantity a, double f) { return Quantity(a.base_ * f); }
    friend constexpr Quantity operator*(double f, Quantity a) { return Quantity(f * a.base_); }
    friend constexpr Quantity operator/(Quantity a, double f) { return Quantity(a.base_ / f); }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;

  private:
    double base_ = 0;
};

/// Products and quotients; a result without dimension is a plain double.
template <Dimension A, Dimension B>
constexpr auto operator*(Quantity<A> a, Quantity<B> b) {
    if constexpr (A + B == Dimension{})
        return a.base() * b.base();
    else
        return Quantity<A + B>(a.base() * b.base());
}
template <Dimension A, Dimension B>
constexpr auto operator/(Quantity<A> a, Quantity<B> b) {
    if constexpr (A - B == Dimension{})
        return a.base() / b.base();
    else
        return Quantity<A - B>(a.base() / b.base());
}
template <Dimension D>
constexpr auto operator/(double f, Quantity<D> a) {
    return Quantity<Dimension{} - D>(f / a.base());
}
template <Dimension D>
auto sqrt(Quantity<D> a) {
    return Quantity<half(D)>(std::sqrt(a.base()));
}
template <Dimension D>
bool isFinite(Quantity<D> a) {
    return std::isfinite(a.base());
}

using Current = Quantity<Dimension{.ampere = 2}>;
using Voltage = Quantity<Dimension{.volt = 2}>;
using Time = Quantity<Dimension{.second = 2}>;
using Length = Quantity<Dimension{.metre = 2}>;
using CrossSection = Quantity<Dimension{.squareMillimetre = 2}>;
using TemperatureDifference = Quantity<Dimension{.kelvin = 2}>;
using Resistance = Quantity<Voltage::dimension - Current::dimension>;
using Power = Quantity<Voltage::dimension + Current::dimension>;
using ResistancePerLength = Quantity<Resistance::dimension - Length::dimension>;
using VoltagePerCurrentLength = ResistancePerLength;
using JouleIntegral = Quantity<Dimension{.ampere = 4, .second = 2}>;                           ///< I2t, A2s
using AdiabaticFactor = Quantity<Dimension{.ampere = 2, .second = 1, .squareMillimetre = -2}>; ///< k
using ThermalResistivity =
    Quantity<TemperatureDifference::dimension + Length::dimension - Power::dimension>; ///< of soil
using Ratio = double;

/// A temperature on the Celsius scale. Two of them differ by kelvins and cannot be added.
class Temperature {
  public:
    constexpr Temperature() = default;
    constexpr explicit Temperature(double celsius)
      : celsius_(celsius) {}
    constexpr double base() const { return celsius_; }
    friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
        return TemperatureDifference(a.celsius_ - b.celsius_);
    }
    friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) {
        return Temperature(a.celsius_ + d.base());
    }
    friend constexpr auto operator<=>(Temperature, Temperature) = default;

  private:
    double celsius_ = 0;
};

constexpr Current amperes(double v) {
    return Current(v);
}
constexpr Current milliamperes(double v) {
    return Current(v / 1000);
}
constexpr Current kiloamperes(double v) {
    return Current(v * 1000);
}
constexpr Voltage volts(double v) {
    return Voltage(v);
}
constexpr Time seconds(double v) {
    return Time(v);
}
constexpr Time milliseconds(double v) {
    return Time(v / 1000);
}
constexpr Time minutes(double v) {
    return Time(v * 60);
}
constexpr Time hours(double v) {
    return Time(v * 3600);
}
constexpr Length metres(double v) {
    return Length(v);
}
constexpr CrossSection squareMillimetres(double v) {
    return CrossSection(v);
}
constexpr Resistance ohms(double v) {
    return Resistance(v);
}
constexpr Resistance milliohms(double v) {
    return Resistance(v / 1000);
}
constexpr Resistance megohms(double v) {
    return Resistance(v * 1e6);
}
constexpr Power watts(double v) {
    return Power(v);
}
constexpr Power kilowatts(double v) {
    return Power(v * 1000);
}
constexpr TemperatureDifference kelvins(double v) {
    return TemperatureDifference(v);
}
constexpr Temperature celsius(double v) {
    return Temperature(v);
}
constexpr ThermalResistivity kelvinMetresPerWatt(double v) {
    return ThermalResistivity(v);
}
constexpr ResistancePerLength ohmsPerKilometre(double v) {
    return ResistancePerLength(v / 1000);
}

} // namespace loopwright
