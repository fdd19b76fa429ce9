// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

namespace loopwright {

/// U_0: of the supply where it is recorded, otherwise the rule set's.
Voltage nominalVoltage(const VisitContext& visit);
/// The term that goes with it.
Term nominalVoltageTerm(const VisitContext& visit);

/// The highest nominal voltage in a circuit: U_0, or sqrt(3) U_0 between its lines.
Voltage highestVoltage(const CircuitContext& context);

/// What one piece of equipment draws: its own current, or its power over voltage, power factor and
/// efficiency. On a three-phase circuit equipment whose rated voltage is nearer to U_0 than to sqrt(3) U_0 is
/// taken as single-phase.
struct EquipmentCurrent {
    Figure<Current> each;
    bool singlePhase = true;
};
std::optional<EquipmentCurrent> equipmentCurrent(const VisitContext& visit, const Circuit& circuit,
                                                 const Equipment& equipment, Worksheet& sheet);

/// How many pieces alike hang on the phase with most of them: single-phase ones on a three-phase circuit are
/// spread over its phases.
double piecesOnOnePhase(const Circuit& circuit, const EquipmentCurrent& drawn, double count);

/// The piece of equipment whose start draws most: its rated current times its starting multiple. The others
/// are not running.
struct Start {
    const Equipment* equipment = nullptr;
    Figure<Current> current;
};
std::optional<Start> largestStart(const VisitContext& visit, const CircuitRecords& circuit, Worksheet& sheet);

/// I_b, the design current of a circuit: what a clamp read, else what is typed for the circuit, else what its
/// equipment draws together in the phase that is loaded most. Shown with its terms under `symbol`.
std::optional<Figure<Current>> loadCurrent(const VisitContext& visit, const CircuitRecords& circuit,
                                           Worksheet& sheet, std::string_view symbol = "I_b");

} // namespace loopwright
