// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/installation.h"
#include "core/reference/reference_tables.h"

namespace loopwright {

/// What resistances a visit would read of a circuit that is not there yet: R_1+R_2 of its conductors at
/// 20 degC along its length (IEC 60228, by the tables), and Z_s of that behind the loop where it begins, as
/// it was read at its board, or at the supply where no circuit feeds that and its earth is the supply's.
/// Marked as computed. Whatever else is read stays missing, and so does what too little is known for: a
/// protective conductor without a size, armour and conduit.
CircuitReading predictedReading(const Installation& installation, Id visit, const Circuit& circuit,
                                const ReferenceTables& tables);

/// R/l of a conductor in so many strands of parallel conductors, by the tables.
std::optional<ResistancePerLength> resistancePerLength(const ReferenceTables& tables, Material material,
                                                       const Entry<CrossSection>& size, Ratio parallel = 1);

/// Whether the protective conductor is one of copper or aluminium, whose size says what it resists; armour
/// and conduit are of steel, and their make decides.
bool isProtectiveAConductor(const Wiring& wiring);
/// R/l of that, by the tables; nothing of armour and conduit, whatever size is recorded.
std::optional<ResistancePerLength> protectivePerLength(const ReferenceTables& tables, const Wiring& wiring);

} // namespace loopwright
