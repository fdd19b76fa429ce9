// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/capacity.h"

#include "core/physics/overload.h"

namespace loopwright {
namespace {

bool isLeftOut(EntryState state) {
    return state == EntryState::Missing || state == EntryState::NotApplicable;
}

bool isInGround(InstallationMethod method) {
    return method == InstallationMethod::D1 || method == InstallationMethod::D2;
}

/// Takes the factors of a wiring one after the other; each is 1 where nothing is recorded.
class Factors {
  public:
    Factors(const VisitContext& visit, const Circuit& circuit, Worksheet& sheet)
      : visit_(visit)
      , circuit_(circuit)
      , wiring_(circuit.wiring)
      , sheet_(sheet) {}

    std::optional<Ratio> ambient() {
        if (isLeftOut(wiring_.ambient.state)) return 1;
        const auto temperature = sheet_.exact("θ_a", circuit_, wiring_.ambient, "wiring.ambient_degC");
        if (!temperature) return std::nullopt;
        return published("C_a", "wiring.ambient_degC",
                         visit_.tables.ambientFactor(visit_.rules.ambientStandard, wiring_.insulation,
                                                     *temperature, isInGround(wiring_.method)));
    }
    /// Conductors in parallel are grouped with each other (IEC 60364-5-52, 523.7, from memory), at the least;
    /// what is recorded of the grouping counts where it is more.
    std::optional<Ratio> grouping() {
        const Ratio inParallel = usable(wiring_.parallelConductors).value_or(1);
        std::optional<Ratio> circuits = 1;
        if (!isLeftOut(wiring_.groupedCircuits.state))
            circuits = sheet_.exact("n_g", circuit_, wiring_.groupedCircuits, "wiring.groupedCircuits");
        if (!circuits) return std::nullopt;
        if (inParallel > *circuits) {
            circuits = inParallel;
            sheet_.show([&] {
                return computedTerm("n_g", inParallel, units::ratio, {"check.note.grouped-in-parallel", {}});
            });
        }
        if (*circuits <= 1) return 1;
        return published("C_g", "wiring.groupedCircuits",
                         visit_.tables.groupingFactor(wiring_.method, static_cast<int>(*circuits)));
    }
    /// Of the soil around what is buried; where nobody recorded it, that of the tables is taken.
    std::optional<Ratio> soil() {
        const auto reference = visit_.tables.referenceSoil(wiring_.method);
        if (!reference) return 1;
        if (isLeftOut(wiring_.soilResistivity.state)) {
            sheet_.show([&] {
                return Term{"ρ_s",
                            measure(reference->value, units::kelvinMetrePerWatt),
                            TermOrigin::Assumed,
                            {"check.note.reference-soil", {}},
                            {}};
            });
            return 1;
        }
        const auto resistivity =
            sheet_.exact("ρ_s", circuit_, wiring_.soilResistivity, "wiring.soilResistivity_Km_per_W");
        if (!resistivity) return std::nullopt;
        return published("C_s", "wiring.soilResistivity_Km_per_W",
                         visit_.tables.soilFactor(wiring_.method, *resistivity));
    }
    std::optional<Ratio> insulated() {
        if (isLeftOut(wiring_.insulatedLength.state)) return 1;
        if (wiring_.insulatedLength.exact() == metres(0)) return 1;
        const auto length =
            sheet_.exact("l_i", circuit_, wiring_.insulatedLength, "wiring.insulatedLength_m");
        if (!length) return std::nullopt;
        return published("C_i", "wiring.insulatedLength_m", visit_.tables.insulatedFactor(*length));
    }

  private:
    std::optional<Ratio> published(std::string_view symbol, std::string_view field,
                                   const std::optional<Sourced<Ratio>>& factor) {
        if (!factor) {
            sheet_.unpublished(circuit_, field);
            return std::nullopt;
        }
        sheet_.show([&] { return tableTerm(symbol, factor->value, units::ratio, factor->source); });
        return factor->value;
    }

    const VisitContext& visit_;
    const Circuit& circuit_;
    const Wiring& wiring_;
    Worksheet& sheet_;
};

std::optional<Current> tabulated(const VisitContext& visit, const Circuit& circuit, Worksheet& sheet) {
    const Wiring& wiring = circuit.wiring;
    const auto size = sheet.exact("S", circuit, wiring.lineSize, "wiring.lineSize_mm2");
    if (wiring.method == InstallationMethod::Unknown) sheet.lacks(circuit, "wiring.method");
    if (!size || wiring.method == InstallationMethod::Unknown) return std::nullopt;
    const CableKey cable{wiring.method, wiring.material, wiring.insulation,
                         circuit.phases == Phases::Three ? 3 : 2, *size};
    if (const auto own = visit.tables.capacity(visit.rules.capacityStandard, cable)) {
        sheet.show([&] { return tableTerm("I_t", own->value, units::ampere, own->source); });
        return own->value;
    }
    const auto other = visit.tables.capacity(visit.rules.capacityElse, cable);
    if (!other) {
        sheet.unpublished(circuit, "wiring.lineSize_mm2");
        return std::nullopt;
    }
    sheet.show([&] {
        return assumedTerm("I_t", other->value, units::ampere, {"check.note.capacity-elsewhere", {}},
                           other->source);
    });
    return other->value;
}

std::optional<Sourced<Ratio>> buriedOverloadFactor(const VisitContext& visit, const Circuit& circuit) {
    return visit.tables.buriedOverloadFactor(visit.rules.capacityStandard, circuit.wiring.method);
}

} // namespace

std::optional<Current> wiringCapacity(const VisitContext& visit, const CircuitRecords& records,
                                      Worksheet& sheet) {
    const auto table = tabulated(visit, records.circuit, sheet);
    Factors factors(visit, records.circuit, sheet);
    const auto ambient = factors.ambient();
    const auto grouping = factors.grouping();
    const auto soil = factors.soil();
    const auto insulated = factors.insulated();
    const auto parallel = parallelConductors(records.circuit, sheet);
    if (!table || !ambient || !grouping || !soil || !insulated || !parallel) return std::nullopt;
    const Current capacity =
        physics::correctedCapacity(*table, {*ambient, *grouping, *soil, *insulated}, *parallel);
    sheet.show([&] { return computedTerm("I_z", capacity, units::ampere); });
    return capacity;
}

bool isLoweredForOverload(const VisitContext& visit, const Circuit& circuit) {
    return buriedOverloadFactor(visit, circuit).has_value();
}

std::optional<Current> protectedCapacity(const VisitContext& visit, const CircuitRecords& records,
                                         Worksheet& sheet) {
    const auto capacity = wiringCapacity(visit, records, sheet);
    const auto buried = buriedOverloadFactor(visit, records.circuit);
    if (!capacity || !buried) return capacity;
    const Current lowered = *capacity * buried->value;
    sheet.show([&] { return tableTerm("C_c", buried->value, units::ratio, buried->source); });
    sheet.show([&] {
        return computedTerm("C_c I_z", lowered, units::ampere, {"check.note.buried-overload", {}});
    });
    return lowered;
}

std::optional<Ratio> parallelConductors(const Circuit& circuit, Worksheet& sheet) {
    if (isLeftOut(circuit.wiring.parallelConductors.state)) return 1;
    return sheet.exact("n", circuit, circuit.wiring.parallelConductors, "wiring.parallelConductors");
}

Ratio legShare(const RuleSet& rules, const Circuit& circuit) {
    return circuit.topology == Topology::Ring ? rules.ringLeastCapacity / rules.ringRatedCurrent : 1;
}

} // namespace loopwright
