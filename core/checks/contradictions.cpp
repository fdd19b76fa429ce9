// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"

#include <algorithm>

// Records that contradict each other or what there is. What rests on them is judged all the same; one of them
// is wrong.
namespace loopwright {

/// A protective conductor inside a cable is never larger than its line conductors (BS 6004, BS 5467, IEC
/// 60502-1).
Finding checkConductorSizes(const CircuitContext& context) {
    Worksheet sheet(phrasing<"conductor-sizes">, context, {RecordKind::Circuit, context.circuit.id});
    const Wiring& wiring = context.circuit.wiring;
    if (wiring.protectiveConductor != ProtectiveConductor::InCable)
        return sheet.doesNotApply("check.conductor-sizes.apart");
    const auto line = usable(wiring.lineSize), protective = usable(wiring.protectiveSize);
    if (!line || !protective) return sheet.doesNotApply("check.conductor-sizes.not-recorded");
    sheet.formula("S_2 ≤ S");
    sheet.show([&] { return recordedTerm("S", wiring.lineSize, units::squareMillimetre); });
    sheet.show([&] { return recordedTerm("S_2", wiring.protectiveSize, units::squareMillimetre); });
    sheet.compareRatings(Relation::AtMost, "S_2", *protective, *line, units::squareMillimetre);
    return sheet.conclude(measure(wiring.protectiveSize.value, units::squareMillimetre),
                          measure(wiring.lineSize.value, units::squareMillimetre));
}

/// A device of this rating is known in its family; an adjustable one is not set above its rating. The tables
/// may lack a rating that is made, so that an unknown one is in doubt and does not fail.
Finding checkDeviceRating(const CircuitContext& context) {
    Worksheet sheet(phrasing<"device-rating">, context, {RecordKind::Circuit, context.circuit.id});
    const Device& device = context.circuit.device;
    const auto rated = usable(device.ratedCurrent);
    if (!rated || !context.family) return sheet.doesNotApply("check.device-rating.not-recorded");
    sheet.show([&] { return recordedTerm("I_n", device.ratedCurrent, units::ampere); });
    if (context.family->adjustable) {
        const auto setting = usable(device.thermalSetting);
        if (!setting) return sheet.doesNotApply("check.device-rating.not-recorded");
        sheet.formula("I_r ≤ I_n");
        sheet.show([&] { return recordedTerm("I_r", device.thermalSetting, units::ampere); });
        sheet.compareRatings(Relation::AtMost, "I_r", *setting, *rated, units::ampere);
        sheet.phrase(Verdict::Holds, "check.device-rating.set-within");
        sheet.phrase(Verdict::Fails, "check.device-rating.setting");
        return sheet.conclude(measure(*setting, units::ampere), measure(*rated, units::ampere));
    }
    const bool isMade = context.tables.isRating(*context.family, *rated);
    sheet.decide(isMade ? Verdict::Holds : Verdict::Close);
    return sheet.conclude(measure(*rated, units::ampere), deviceWord(context.family));
}

/// An RCBO has a residual part (IEC 61009-1, 3.3). Where none is recorded, either that or the device is
/// wrong, and nobody can tell which.
Finding checkDeviceResidual(const CircuitContext& context) {
    Worksheet sheet(phrasing<"device-residual">, context, {RecordKind::Circuit, context.circuit.id});
    if (!context.family || context.family->kind != DeviceKind::Rcbo)
        return sheet.doesNotApply("check.device-residual.no-rcbo");
    if (context.circuit.residual.fitted) {
        sheet.decide(Verdict::Holds);
        return sheet.conclude();
    }
    sheet.lacks(context.circuit, "residual.fitted");
    Finding finding = sheet.conclude();
    if (sheet.isFull()) finding.sentence = {"check.device-residual.not-recorded", {}};
    return finding;
}

/// Equipment for the voltage between lines does not run on a circuit of one phase: one of the two is wrong,
/// and with it the current that is worked out.
Finding checkEquipmentVoltage(const CircuitContext& context) {
    Worksheet sheet(phrasing<"equipment-voltage">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.circuit.phases == Phases::Three)
        return sheet.doesNotApply("check.equipment-voltage.three-phase");
    bool isRecorded = false;
    for (const Equipment* equipment : context.equipment) {
        const auto rated = usable(equipment->ratedVoltage);
        if (!rated) continue;
        isRecorded = true;
        if (!isBetweenLines(*rated, nominalVoltage(context))) continue;
        sheet.show([&] { return nominalVoltageTerm(context); });
        sheet.show([&] {
            return recordedTerm("U", equipment->ratedVoltage, units::volt,
                                {"check.note.equipment", {equipment->name}});
        });
        sheet.decide(Verdict::Fails);
        return sheet.conclude(equipment->name, measure(*rated, units::volt));
    }
    if (!isRecorded) return sheet.doesNotApply("check.equipment-voltage.not-recorded");
    sheet.decide(Verdict::Holds);
    return sheet.conclude();
}

/// What the recorded equipment draws together is not far above the load that a clamp read or somebody typed,
/// which counts: otherwise not everything was running, or not everything that is recorded is there. By our
/// own choice of a share and the clamp's uncertainty. What such a load leaves in doubt is told where the load
/// is judged, so that the worst verdict is close.
Finding checkLoadAgreement(const CircuitContext& context) {
    Worksheet sheet(phrasing<"load-agreement">, context, {RecordKind::Circuit, context.circuit.id});
    const auto loads = loadAndEquipment(context, context);
    if (!loads) return sheet.doesNotApply("check.load-agreement.one-figure");
    sheet.formula("I_e ≤ (1 + c) I_b");
    loadCurrent(context, context, sheet);
    sheet.show([&] {
        return computedTerm(
            "I_e", loads->drawn.value, units::ampere,
            {loads->wasMeasured ? "check.note.measured-counts" : "check.note.typed-counts", {}});
    });
    sheet.show([&] {
        if (loads->source) return tableTerm("c", loads->share, units::percent, *loads->source);
        return Term{"c",
                    measure(loads->share, units::percent),
                    TermOrigin::Typed,
                    {"check.note.uncertainty-instrument", {}},
                    {}};
    });
    sheet.compareTolerance(Relation::AtMost, "I_e", Figure<Current>{loads->drawn.value},
                           Figure<Current>{loads->bearable()}, units::ampere);
    sheet.atWorst(Verdict::Close);
    if (!loads->wasMeasured) {
        sheet.phrase(Verdict::Holds, "check.load-agreement.holds-typed");
        sheet.phrase(Verdict::Close, "check.load-agreement.close-typed");
    }
    return sheet.conclude(measure(loads->drawn, units::ampere), measure(loads->counted, units::ampere));
}

namespace {

bool has(Phases there, Phases wanted) {
    return there == Phases::Three || there == wanted;
}

} // namespace

/// A circuit is on a phase that its board has.
Finding checkPhases(const CircuitContext& context) {
    Worksheet sheet(phrasing<"phases">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.decide(has(context.board.phases, context.circuit.phases) ? Verdict::Holds : Verdict::Fails);
    return sheet.conclude();
}

/// A board has no phase that its feeder, or the supply, does not bring.
Finding checkBoardPhases(const BoardContext& context) {
    Worksheet sheet(phrasing<"phases">, context, {RecordKind::Board, context.board.id});
    if (context.feeders.empty() && !context.supply) return sheet.doesNotApply("check.phases.not-known");
    const Phases there =
        context.feeders.empty() ? context.supply->phases : context.feeders.front().circuit.phases;
    sheet.decide(has(there, context.board.phases) ? Verdict::Holds : Verdict::Fails);
    sheet.phrase(Verdict::Fails, "check.phases.fails-board");
    sheet.phrase(Verdict::Holds, "check.phases.holds-board");
    return sheet.conclude();
}

} // namespace loopwright
