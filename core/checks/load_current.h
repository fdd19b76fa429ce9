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

/// Whether a rated voltage is nearer to that between lines, sqrt(3) U_0, than to U_0.
bool isBetweenLines(Voltage rated, Voltage lineToEarth);

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

/// A load that a clamp read or somebody typed, and beside it what the recorded equipment draws together. The
/// first counts; but it may stem from a moment when not everything ran.
struct TwoLoads {
    Current counted;
    Figure<Current> drawn;          ///< exact, or that and more
    Ratio share = 0;                ///< by which it may be above what counts
    const Source* source = nullptr; ///< of the share; nothing where an instrument records it
    bool wasMeasured = false;

    Current bearable() const { return counted * (1 + share); }
    bool disagree() const { return drawn.value > bearable(); }
};
/// Equipment that came into use after the visit is no witness against what was measured in it. Nothing where
/// either is not known, where bounds leave open which is larger, or for a load that somebody
/// only tries out.
std::optional<TwoLoads> loadAndEquipment(const VisitContext& visit, const CircuitRecords& circuit);

/// After `legShare` of I_b, the circuit's loadCurrent(), was held against a limit: the finding that nobody
/// can tell, where I_b keeps within the limit, and the recorded equipment draws far more and does not.
std::optional<Finding> doubtLoad(const VisitContext& visit, const CircuitRecords& circuit, Ratio legShare,
                                 Current limit, Worksheet& sheet);

} // namespace loopwright
