// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/fault.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::physics {

namespace {

/// U2 / S: the impedance that would let the rated power flow.
Resistance ratedImpedance(const TransformerPlate& plate) {
    return plate.lineToLine * plate.lineToLine / plate.rated;
}

} // namespace

Current prospectiveCurrent(Voltage lineToEarth, Ratio voltageFactor, Resistance loop) {
    return lineToEarth * voltageFactor / loop;
}

Current threePhaseFromLineToNeutral(Current lineToNeutral, Ratio factor) {
    return factor * lineToNeutral;
}

Current lineToLineFromThreePhase(Current threePhase) {
    return threePhase * (std::numbers::sqrt3 / 2);
}

Current faultCurrentDownstream(Current upstream, Voltage lineToEarth, Ratio voltageFactor, Resistance run) {
    const Voltage driving = lineToEarth * voltageFactor;
    return driving / (driving / upstream + run);
}

Current faultCurrentDownstream(Current upstream, Voltage lineToEarth, Ratio voltageFactor,
                               Ratio upstreamResistanceToReactance, const Impedance& run) {
    const Voltage driving = lineToEarth * voltageFactor;
    return driving / magnitude(impedanceOf(driving / upstream, upstreamResistanceToReactance) + run);
}

Current mostFaultCurrentDownstream(Current upstream, Voltage lineToEarth, Ratio voltageFactor,
                                   Resistance run) {
    const Voltage driving = lineToEarth * voltageFactor;
    return driving / magnitude({run, driving / upstream});
}

Impedance transformerImpedance(const TransformerPlate& plate) {
    const Resistance whole = plate.impedanceVoltage * ratedImpedance(plate);
    if (!plate.loadLoss) return {Resistance(), whole};
    const Resistance resistance = std::min(whole, ratedImpedance(plate) * (*plate.loadLoss / plate.rated));
    const double share = resistance / whole;
    return {resistance, whole * std::sqrt(1 - share * share)};
}

Ratio transformerCorrection(const TransformerPlate& plate, Ratio voltageFactorMax) {
    const Ratio reactance = transformerImpedance(plate).reactance / ratedImpedance(plate);
    return 0.95 * voltageFactorMax / (1 + 0.6 * reactance);
}

Resistance networkImpedance(Power faultLevel, Voltage lineToLine) {
    return lineToLine * lineToLine / faultLevel;
}

Resistance networkImpedance(Current threePhaseFault, Voltage lineToLine, Ratio voltageFactor,
                            Ratio transformerRatio) {
    const Resistance atNetwork = voltageFactor * lineToLine / (std::numbers::sqrt3 * threePhaseFault);
    return atNetwork / (transformerRatio * transformerRatio);
}

Voltage touchVoltageInLoop(Voltage lineToEarth, Ratio voltageFactor, Resistance loop, Resistance protective) {
    return voltageFactor * lineToEarth * (protective / loop);
}

} // namespace loopwright::physics
