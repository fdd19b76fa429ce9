// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/what_if.h"

#include "core/assess/visit_records.h"
#include "core/checks/verdict.h"
#include "core/remedy/predicted_reading.h"
#include "core/remedy/recorded_load.h"

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

struct Lengthwise {
    std::optional<ResistancePerLength> line, protective;
    static Lengthwise of(const ReferenceTables& tables, const Wiring& wiring) {
        return {resistancePerLength(tables, wiring.material, wiring.lineSize,
                                    usable(wiring.parallelConductors).value_or(1)),
                protectivePerLength(tables, wiring)};
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
    // Where the protective conductor's size does not say what it resists (armour, conduit) it stays as it is,
    // and so does the sum: it errs on the safe side.
    if (!both || !reading.continuity.hasFigure()) return;
    const Resistance was = reading.continuity.value;
    scale(reading.continuity, (*after.line + *after.protective) / (*before.line + *before.protective));
    if (!reading.loopImpedance.hasFigure() || reading.continuity.value == was) return;
    const Resistance upstream = std::max(reading.loopImpedance.value - was, Resistance());
    reading.loopImpedance.value = upstream + reading.continuity.value;
    reading.loopImpedance.origin = Origin::Computed;
}

/// What a clamp would read with the equipment that the circuit has after a change: nothing where that is not
/// known.
Entry<Current> clampAfter(const Entry<Current>& clamp, const Installation& before, const Installation& after,
                          Id visit, Id circuit, const ReferenceTables& tables, const RuleSet& rules) {
    using Left = std::optional<Current>;
    const auto left = inCircuit(before, visit, circuit, tables, rules, [&](const CircuitContext& was) {
        return inCircuit(after, visit, circuit, tables, rules, [&](const CircuitContext& is) -> Left {
            const auto staying = recordedPieces(is, is);
            const auto less = drawnLess(recordedPieces(was, was), staying);
            return less ? Left(loadLeft(clamp.value, *less, knownSum(staying))) : std::nullopt;
        });
    });
    if (!left || !(*left > Current())) return {};
    Entry<Current> then = clamp;
    if (*left == clamp.value) return then;
    then.value = *left;
    then.origin = Origin::Computed;
    return then;
}

bool contains(const std::vector<Id>& ids, Id id) {
    return std::ranges::find(ids, id) != ids.end();
}

/// Other circuits that the change makes, or brings into use: a way that was spare.
std::vector<Id> broughtIntoUse(const Change& change, const Installation& before, const Installation& after,
                               Id circuit) {
    std::vector<Id> made;
    for (const Edit& edit : change.edits) {
        if (edit.kind != RecordKind::Circuit || edit.id == circuit || contains(made, edit.id)) continue;
        const Circuit* was = find(before.circuits, edit.id);
        const Circuit* is = find(after.circuits, edit.id);
        if (is && isInUse(*is) && !(was && isInUse(*was))) made.push_back(edit.id);
    }
    return made;
}

/// Whether the change touches nothing but the circuit, those that it makes on the same board, and the
/// equipment of both.
bool isOfCircuit(const Change& change, const Installation& before, const WhatIf& result, Id circuit,
                 const std::vector<Id>& made) {
    const Circuit* own = find(before.circuits, circuit);
    const auto isHere = [&](Id each) { return each == circuit || contains(made, each); };
    const auto belongs = [&](const Installation& site, Id id) {
        const Equipment* equipment = find(site.equipment, id);
        return !equipment || isHere(equipment->circuit);
    };
    return own && std::ranges::all_of(change.edits, [&](const Edit& edit) {
               if (edit.kind == RecordKind::Equipment)
                   return belongs(before, edit.id) && belongs(result.changed, edit.id);
               if (edit.kind != RecordKind::Circuit || !isHere(edit.id)) return false;
               const Circuit* was = find(before.circuits, edit.id);
               const Circuit* is = find(result.changed.circuits, edit.id);
               return is && is->board == own->board && (!was || was->board == own->board);
           });
}

/// Every check of the circuits that a change brings into use, where there was nothing to check.
std::vector<CheckShift> shiftsOfMade(const Installation& changed, Id visit, const std::vector<Id>& made,
                                     const ReferenceTables& tables, const RuleSet& rules, Detail detail) {
    std::vector<CheckShift> shifts;
    for (const Id circuit : made)
        for (Finding& finding : assessCircuit(changed, visit, circuit, tables, rules, detail)) {
            const Subject subject = finding.subject;
            const std::string_view check = finding.check;
            shifts.push_back({subject, check, std::nullopt, std::move(finding)});
        }
    return shifts;
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
                                             const Change& change, const ReferenceTables& tables,
                                             const RuleSet& rules) {
    auto result = applied(installation, change);
    if (!result) return result;
    Installation& changed = *result;
    for (const Id made : broughtIntoUse(change, installation, changed, circuit))
        if (!findReading(changed.circuitReadings, visit, &CircuitReading::circuit, made))
            changed.circuitReadings.push_back(
                predictedReading(changed, visit, *find(changed.circuits, made), tables));
    const Circuit* before = find(installation.circuits, circuit);
    const Circuit* after = find(changed.circuits, circuit);
    if (!before || !after) return result;
    const bool otherEquipment = equipmentOf(installation, circuit) != equipmentOf(changed, circuit);
    const bool otherLoad = before->load != after->load;
    if (otherLoad && !otherEquipment)
        for (Circuit& each : changed.circuits)
            if (each.id == circuit) each.load.origin = Origin::Computed;
    for (CircuitReading& reading : changed.circuitReadings) {
        if (reading.visit != visit || reading.circuit != circuit) continue;
        if (otherLoad)
            reading.measuredLoad = {};
        else if (otherEquipment && reading.measuredLoad.hasFigure())
            reading.measuredLoad =
                clampAfter(reading.measuredLoad, installation, changed, visit, circuit, tables, rules);
        foretellResistances(reading, Lengthwise::of(tables, before->wiring),
                            Lengthwise::of(tables, after->wiring));
    }
    return result;
}

namespace {

bool isClampStale(const Installation& before, const Installation& after, Id visit, Id circuit) {
    const auto clampOf = [&](const Installation& site) {
        const auto* reading = findReading(site.circuitReadings, visit, &CircuitReading::circuit, circuit);
        return reading ? reading->measuredLoad : Entry<Current>();
    };
    return clampOf(before).hasFigure() && clampOf(before) != clampOf(after);
}

/// What is known of the installation before, or is to be found out in full.
tl::expected<WhatIf, Message> tried(const Installation& installation, Id visit, Id circuit,
                                    const Change& change, const ReferenceTables& tables, const RuleSet& rules,
                                    const AsItIs* known) {
    auto changed = foretold(installation, visit, circuit, change, tables, rules);
    if (!changed) return tl::unexpected(changed.error());
    WhatIf result{std::move(*changed), {}, {}, {}};
    result.isClampStale = isClampStale(installation, result.changed, visit, circuit);
    const Detail detail = known ? Detail::VerdictOnly : Detail::Full;
    const std::vector<Id> made = broughtIntoUse(change, installation, result.changed, circuit);
    result.circuit =
        shiftsBetween(known ? known->circuit : assessCircuit(installation, visit, circuit, tables, rules),
                      assessCircuit(result.changed, visit, circuit, tables, rules, detail));
    result.made = shiftsOfMade(result.changed, visit, made, tables, rules, detail);
    const bool isAround = isOfCircuit(change, installation, result, circuit, made);
    const auto restOf = [&](const Installation& site) {
        return isAround ? assessAround(site, visit, circuit, tables, rules, Detail::VerdictOnly)
                        : assess(site, visit, tables, rules, Detail::VerdictOnly).findings;
    };
    const auto others = [&](std::vector<Finding> findings) {
        std::erase_if(findings, [&](const Finding& finding) {
            return finding.subject.id == circuit || contains(made, finding.subject.id);
        });
        return findings;
    };
    result.elsewhere = shiftsBetween(others(known && isAround ? known->around : restOf(installation)),
                                     others(restOf(result.changed)));
    std::erase_if(result.elsewhere,
                  [](const CheckShift& shift) { return !shift.isBetter() && !shift.isWorse(); });
    return result;
}

} // namespace

tl::expected<WhatIf, Message> whatIf(const Installation& installation, Id visit, Id circuit,
                                     const Change& change, const ReferenceTables& tables,
                                     const RuleSet& rules) {
    return tried(installation, visit, circuit, change, tables, rules, nullptr);
}

tl::expected<WhatIf, Message> whatIf(const Installation& installation, Id visit, Id circuit,
                                     const Change& change, const ReferenceTables& tables,
                                     const RuleSet& rules, const AsItIs& asItIs) {
    return tried(installation, visit, circuit, change, tables, rules, &asItIs);
}

} // namespace loopwright
