// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"

#include <algorithm>
#include <cmath>

namespace loopwright::physics {

namespace {

/// Where the coefficients of IEC 60228 are taken.
constexpr Temperature coefficientReference = celsius(20);

} // namespace

Resistance loopImpedance(Resistance external, Resistance lineAndProtective) {
    return external + lineAndProtective;
}

Resistance permittedLoop(Voltage lineToEarth, Ratio voltageFactor, Current operating) {
    return lineToEarth * voltageFactor / operating;
}

Resistance atTemperature(Resistance resistance, Temperature from, Temperature to, double coefficient) {
    const auto factor = [&](Temperature at) { return 1 + coefficient * (at - coefficientReference).base(); };
    return resistance * (factor(to) / factor(from));
}

Resistance loopAtTemperature(Resistance measured, Resistance external, Temperature from, Temperature to,
                             double coefficient) {
    if (measured <= external) return measured;
    return external + atTemperature(measured - external, from, to, coefficient);
}

Resistance conductorResistance(ResistancePerLength perLength, Length length, double parallelConductors) {
    return perLength * length / parallelConductors;
}

Resistance conductorResistance(Resistivity resistivity, Length length, CrossSection size) {
    return resistivity * length / size;
}

Resistance lineAndProtective(ResistancePerLength line, ResistancePerLength protective, Length length) {
    return (line + protective) * length;
}

Length lengthFrom(Resistance resistance, ResistancePerLength perLength) {
    return resistance / perLength;
}

Length conventionalLongestRun(Voltage lineToEarth, Ratio voltageShare, CrossSection line,
                              Ratio lineToProtective, Resistivity resistivity, Current operating) {
    return lineToEarth * voltageShare / operating * line / (resistivity * (1 + lineToProtective));
}

Resistance ringLineAndProtective(Resistance line, Resistance protective) {
    return (line + protective) / 4;
}

Resistance ringProtectiveExpected(Resistance line, Ratio protectiveToLine) {
    return line * protectiveToLine;
}

Resistance ringLineAndProtectiveAt(Resistance line, Resistance protective, Ratio position) {
    const Resistance oneWay = line * position + protective * (1 - position);
    const Resistance otherWay = line * (1 - position) + protective * position;
    return oneWay * (otherWay / (oneWay + otherWay));
}

Ratio difference(Resistance a, Resistance b) {
    const Resistance larger = std::max(a, b);
    return larger.base() == 0 ? 0 : std::abs((a - b) / larger);
}

} // namespace loopwright::physics
