// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/candidates.h"
#include "core/remedy/fitting.h"
#include "core/remedy/own_circuit.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace loopwright {
namespace {

/// The fields that differ.
Edit difference(const Circuit& before, const Circuit& after) {
    Edit edit{Edit::Step::Set, RecordKind::Circuit, before.id, {}};
    for (const Field<Circuit>& field : fieldsOf<Circuit>())
        if (std::string text = field.get(after); text != field.get(before))
            edit.values.push_back({std::string(field.info.key), std::move(text)});
    return edit;
}

/// The equipment on a circuit of its own, called one that has to be planned; a load that was typed is less by
/// what it draws. Nothing where that would leave none.
std::optional<Change> moved(const OverloadedCircuit& about, const Equipment& equipment, const Circuit& own,
                            const Circuit* spare) {
    Change change{{"remedy.unlaid-circuit", {equipment.name}},
                  {spare ? difference(*spare, own) : insertRecord(own),
                   setField(RecordKind::Equipment, equipment.id, "circuit", own.id.text())}};
    if (!about.circuit.load.hasFigure()) return change;
    const Current left = about.load.load.peak - about.drawnBy(equipment);
    if (!(left > Current())) return std::nullopt;
    change.edits.push_back(setLoad(about.circuit.id, amperes(std::ceil(left.base() * 10) / 10)));
    return change;
}

/// "Give a circuit of its own to Kiln: type C, 32 A; 6 mm2 …", on the spare way where there is one.
Message labelOf(const OverloadedCircuit& about, const Equipment& equipment, const Circuit& own,
                const Circuit* spare) {
    const bool cable = own.wiring.protectiveSize.hasFigure();
    std::vector<Argument> said{equipment.name, about.tables.deviceFamily(own.device.family)->label,
                               measure(own.device.ratedCurrent.value, units::ampere)};
    for (Argument& size : sizesOf(own.wiring, cable))
        said.push_back(std::move(size));
    if (!spare) return {cable ? "remedy.separate-cable" : "remedy.separate-conductors", std::move(said)};
    said.emplace_back(pathOf(about.installation, *spare));
    return {cable ? "remedy.separate-cable-spare" : "remedy.separate-conductors-spare", std::move(said)};
}

std::vector<const Equipment*> heaviestFirst(const OverloadedCircuit& about) {
    std::vector<const Equipment*> heaviest = about.equipment;
    std::ranges::stable_sort(heaviest, std::greater<>{},
                             [&](const Equipment* equipment) { return about.drawnBy(*equipment); });
    return heaviest;
}

} // namespace

std::optional<Remedy> separateCircuit(const Trial& trial, IdSource& ids) {
    const OverloadedCircuit& about = trial.about();
    if (about.equipment.size() < 2 && !about.circuit.load.hasFigure()) return std::nullopt;
    const Circuit* spare = spareWay(about);
    const Id fresh = spare ? Id{} : ids.next();
    std::optional<Change> unlaid;
    for (const Equipment* equipment : heaviestFirst(about)) {
        const Circuit open = unlaidCircuit(about, *equipment, spare, fresh);
        auto change = moved(about, *equipment, open, spare);
        if (!change || trial.worthOf(RemedyKind::SeparateCircuit, *change) == Worth::Nothing) continue;
        auto site = foretold(about.installation, about.visit, about.circuit.id, *change, about.tables);
        const auto laid = site ? laidOut(about, std::move(*site), open.id) : std::nullopt;
        if (laid) {
            auto whole = moved(about, *equipment, *laid, spare);
            whole->label = labelOf(about, *equipment, *laid, spare);
            return trial.remedy(RemedyKind::SeparateCircuit, std::move(*whole));
        }
        if (!unlaid) unlaid = std::move(change);
    }
    if (!unlaid) return std::nullopt;
    return trial.remedy(RemedyKind::UnlaidCircuit, std::move(*unlaid));
}

} // namespace loopwright
