// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <span>

/// Insulation resistance of several circuits together, and of another length.
namespace loopwright::physics {

/// 1/R = 1/R_1 + 1/R_2 + ...: what is read where circuits are tested together (parallel resistances). None
/// may be zero; without any there is nothing to read and the answer is infinite.
Resistance inParallel(std::span<const Resistance> parts);

/// R l_1 / l_2: leakage grows with the length, so the resistance falls with it (the same cable throughout).
Resistance insulationOfLength(Resistance known, Length knownLength, Length length);

} // namespace loopwright::physics
