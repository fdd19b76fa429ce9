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

/// Whether the rule set lowers I_z by C_c where protection against overload is held against it (BS 7671,
/// appendix 4, 5.1: of buried cables).
bool isLoweredForOverload(const VisitContext& visit, const Circuit& circuit);
/// I_z, or C_c I_z where isLoweredForOverload(). Shown with its terms.
std::optional<Current> protectedCapacity(const VisitContext& visit, const CircuitRecords& circuit,
                                         Worksheet& sheet);

/// Conductors in parallel a phase: one where nobody recorded it. Nothing where what is recorded cannot be
/// used.
std::optional<Ratio> parallelConductors(const Circuit& circuit, Worksheet& sheet);

/// The share of a load that one leg of the circuit's wiring carries: all of it, or for a ring what the ring
/// allowance reckons (a device of ringRatedCurrent on legs of ringLeastCapacity).
Ratio legShare(const RuleSet& rules, const Circuit& circuit);

} // namespace loopwright
