// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/load_current.h"
#include "core/physics/drop.h"
#include "core/physics/loop.h"

#include <array>
#include <cmath>

namespace loopwright {
namespace {

/// The load of a feeder that nobody recorded is taken as its device's rating: it cannot carry more for long.
std::optional<Figure<Current>> feederLoad(const VisitContext& visit, const Feeder& feeder, Worksheet& sheet) {
    const bool known = (feeder.reading && feeder.reading->measuredLoad.hasFigure()) ||
                       feeder.circuit.load.hasFigure() || !feeder.equipment.empty();
    const auto rated = usable(feeder.circuit.device.ratedCurrent);
    if (known || !rated) return loadCurrent(visit, feeder, sheet);
    sheet.show([&] {
        return assumedTerm("I_b", *rated, units::ampere,
                           {"check.note.load-of-feeder", {pathOf(visit.installation, feeder.circuit)}});
    });
    sheet.leansOn(feeder.circuit, "load_A");
    return Figure<Current>{*rated, Bound::OrLess};
}

/// Whether boards of one phase hang unevenly on the lines of a circuit; a three-phase one may even them out.
bool areUneven(const std::vector<const Board*>& boards) {
    std::array<int, 3> onLine{};
    for (const Board* board : boards) {
        if (board->phases == Phases::Three) return false;
        ++onLine[static_cast<std::size_t>(board->phases)];
    }
    return onLine[0] != onLine[1] || onLine[1] != onLine[2];
}

/// Whether all that a three-phase circuit serves is single-phase and does not spread evenly over its lines:
/// then the neutral carries what the loaded line does, and the drop is that of a single-phase circuit. Where
/// nothing says so the load counts as balanced.
bool returnsThroughNeutral(const VisitContext& visit, const CircuitRecords& records) {
    if (records.circuit.phases != Phases::Three) return false;
    const auto boards = visit.distribution.fedBy.find(records.circuit.id);
    if (boards != visit.distribution.fedBy.end() && !boards->second.empty()) return areUneven(boards->second);
    VisitContext unseen = visit;
    unseen.detail = Detail::VerdictOnly;
    Worksheet scratch(phrasing<"drop">, unseen, {RecordKind::Circuit, records.circuit.id});
    bool isUneven = false;
    for (const Equipment* equipment : records.equipment) {
        const auto drawn = equipmentCurrent(unseen, records.circuit, *equipment, scratch);
        if (!drawn || !drawn->singlePhase) return false;
        isUneven |= std::fmod(usable(equipment->count).value_or(1), 3) != 0;
    }
    return isUneven;
}

/// mV/A/m as published; where no table has the conductor, from its resistance at its highest temperature.
std::optional<VoltagePerCurrentLength> dropFigure(const VisitContext& visit, const Circuit& circuit,
                                                  CrossSection size, bool threePhase, Worksheet& sheet) {
    const Wiring& wiring = circuit.wiring;
    if (const auto table = visit.tables.voltageDrop(wiring.material, wiring.insulation, threePhase, size)) {
        sheet.show(
            [&] { return tableTerm("u", table->value, units::millivoltPerAmpereMetre, table->source); });
        return table->value;
    }
    const auto perLength = visit.tables.conductorResistance(wiring.material, size);
    const auto hottest = visit.tables.conductorLimit(wiring.insulation);
    if (!perLength || !hottest) {
        sheet.unpublished(circuit, "wiring.lineSize_mm2");
        return std::nullopt;
    }
    const auto coefficient = visit.tables.temperatureCoefficient(wiring.material);
    constexpr Length metre = metres(1);
    const Resistance hot =
        physics::atTemperature(perLength->value * metre, celsius(20), hottest->value, coefficient.value);
    const VoltagePerCurrentLength figure = physics::dropFromResistance(hot / metre, threePhase);
    sheet.show(
        [&] { return tableTerm("R/l", perLength->value, units::milliohmPerMetre, perLength->source); });
    sheet.show([&] {
        return computedTerm("u", figure, units::millivoltPerAmpereMetre,
                            {"check.note.drop-from-resistance", {}});
    });
    return figure;
}

/// By how much less than along one conductor: a ring carries half the load over half its length.
constexpr double ringShare = 4;

/// The drop along one circuit as a share of its nominal voltage.
std::optional<Figure<Ratio>> dropAlong(const VisitContext& visit, const CircuitRecords& records,
                                       const std::optional<Figure<Current>>& load, Worksheet& sheet) {
    const Circuit& circuit = records.circuit;
    const bool inNeutral = returnsThroughNeutral(visit, records);
    const bool threePhase = circuit.phases == Phases::Three && !inNeutral;
    const auto size = sheet.exact("S", circuit, circuit.wiring.lineSize, "wiring.lineSize_mm2");
    const auto length = sheet.exact("l", circuit, circuit.wiring.length, "wiring.length_m");
    const auto figure = size ? dropFigure(visit, circuit, *size, threePhase, sheet) : std::nullopt;
    const auto parallel = parallelConductors(circuit, sheet);
    if (!load || !length || !figure || !parallel) return std::nullopt;
    const double sharing = *parallel * (circuit.topology == Topology::Ring ? ringShare : 1);
    const Voltage drop = physics::voltageDrop(*figure, load->value, *length) / sharing;
    const Ratio share = physics::dropShare(drop, nominalVoltage(visit), threePhase);
    if (inNeutral)
        sheet.showAside([&] {
            return computedTerm("I_N", load->value, units::ampere, {"check.note.load-in-neutral", {}});
        });
    sheet.show([&] {
        return computedTerm("ΔU", share, units::percent,
                            {"check.note.drop-along", {pathOf(visit.installation, circuit)}});
    });
    return rising(share, *load);
}

/// A load, and the share of the voltage that it drops along one circuit.
struct Dropped {
    Figure<Current> load;
    Figure<Ratio> share;
};

/// In doubt where the load on the way that somebody measured or typed is far less than its equipment draws,
/// and with that the whole drop would pass the limit.
std::optional<Finding> doubtAlong(const VisitContext& visit, const CircuitRecords& records,
                                  const Dropped& dropped, Ratio total, Ratio limit, Worksheet& sheet) {
    if (!(dropped.share.value > 0)) return std::nullopt;
    const Ratio elsewhere = total - dropped.share.value;
    const Current bearable = dropped.load.value * ((limit - elsewhere) / dropped.share.value);
    return doubtLoad(visit, records, 1, bearable, sheet);
}
std::optional<Finding> doubtDrop(const CircuitContext& context, const Dropped& own, Ratio total, Ratio limit,
                                 Worksheet& sheet) {
    if (auto doubt = doubtAlong(context, context, own, total, limit, sheet)) return doubt;
    VisitContext unseen = context;
    unseen.detail = Detail::VerdictOnly;
    Worksheet aside(phrasing<"drop">, unseen, {RecordKind::Circuit, context.circuit.id});
    for (const Feeder& feeder : context.feeders) {
        const auto loads = loadAndEquipment(context, feeder);
        if (!loads || !loads->disagree()) continue;
        const auto load = feederLoad(unseen, feeder, aside);
        const auto share = dropAlong(unseen, feeder, load, aside);
        if (!share) continue;
        if (auto doubt = doubtAlong(context, feeder, {*load, *share}, total, limit, sheet)) return doubt;
    }
    return std::nullopt;
}

} // namespace

/// ΔU ≤ 3 % for lighting, 5 % for other uses, from the supply to the end of the circuit (IEC 60364-5-52,
/// annex G). Three-phase figures are those of a balanced load (BS 7671, appendix 4, 6); what single-phase
/// loads make uneven returns through the neutral, and drops its voltage there too.
Finding checkDrop(const CircuitContext& context) {
    Worksheet sheet(phrasing<"drop">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("ΔU = Σ u I_b l / U_0 ≤ ΔU_max");
    sheet.clause("drop");
    const bool isLighting = context.circuit.use == CircuitUse::Lighting;
    const Ratio limit = isLighting ? context.rules.dropLighting : context.rules.dropOther;

    sheet.show([&] { return nominalVoltageTerm(context); });
    Figure<Ratio> total;
    bool isWhole = true;
    const auto add = [&](const std::optional<Figure<Ratio>>& share) {
        if (share)
            total = rising(total.value + share->value, total, *share);
        else
            isWhole = false;
    };
    const auto load = loadCurrent(context, context, sheet);
    const auto own = dropAlong(context, context, load, sheet);
    add(own);
    for (const Feeder& feeder : context.feeders)
        add(dropAlong(context, feeder, feederLoad(context, feeder, sheet), sheet));
    if (!isWhole) return sheet.conclude();
    sheet.show([&] {
        return ruleTerm("ΔU_max", limit, units::percent,
                        context.rules.sourceOf(isLighting ? "dropLighting" : "dropOther"));
    });
    sheet.compare(Relation::AtMost, "ΔU", total, Figure<Ratio>{limit}, units::percent);
    if (auto doubt = doubtDrop(context, {*load, *own}, total.value, limit, sheet)) return std::move(*doubt);
    return sheet.conclude(measure(total, units::percent), measure(limit, units::percent));
}

} // namespace loopwright
