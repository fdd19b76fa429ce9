// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/demand.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace loopwright::physics {

void LoadSums::add(Current load) {
    total += load;
    second = std::max(second, std::min(load, largest));
    largest = std::max(largest, load);
}

Current demandAfterAllowance(const LoadSums& loads, const Allowance& allowance, bool hasSocket) {
    const Current others = loads.total - loads.largest - loads.second;
    const Current shared =
        loads.largest * allowance.largest + loads.second * allowance.second + others * allowance.others;
    const Current inFull = std::min(loads.total, allowance.inFull) * (1 - allowance.largest);
    return shared + inFull + (hasSocket ? allowance.withSocket : Current());
}

Current demand(std::span<const Current> loads, const Allowance& allowance, bool hasSocket) {
    LoadSums sums;
    for (const Current load : loads)
        sums.add(load);
    return demandAfterAllowance(sums, allowance, hasSocket);
}

Current neutralCurrent(const std::array<LineLoad, 3>& lines) {
    std::complex<double> sum;
    for (std::size_t line = 0; line < lines.size(); ++line) {
        const double voltageAngle = -2 * std::numbers::pi / 3 * static_cast<double>(line);
        sum += std::polar(lines[line].current.base(), voltageAngle - std::acos(lines[line].powerFactor));
    }
    return Current(std::abs(sum));
}

Ratio imbalance(const std::array<Current, 3>& lines) {
    const Current mean = (lines[0] + lines[1] + lines[2]) / 3;
    if (mean == Current()) return 0;
    double largest = 0;
    for (const Current line : lines)
        largest = std::max(largest, std::abs(line / mean - 1));
    return largest;
}

} // namespace loopwright::physics
