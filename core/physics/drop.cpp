// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/drop.h"

#include <cmath>
#include <numbers>

namespace loopwright::physics {

namespace {

Voltage nominal(Voltage lineToEarth, bool threePhase) {
    return threePhase ? std::numbers::sqrt3 * lineToEarth : lineToEarth;
}

/// How often one conductor's drop counts.
double conductors(bool threePhase) {
    return threePhase ? std::numbers::sqrt3 : 2.0;
}

/// r cos phi + x sin phi, of what is inductive.
template <class Q>
Q alongCurrent(Q resistance, Q reactance, Ratio powerFactor) {
    return resistance * powerFactor + reactance * std::sqrt(1 - powerFactor * powerFactor);
}

} // namespace

Voltage voltageDrop(VoltagePerCurrentLength published, Current load, Length length) {
    return published * length * load;
}

VoltagePerCurrentLength dropFromResistance(ResistancePerLength conductor, bool threePhase) {
    return conductor * conductors(threePhase);
}

VoltagePerCurrentLength dropFromImpedance(const ImpedancePerLength& conductor, Ratio powerFactor,
                                          bool threePhase) {
    return conductors(threePhase) * alongCurrent(conductor.resistance, conductor.reactance, powerFactor);
}

Voltage voltageDrop(const Impedance& conductor, Current load, Ratio powerFactor, bool threePhase) {
    return conductors(threePhase) * alongCurrent(conductor.resistance, conductor.reactance, powerFactor) *
           load;
}

Ratio partialLoadFactor(const PartialLoad& circuit) {
    constexpr TemperatureDifference zeroPoint = kelvins(230);
    const double factors = circuit.ambientFactor * circuit.groupingFactor,
                 share = circuit.load / circuit.tabulated;
    const TemperatureDifference whole = zeroPoint + (circuit.limit - celsius(0));
    const TemperatureDifference cooler =
        (factors * factors - share * share) * (circuit.limit - circuit.ambient);
    return (whole - cooler) / whole;
}

Ratio dropShare(Voltage drop, Voltage lineToEarth, bool threePhase) {
    return drop / nominal(lineToEarth, threePhase);
}

Length longestRun(VoltagePerCurrentLength published, Current load, Voltage limit) {
    return limit / (published * load);
}

Length longestRun(VoltagePerCurrentLength published, Current load, Voltage lineToEarth, bool threePhase,
                  Ratio share) {
    return longestRun(published, load, share * nominal(lineToEarth, threePhase));
}

} // namespace loopwright::physics
