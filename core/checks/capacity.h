// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

namespace loopwright {

/// I_z of the circuit's wiring: the tabulated capacity of its method, material, insulation and size, times
/// the factors for ambient temperature, bunching, soil, thermal insulation and conductors in parallel. Shown
/// with its terms. The factor of rewirable fuses is not among them: it belongs to the conventional current
/// (I_2 = 2 I_n), which checks it once.
std::optional<Current> wiringCapacity(const VisitContext& visit, const CircuitRecords& circuit,
                                      Worksheet& sheet);

/// Conductors in parallel a phase: one where nobody recorded it. Nothing where what is recorded cannot be
/// used.
std::optional<Ratio> parallelConductors(const Circuit& circuit, Worksheet& sheet);

/// The share of a load that one leg of the circuit's wiring carries: all of it, or for a ring what the ring
/// allowance reckons (a device of ringRatedCurrent on legs of ringLeastCapacity).
Ratio legShare(const RuleSet& rules, const Circuit& circuit);

} // namespace loopwright
