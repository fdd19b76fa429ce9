// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/what_if.h"

#include "core/checks/verdict.h"

#include <algorithm>
#include <map>

namespace loopwright {
namespace {

/// Worst first; what holds and what does not apply ask for nothing, so neither is better.
int rank(const std::optional<Finding>& finding) {
    if (!finding || finding->verdict == Verdict::DoesNotApply) return static_cast<int>(Verdict::Holds);
    return static_cast<int>(finding->verdict);
}

std::vector<Equipment> equipmentOf(const Installation& installation, Id circuit) {
    std::vector<Equipment> found;
    for (const Equipment& equipment : installation.equipment)
        if (equipment.circuit == circuit) found.push_back(equipment);
    return found;
}

/// R/l of a conductor in so many strands of parallel conductors.
std::optional<ResistancePerLength> perLength(const ReferenceTables& tables, Material material,
                                             const Entry<CrossSection>& size, Ratio parallel = 1) {
    const auto exact = usable(size);
    const auto row = exact ? tables.conductorResistance(material, *exact) : std::nullopt;
    return row ? std::optional(row->value / parallel) : std::nullopt;
}

struct Lengthwise {
    std::optional<ResistancePerLength> line, protective;
    static Lengthwise of(const ReferenceTables& tables, const Wiring& wiring) {
        return {perLength(tables, wiring.material, wiring.lineSize,
                          usable(wiring.parallelConductors).value_or(1)),
                perLength(tables, wiring.material, wiring.protectiveSize)};
    }
};

void scale(Entry<Resistance>& reading, Ratio factor) {
    if (!reading.hasFigure() || factor == 1) return;
    reading.value = reading.value * factor;
    reading.origin = Origin::Computed;
}

/// What other conductors make of what was read.
void foretellResistances(CircuitReading& reading, const Lengthwise& before, const Lengthwise& after) {
    if (!before.line || !after.line) return;
    const Ratio line = *after.line / *before.line;
    scale(reading.ringLine, line);
    scale(reading.ringNeutral, line);
    const bool both = before.protective && after.protective;
    if (both) scale(reading.ringProtective, *after.protective / *before.protective);
    // Where the protective conductor is not known by size (armour, conduit) it stays as it is, and so does
    // the sum: it errs on the safe side.
    if (!both || !reading.continuity.hasFigure()) return;
    const Resistance was = reading.continuity.value;
    scale(reading.continuity, (*after.line + *after.protective) / (*before.line + *before.protective));
    if (!reading.loopImpedance.hasFigure() || reading.continuity.value == was) return;
    const Resistance upstream = std::max(reading.loopImpedance.value - was, Resistance());
    reading.loopImpedance.value = upstream + reading.continuity.value;
    reading.loopImpedance.origin = Origin::Computed;
}

std::vector<Finding> elsewhere(std::vector<Finding> findings, Id circuit) {
    std::erase_if(findings, [&](const Finding& finding) { return finding.subject.id == circuit; });
    return findings;
}

/// Whether the change touches nothing but the circuit and its equipment.
bool isOfCircuit(const Change& change, const Installation& before, const Installation& after, Id circuit) {
    const auto belongs = [&](const Installation& site, Id id) {
        const Equipment* equipment = find(site.equipment, id);
        return !equipment || equipment->circuit == circuit;
    };
    return std::ranges::all_of(change.edits, [&](const Edit& edit) {
        if (edit.kind == RecordKind::Equipment) return belongs(before, edit.id) && belongs(after, edit.id);
        return edit.kind == RecordKind::Circuit && edit.id == circuit && edit.step == Edit::Step::Set &&
               std::ranges::none_of(edit.values,
                                    [](const Edit::Value& value) { return value.key == "board"; });
    });
}

} // namespace

bool CheckShift::isBetter() const {
    return rank(after) > rank(before);
}

bool CheckShift::isWorse() const {
    return rank(after) < rank(before);
}

std::vector<CheckShift> shiftsBetween(std::vector<Finding> before, std::vector<Finding> after) {
    using Key = std::pair<Id, std::string_view>;
    const auto keyOf = [](const Finding& finding) { return Key(finding.subject.id, finding.check); };
    std::map<Key, Finding> known;
    for (Finding& finding : before)
        known.emplace(keyOf(finding), std::move(finding));
    std::vector<CheckShift> shifts;
    for (Finding& finding : after) {
        CheckShift shift{finding.subject, finding.check, std::nullopt, std::nullopt};
        if (const auto found = known.find(keyOf(finding)); found != known.end()) {
            shift.before = std::move(found->second);
            known.erase(found);
        }
        shift.after = std::move(finding);
        shifts.push_back(std::move(shift));
    }
    for (auto& [key, finding] : known) {
        const Subject subject = finding.subject;
        const std::string_view check = finding.check;
        shifts.push_back({subject, check, std::move(finding), std::nullopt});
    }
    return shifts;
}

tl::expected<Installation, Message> foretold(const Installation& installation, Id visit, Id circuit,
                                             const Change& change, const ReferenceTables& tables) {
    Installation changed = installation;
    if (auto done = apply(changed, change); !done) return tl::unexpected(done.error());
    const Circuit* before = find(installation.circuits, circuit);
    const Circuit* after = find(changed.circuits, circuit);
    if (!before || !after) return changed;
    const bool otherEquipment = equipmentOf(installation, circuit) != equipmentOf(changed, circuit);
    const bool otherLoad = before->load != after->load || otherEquipment;
    if (otherLoad && !otherEquipment)
        for (Circuit& each : changed.circuits)
            if (each.id == circuit) each.load.origin = Origin::Computed;
    for (CircuitReading& reading : changed.circuitReadings) {
        if (reading.visit != visit || reading.circuit != circuit) continue;
        if (otherLoad) reading.measuredLoad = {};
        foretellResistances(reading, Lengthwise::of(tables, before->wiring),
                            Lengthwise::of(tables, after->wiring));
    }
    return changed;
}

tl::expected<WhatIf, Message> whatIf(const Installation& installation, Id visit, Id circuit,
                                     const Change& change, const ReferenceTables& tables,
                                     const RuleSet& rules) {
    auto changed = foretold(installation, visit, circuit, change, tables);
    if (!changed) return tl::unexpected(changed.error());
    WhatIf result{std::move(*changed), {}, {}};
    result.circuit = shiftsBetween(assessCircuit(installation, visit, circuit, tables, rules),
                                   assessCircuit(result.changed, visit, circuit, tables, rules));
    const bool isAround = isOfCircuit(change, installation, result.changed, circuit);
    const auto rest = [&](const Installation& site) {
        if (isAround) return assessAround(site, visit, circuit, tables, rules, Detail::VerdictOnly);
        return elsewhere(assess(site, visit, tables, rules, Detail::VerdictOnly).findings, circuit);
    };
    result.elsewhere = shiftsBetween(rest(installation), rest(result.changed));
    std::erase_if(result.elsewhere,
                  [](const CheckShift& shift) { return !shift.isBetter() && !shift.isWorse(); });
    return result;
}

} // namespace loopwright
