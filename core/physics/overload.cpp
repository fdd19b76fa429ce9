// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/overload.h"

#include <cmath>

namespace loopwright::physics {

namespace {

double product(std::initializer_list<Ratio> factors) {
    double result = 1;
    for (const Ratio factor : factors)
        result *= factor;
    return result;
}

} // namespace

Current correctedCapacity(Current tabulated, std::initializer_list<Ratio> factors,
                          double parallelConductors) {
    return tabulated * product(factors) * parallelConductors;
}

Current conventionalOperatingCurrent(Current rated, Ratio operatingMultiple) {
    return rated * operatingMultiple;
}

Current deratedCurrent(Current rated, Ratio ambientFactor, Ratio groupingFactor) {
    return rated * ambientFactor * groupingFactor;
}

Current tabulatedCapacityNeeded(Current needed, std::initializer_list<Ratio> factors,
                                double parallelConductors) {
    return needed / product(factors) / parallelConductors;
}

Current largestOperatingCurrent(Current capacity, Ratio conventionalFactor) {
    return capacity * conventionalFactor;
}

Ratio conventionalCapacityFactor(Ratio operatingMultiple, Ratio conventionalFactor) {
    return conventionalFactor / operatingMultiple;
}

Ratio ambientFactor(Temperature limit, Temperature reference, Temperature ambient) {
    return std::sqrt((limit - ambient) / (limit - reference));
}

} // namespace loopwright::physics
