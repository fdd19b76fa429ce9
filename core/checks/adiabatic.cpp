// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/checks/fault.h"
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
    const auto k = context.tables.adiabaticFactor(role, wiring.material, wiring.insulation);
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
    if (energy.isUnlimited) {
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
            return beyondEquation(context, energy.lasts, sheet);
    }
    // More current may mean more energy or less, so a loop that is only bounded settles nothing.
    const Bound bound = fault->bound == Bound::Exact ? Bound::Exact : Bound::Open;
    const Figure<CrossSection> least{physics::adiabaticSize(*energy.energy, *k), bound, -1,
                                     fault->uncertainty};
    sheet.compare(Relation::AtMost, "S_min", least, Figure<CrossSection>{*size}, units::squareMillimetre);
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
