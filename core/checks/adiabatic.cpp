// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/checks/fault.h"
#include "core/checks/load_current.h"
#include "core/checks/prospective.h"
#include "core/physics/fault.h"
#include "core/physics/heat.h"

namespace loopwright {
namespace {

ConductorRole protectiveRole(ProtectiveConductor conductor) {
    switch (conductor) {
    case ProtectiveConductor::InCable:
        return ConductorRole::ProtectiveInCable;
    case ProtectiveConductor::Separate:
        return ConductorRole::ProtectiveSeparate;
    case ProtectiveConductor::Armour:
        return ConductorRole::ProtectiveArmour;
    case ProtectiveConductor::Conduit:
        return ConductorRole::ProtectiveConduit;
    }
    return ConductorRole::ProtectiveInCable;
}

std::optional<AdiabaticFactor> factorK(const CircuitContext& context, ConductorRole role, Worksheet& sheet) {
    const Wiring& wiring = context.circuit.wiring;
    const auto size = usable(role == ConductorRole::Line ? wiring.lineSize : wiring.protectiveSize);
    const auto k = context.tables.adiabaticFactor(role, wiring.material, wiring.insulation, size);
    if (!k) {
        sheet.unpublished(context.circuit, "wiring.insulation");
        return std::nullopt;
    }
    sheet.show([&] { return tableTerm("k", k->value, units::adiabaticFactor, k->source); });
    return k->value;
}

/// Notes that a fault lasts longer than the equation is meant for.
void showTooLong(const RuleSet& rules, Worksheet& sheet) {
    sheet.show([&] {
        return ruleTerm("t_ad", rules.adiabaticTime, units::second, rules.sourceOf("adiabaticTime_s"),
                        {"check.note.adiabatic-time", {}});
    });
}

/// No verdict: the conductor would reach its limit only after heat has begun to flow off, so that it may well
/// bear more than the equation says.
Finding beyondEquation(const CircuitContext& context, Time lasts, Worksheet& sheet) {
    sheet.unpublished(context.circuit, "device.ratedCurrent_A");
    Finding finding = sheet.conclude();
    if (sheet.isFull())
        finding.sentence = {
            "check.adiabatic.too-long",
            {measure(lasts, units::second), measure(context.rules.adiabaticTime, units::second)}};
    return finding;
}

/// The fault current at the circuit's end. A line conductor is heated most by a fault between live
/// conductors. With the network's own earth the loop to earth stands for the one to neutral: it leads through
/// the same line conductor and a return that is hardly larger, so that its current is if anything the smaller
/// one. A loop through an electrode says nothing about faults between live conductors.
std::optional<Figure<Current>> currentAtEnd(const CircuitContext& context, ConductorRole role,
                                            Worksheet& sheet) {
    if (role != ConductorRole::Line) return faultCurrent(context, 1, sheet);
    const auto tt = isTt(context, sheet);
    if (!tt) return std::nullopt;
    return *tt ? neutralFaultCurrent(context, sheet) : faultCurrent(context, 1, sheet);
}

struct Conductor {
    ConductorRole role;
    CrossSection size;
    AdiabaticFactor k;
    EndedBy endedBy;
};

/// The most through a loop that was read, if it can be reckoned with.
std::optional<Figure<Current>> throughRead(const VisitContext& visit, const Entry<Resistance>& loop) {
    const auto impedance = usable(loop);
    if (!impedance) return std::nullopt;
    const Uncertainty& uncertainty = visit.uncertainties[static_cast<std::size_t>(Measurand::Loop)];
    return mostThrough(visit, {*impedance, Bound::Exact, -1, &uncertainty});
}

/// The largest current that a fault at the circuit's start drives through the conductor; for want of a
/// reading of just that, the largest of any fault there. Nothing where neither is known, which is not noted.
std::optional<Figure<Current>> currentAtStart(const CircuitContext& context, ConductorRole role) {
    const BoardReading* board = context.boardReading;
    Worksheet aside(phrasing<"adiabatic-line">, context, {RecordKind::Circuit, context.circuit.id});
    if (role != ConductorRole::Line) {
        const auto toEarth = board ? throughRead(context, board->loopImpedance) : std::nullopt;
        return toEarth ? toEarth : prospectiveCurrent(context, aside);
    }
    const CircuitReading* own = context.reading;
    if (const auto read = own ? usable(own->prospectiveFaultCurrent) : std::nullopt)
        return Figure<Current>{*read, Bound::Exact, -1,
                               &context.uncertainties[static_cast<std::size_t>(Measurand::Loop)]};
    const bool isThreePhase = context.circuit.phases == Phases::Three;
    const auto toNeutral =
        board && !isThreePhase ? throughRead(context, board->neutralLoopImpedance) : std::nullopt;
    return toNeutral ? toNeutral : prospectiveCurrent(context, aside);
}

/// Whether the device is marked as breaking this current. One that is not marked is taken to, which is shown:
/// whether it does is for the check of its breaking capacity to say.
bool breaksWhatFlows(const CircuitContext& context, Current fault, Worksheet& sheet) {
    const Entry<Current>& marked = context.circuit.device.breakingCapacity;
    if (const auto breaks = usable(marked)) return fault <= *breaks;
    if (!marked.isMissing() || !isUsable(fault)) return false;
    sheet.show([&] {
        return assumedTerm("I_cn", fault, units::kiloampere, {"check.note.taken-to-break", {}});
    });
    return true;
}

/// A device that protects a conductor against overload and breaks the prospective current is taken to protect
/// it against short circuits as well (IEC 60364-4-43, 435.1). That is in doubt for breakers that do not limit
/// the current, so that it is not relied on where the releases are set on site.
bool overloadProtects(const CircuitContext& context, Current rated, Current fault, Worksheet& sheet) {
    if (context.family->adjustable) return false;
    Worksheet aside(phrasing<"adiabatic-line">, context, {RecordKind::Circuit, context.circuit.id});
    const auto capacity = protectedCapacity(context, context, aside);
    if (!capacity || rated * legShare(context.rules, context.circuit) > *capacity) return false;
    if (!breaksWhatFlows(context, fault, sheet)) return false;
    sheet.show([&] {
        return computedTerm("I_z", *capacity, units::ampere, {"check.note.overload-protects", {}});
    });
    return true;
}

/// Sizes are published for conductors of copper in the cable, which is the least favourable place.
bool isPublishedAsEnough(const CircuitContext& context, const Conductor& conductor, Current rated,
                         Current fault, Worksheet& sheet) {
    const bool isCovered = context.circuit.wiring.material == Material::Copper &&
                           (conductor.role == ConductorRole::ProtectiveInCable ||
                            conductor.role == ConductorRole::ProtectiveSeparate);
    if (!isCovered) return false;
    const auto least = context.tables.leastProtective(*context.family, rated, fault);
    if (!least || conductor.size < least->value || !breaksWhatFlows(context, fault, sheet)) return false;
    sheet.show([&] {
        return assumedTerm("S_p", least->value, units::squareMillimetre, {"check.note.least-protective", {}},
                           least->source);
    });
    return true;
}

/// Whether the conductor is taken to bear a fault that a breaker ends at once, where the time published for
/// that proves nothing: it is a limit that such a current leaves far behind.
bool isTakenToBear(const CircuitContext& context, const Conductor& conductor, Current rated, Current fault,
                   Worksheet& sheet) {
    if (conductor.role == ConductorRole::Line) {
        if (!overloadProtects(context, rated, fault, sheet)) return false;
        sheet.phrase(Verdict::Holds, "check.adiabatic.overload-protects");
        return true;
    }
    if (!isPublishedAsEnough(context, conductor, rated, fault, sheet)) return false;
    sheet.phrase(Verdict::Holds, "check.adiabatic.published-as-enough");
    return true;
}

/// No verdict: nobody says what the device lets through at this current.
Finding unknownLetThrough(const CircuitContext& context, const Conductor& conductor, Current fault,
                          Worksheet& sheet) {
    const bool isMarked = usable(context.circuit.device.breakingCapacity).has_value();
    if (isMarked)
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
    else
        sheet.lacks(context.circuit, "device.breakingCapacity_kA");
    Finding finding = sheet.conclude();
    if (isMarked && sheet.isFull())
        finding.sentence = {
            "check.adiabatic.let-through-unknown",
            {measure(fault, units::ampere), measure(conductor.size, units::squareMillimetre)}};
    return finding;
}

/// Where it is not known what may flow at the start: the conductor bears whatever a breaker of its class lets
/// through, or the end decides.
void showUnknownStart(const CircuitContext& context, const Conductor& conductor, Current rated,
                      Current atLeast, Worksheet& sheet) {
    const auto breaks = usable(context.circuit.device.breakingCapacity);
    const auto most = breaks ? context.tables.letThrough(*context.family, rated, *breaks) : std::nullopt;
    const bool bearsAll = most && physics::adiabaticSize(most->value, conductor.k) <= conductor.size;
    sheet.show([&] {
        return bearsAll ? assumedTerm("I^{2}t", most->value, units::ampereSquaredSecond,
                                      {"check.note.let-through", {}}, most->source)
                        : assumedTerm("I_pf", atLeast, units::ampere, {"check.note.at-least-at-start", {}});
    });
}

/// What a breaker lets through rises with the current (IEC 60364-4-43, 434.5.2), so that a fault at the
/// circuit's start may heat its conductors more than one at its end.
/// Where nothing says what may flow at the start, the end decides and the working says so: that reading is
/// asked for by completeness and by the breaking capacity, and an inspector would not leave every circuit of
/// the board undecided for it.
Finding withStart(const CircuitContext& context, const Conductor& conductor, Current rated,
                  const Figure<Current>& atEnd, const Figure<CrossSection>& leastAtEnd, Worksheet& sheet) {
    const auto conclude = [&](const Figure<CrossSection>& least) {
        return sheet.conclude(measure(least, units::squareMillimetre),
                              measure(conductor.size, units::squareMillimetre));
    };
    // Through an electrode as little flows at the start as at the end.
    const bool throughElectrode = conductor.role != ConductorRole::Line && context.earthing == Earthing::Tt;
    if (throughElectrode) return conclude(leastAtEnd);
    auto start = currentAtStart(context, conductor.role);
    if (start && !isUsable(start->value)) start.reset();
    const bool isKnown = start && (start->bound == Bound::Exact || start->bound == Bound::OrLess);
    if (!isKnown) showUnknownStart(context, conductor, rated, start ? start->value : atEnd.value, sheet);
    if (!start || start->value <= atEnd.value) return conclude(leastAtEnd);

    sheet.show([&] {
        return computedTerm("I_pf", start->value, units::ampere, {"check.note.at-start", {}});
    });
    const FaultEnergy energy = faultEnergy(context, rated, start->value, conductor.endedBy, sheet);
    if (!energy.energy) return conclude(leastAtEnd);
    const Figure<CrossSection> least{physics::adiabaticSize(*energy.energy, conductor.k)};
    if (least.value <= conductor.size) {
        const bool isWorse = sheet.compare(Relation::AtMost, "S_min", least,
                                           Figure<CrossSection>{conductor.size}, units::squareMillimetre);
        return conclude(isWorse ? least : leastAtEnd);
    }
    if (isTakenToBear(context, conductor, rated, start->value, sheet)) return conclude(leastAtEnd);
    return unknownLetThrough(context, conductor, start->value, sheet);
}

/// √(I²t) / k ≤ S with the fault current of the measured loop and the latest time that the devices promise
/// (IEC 60364-4-43, 434.5.2; IEC 60364-5-54, 543.1.2). The equation leaves out the heat that flows off, which
/// counts in longer faults. It errs on the safe side there, so that what holds by it holds; what does not may
/// still hold, unless the limit is reached before any heat is reckoned to flow off.
Finding adiabatic(const CircuitContext& context, ConductorRole role, std::optional<CrossSection> size,
                  Worksheet&& sheet) {
    sheet.formula("√(I^{2}t) / k ≤ S");
    const auto rated = ratedCurrent(context, sheet);
    const auto fault = currentAtEnd(context, role, sheet);
    const auto k = factorK(context, role, sheet);
    const EndedBy endedBy = role == ConductorRole::Line ? EndedBy::OvercurrentDevice : EndedBy::AnyDevice;
    const FaultEnergy energy =
        rated && fault ? faultEnergy(context, *rated, fault->value, endedBy, sheet) : FaultEnergy{};
    const auto mayBeEnded = [&] {
        return endedBy == EndedBy::AnyDevice && lacksResidualRating(context, sheet);
    };
    if (energy.isUnlimited) {
        if (mayBeEnded()) return sheet.conclude();
        sheet.decide(Verdict::Fails);
        sheet.phrase(Verdict::Fails, "check.adiabatic.unlimited");
        return sheet.conclude(measure(*fault, units::ampere));
    }
    if (!energy.energy || !size || !k) return sheet.conclude();

    const Time longest = context.rules.adiabaticTime;
    if (energy.lasts > longest) {
        showTooLong(context.rules, sheet);
        const bool isTooSmall = physics::adiabaticSize(*energy.energy, *k) > *size;
        if (isTooSmall && physics::permissibleTime(*k, *size, fault->value) > longest)
            return mayBeEnded() ? sheet.conclude() : beyondEquation(context, energy.lasts, sheet);
    }
    // More current may mean more energy or less, so a loop that is only bounded settles nothing.
    const Bound bound = fault->bound == Bound::Exact ? Bound::Exact : Bound::Open;
    const Figure<CrossSection> least{physics::adiabaticSize(*energy.energy, *k), bound, -1,
                                     fault->uncertainty};
    const Conductor conductor{role, *size, *k, endedBy};
    const bool isBreaker = context.family && !isFuse(*context.family);
    if (least.value > *size && energy.atOnce && bound == Bound::Exact) {
        if (!isTakenToBear(context, conductor, *rated, fault->value, sheet))
            return unknownLetThrough(context, conductor, fault->value, sheet);
        sheet.decide(Verdict::Holds);
    } else {
        sheet.compare(Relation::AtMost, "S_min", least, Figure<CrossSection>{*size}, units::squareMillimetre);
    }
    if (isBreaker && sheet.verdict() != Verdict::Fails)
        return withStart(context, conductor, *rated, *fault, least, sheet);
    if (sheet.verdict() == Verdict::Fails && mayBeEnded()) return sheet.cannotTell();
    return sheet.conclude(measure(least, units::squareMillimetre), measure(*size, units::squareMillimetre));
}

} // namespace

Finding checkAdiabaticLine(const CircuitContext& context) {
    Worksheet sheet(phrasing<"adiabatic-line">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.clause("adiabatic-line");
    const Wiring& wiring = context.circuit.wiring;
    const auto size = sheet.exact("S", context.circuit, wiring.lineSize, "wiring.lineSize_mm2");
    const auto parallel = parallelConductors(context.circuit, sheet);
    const auto whole = size && parallel ? std::optional(*size * *parallel) : std::nullopt;
    return adiabatic(context, ConductorRole::Line, whole, std::move(sheet));
}

Finding checkAdiabaticProtective(const CircuitContext& context) {
    Worksheet sheet(phrasing<"adiabatic-protective">, context, {RecordKind::Circuit, context.circuit.id});
    const Wiring& wiring = context.circuit.wiring;
    if (wiring.protectiveSize.state == EntryState::NotApplicable)
        return sheet.doesNotApply("check.adiabatic-protective.no-size");
    sheet.clause("adiabatic-protective");
    const auto size = sheet.exact("S", context.circuit, wiring.protectiveSize, "wiring.protectiveSize_mm2");
    return adiabatic(context, protectiveRole(wiring.protectiveConductor), size, std::move(sheet));
}

} // namespace loopwright
