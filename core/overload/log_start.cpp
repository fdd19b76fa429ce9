// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/log_start.h"

#include <algorithm>
#include <cmath>

namespace loopwright::overload {

physics::ReplicaState LogStart::stateOf(const physics::ThermalReplica& replica) const {
    const double reference = replica.reference.base();
    physics::ReplicaState state{};
    for (std::size_t b = 0; b < state.size(); ++b)
        state[b] = squareBefore(replica.branches[b].constant.base()) / (reference * reference);
    return state;
}

Temperature LogStart::warmest(const Conductor& conductor, Time constant) const {
    constexpr double constantsToSettle = 1e3; // near the edge of running away it settles slowly
    constexpr double constantsToForget = 15;  // less than a millionth of the beginning is left
    const Current before = amperes(std::sqrt(squareBefore(constant.base())));
    const Ratio begun = Heating(conductor, constant).stateAfter(0, before, constant * constantsToSettle);
    Warming warming(conductor, constant);
    warming.warmed = {begun, begun};
    const double forgotten = constantsToForget * constant.base();
    for (std::size_t i = 0; i < channel_.amperes.size() && channel_.seconds[i] < forgotten; ++i)
        warming.goOn(channel_.amperes[i], stepOf(channel_, i));
    return temperatureOf(conductor, warming.warmed.peak);
}

double LogStart::squareBefore(double constant) const {
    return std::max(meanSquare_, meanSquareOfFirst(constant));
}

double LogStart::meanSquareOfFirst(double time) const {
    double energy = 0, elapsed = 0;
    for (const Block& block : blocks_) {
        if (elapsed + block.time <= time) {
            energy += block.energy;
            elapsed += block.time;
            continue;
        }
        for (std::size_t i = block.first; i < block.first + block.count && elapsed < time; ++i) {
            const double step = std::min(stepOf(channel_, i), time - elapsed);
            energy += channel_.amperes[i] * channel_.amperes[i] * step;
            elapsed += step;
        }
        break;
    }
    return elapsed > 0 ? energy / elapsed : 0;
}

} // namespace loopwright::overload
