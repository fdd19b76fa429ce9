// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/prospective.h"

#include "core/checks/load_current.h"
#include "core/physics/fault.h"

namespace loopwright {
namespace {

/// Where a kind of readings keeps its loop to earth, and what that is called.
template <class Record>
struct LoopToEarth {
    Entry<Resistance> Record::*entry;
    std::string_view field;
    std::string_view symbol;
};
constexpr LoopToEarth<BoardReading> boardLoop{&BoardReading::loopImpedance, "loopImpedance_ohm", "Z_db"};
constexpr LoopToEarth<SupplyReading> supplyLoop{&SupplyReading::externalLoopImpedance,
                                                "externalLoopImpedance_ohm", "Z_e"};

/// The largest of several currents. Where any of them may be more than it says, so may the largest.
class Largest {
  public:
    void offer(const std::optional<Figure<Current>>& offered) {
        if (!offered) return;
        ++count_;
        mayBeMore_ = mayBeMore_ || offered->bound == Bound::OrMore || offered->bound == Bound::Open;
        if (!largest_ || offered->value > largest_->value) largest_ = offered;
    }
    int count() const { return count_; }
    std::optional<Figure<Current>> found() const {
        auto found = largest_;
        if (found && mayBeMore_) found->bound = combined(found->bound, Bound::OrMore);
        return found;
    }

  private:
    std::optional<Figure<Current>> largest_;
    bool mayBeMore_ = false;
    int count_ = 0;
};

/// A reading where there is one to reckon with; otherwise nothing, which is not noted: another may do.
template <class Record, class Q>
std::optional<Figure<Q>> readAt(const Record& record, Entry<Q> Record::*member, std::string_view field,
                                std::string_view symbol, Worksheet& sheet) {
    const Entry<Q>& entry = record.*member;
    if (!entry.hasFigure() || !isUsable(entry.value)) return std::nullopt;
    return sheet.figure(symbol, &record, member, field);
}

/// What flows through a loop that was read, shown under `symbol`.
std::optional<Figure<Current>> throughLoop(const VisitContext& visit,
                                           const std::optional<Figure<Resistance>>& loop,
                                           std::string_view symbol, std::string_view note, Worksheet& sheet) {
    if (!loop) return std::nullopt;
    const Figure<Current> most = mostThrough(visit, *loop);
    sheet.show([&] { return computedTerm(symbol, most.value, units::kiloampere, {note, {}}); });
    return most;
}

/// Between three phases, where only the current of one was found.
std::optional<Figure<Current>> betweenPhases(const std::optional<Figure<Current>>& ofOne, Worksheet& sheet) {
    if (!ofOne) return std::nullopt;
    const Current current = physics::threePhaseFromLineToNeutral(ofOne->value);
    sheet.show([&] {
        return computedTerm("I_LLL", current, units::kiloampere, {"check.note.three-phase-fault", {}});
    });
    return rising(current, *ofOne);
}

/// Whether nothing was read that tells of a fault between live conductors.
template <class Record>
bool tellsEarthAlone(const Record& record) {
    const auto isRead = [](const auto& entry) { return entry.hasFigure() && isUsable(entry.value); };
    return !isRead(record.prospectiveFaultCurrent) && !isRead(record.neutralLoopImpedance);
}

/// Whether the loops to earth and to neutral are the same conductors from the source to here. So they are
/// where one conductor serves as both (TN-C-S), up to the intake and to a board that no circuit feeds; behind
/// a feeder protective and neutral conductor run apart.
bool isOneLoop(const BoardContext& context, bool isAtIntake) {
    return context.earthing == Earthing::TnCS && isAtIntake;
}

/// What was read at one place and what follows from it. A loop through an electrode says nothing about a
/// fault between live conductors, and the current through it is the smallest of all. One through a protective
/// conductor of its own says only that no less flows between line and neutral.
template <class Record>
std::optional<Figure<Current>> atPlace(const BoardContext& context, const Record* record,
                                       const LoopToEarth<Record>& loop, Phases phases, bool isAtIntake,
                                       Worksheet& sheet, std::string_view symbol) {
    if (!record) return std::nullopt;
    Largest largest;
    largest.offer(
        readAt(*record, &Record::prospectiveFaultCurrent, "prospectiveFaultCurrent_kA", symbol, sheet));
    const auto toEarth = context.earthing == Earthing::Tt
                             ? std::nullopt
                             : readAt(*record, loop.entry, loop.field, loop.symbol, sheet);
    const auto toNeutral =
        readAt(*record, &Record::neutralLoopImpedance, "neutralLoopImpedance_ohm", "Z_LN", sheet);
    if (toEarth || toNeutral) {
        const RuleSet& rules = context.rules;
        sheet.show([&] { return nominalVoltageTerm(context); });
        sheet.show([&] {
            return ruleTerm("c_max", rules.voltageFactorMax, units::ratio,
                            rules.sourceOf("voltageFactorMax"));
        });
    }
    const auto earthFault = throughLoop(context, toEarth, "I_LE", "check.note.earth-fault", sheet);
    const auto neutralFault = throughLoop(context, toNeutral, "I_LN", "check.note.neutral-fault", sheet);
    largest.offer(earthFault);
    largest.offer(neutralFault);
    if (phases == Phases::Three)
        largest.offer(betweenPhases(neutralFault ? neutralFault : earthFault, sheet));
    auto found = largest.found();
    if (found && tellsEarthAlone(*record) && !isOneLoop(context, isAtIntake)) {
        found->bound = combined(found->bound, Bound::OrMore);
        sheet.leansOn(*record, "prospectiveFaultCurrent_kA");
    }
    if (largest.count() > 1)
        sheet.show([&] {
            return computedTerm(symbol, found->value, units::kiloampere, {"check.note.largest-fault", {}});
        });
    return found;
}

/// What is left of the supply's current at the board. Lengths are paced or taken off drawings, and conductors
/// may be better than their standard asks, so that only the share of their resistance counts that is sure to
/// be there. A circuit whose wiring is not known takes nothing off.
Figure<Current> behindFeeders(const BoardContext& context, const Figure<Current>& atSupply,
                              std::string_view symbol, Worksheet& sheet) {
    Resistance run;
    for (const Feeder& feeder : context.feeders)
        if (const auto resistance = lineResistance(context.tables, feeder.circuit)) {
            run += *resistance;
            sheet.show([&] {
                return computedTerm(
                    "R_1", *resistance, units::ohm,
                    {"check.note.feeder-resistance", {pathOf(context.installation, feeder.circuit)}});
            });
        }
    if (run == Resistance()) return atSupply;
    const auto& doubt = context.tables.band(Band::ContinuityShare);
    sheet.show([&] {
        return tableTerm("Δ", doubt.value, units::percent, doubt.source, {"check.note.doubtful-share", {}});
    });
    const Figure<Current> left{physics::mostFaultCurrentDownstream(atSupply.value, nominalVoltage(context),
                                                                   context.rules.voltageFactorMax,
                                                                   run * (1 - doubt.value)),
                               atSupply.bound, -1, atSupply.uncertainty};
    sheet.show([&] {
        return computedTerm(symbol, left.value, units::kiloampere, {"check.note.behind-feeders", {}});
    });
    return left;
}

} // namespace

Figure<Current> mostThrough(const VisitContext& visit, const Figure<Resistance>& loop) {
    return falling(
        physics::prospectiveCurrent(nominalVoltage(visit), visit.rules.voltageFactorMax, loop.value), loop);
}

std::optional<Resistance> lineResistance(const ReferenceTables& tables, const Circuit& circuit) {
    const Wiring& wiring = circuit.wiring;
    const auto size = usable(wiring.lineSize);
    const auto length = usable(wiring.length);
    const auto each = size ? tables.conductorResistance(wiring.material, *size) : std::nullopt;
    if (!each || !length) return std::nullopt;
    return each->value * *length / usable(wiring.parallelConductors).value_or(1);
}

std::optional<Figure<Current>> prospectiveCurrent(const BoardContext& context, Worksheet& sheet,
                                                  std::string_view symbol, std::optional<Current> limit) {
    const BoardReading* reading = context.boardReading;
    const auto here =
        atPlace(context, reading, boardLoop, context.board.phases, context.feeders.empty(), sheet, symbol);
    const bool isLowerBound = here && tellsEarthAlone(*reading) && here->bound == Bound::OrMore;
    const bool decides = here && (!isLowerBound || (limit && here->value > *limit));
    if (decides || (here && (!context.supplyReading || tellsEarthAlone(*context.supplyReading)))) return here;
    const Phases supplied = context.supply ? context.supply->phases : Phases::Three;
    if (auto found = atPlace(context, context.supplyReading, supplyLoop, supplied, true, sheet, symbol)) {
        if (context.feeders.empty()) return found;
        found = behindFeeders(context, *found, symbol, sheet);
        found->bound = combined(found->bound, Bound::OrLess);
        if (!here)
            sheet.leansOn(RecordKind::BoardReading, reading ? reading->id : Id{},
                          "prospectiveFaultCurrent_kA");
        return found;
    }
    if (here) return here;
    return sheet.figure(symbol, reading, &BoardReading::prospectiveFaultCurrent,
                        "prospectiveFaultCurrent_kA");
}

} // namespace loopwright
