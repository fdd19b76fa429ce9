// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/candidates.h"
#include "core/remedy/fitting.h"
#include "core/remedy/own_circuit.h"

#include <algorithm>
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

/// The piece on a circuit of its own, called one that has to be planned. A load that was typed or measured is
/// less by what is recorded of the piece; nothing where that is not known, or would leave none.
std::optional<Change> moved(const OverloadedCircuit& about, const RecordedPiece& piece, const Circuit& own,
                            const Circuit* spare) {
    const Equipment& equipment = *piece.equipment;
    Change change{{"remedy.unlaid-circuit", {spokenName(equipment)}},
                  {spare ? difference(*spare, own) : insertRecord(own),
                   setField(RecordKind::Equipment, equipment.id, "circuit", own.id.text())}};
    const bool isTyped = about.circuit.load.hasFigure();
    if (!isTyped && !about.isLoadMeasured) return change; // the load is what the others draw
    const auto left = about.loadWithout(piece);
    if (!left) return std::nullopt;
    if (isTyped) change.edits.push_back(setLoad(about.circuit.id, inTenths(*left)));
    return change;
}

/// "Give a circuit of its own to Kiln: type C, 32 A; 6 mm2 …", on the spare way where there is one.
Message labelOf(const OverloadedCircuit& about, const Equipment& equipment, const Circuit& own,
                const Circuit* spare) {
    const bool cable = own.wiring.protectiveSize.hasFigure();
    std::vector<Argument> said{spokenName(equipment), about.tables.deviceFamily(own.device.family)->label,
                               measure(own.device.ratedCurrent.value, units::ampere)};
    for (Argument& size : sizesOf(own.wiring, cable))
        said.push_back(std::move(size));
    if (!spare) return {cable ? "remedy.separate-cable" : "remedy.separate-conductors", std::move(said)};
    said.emplace_back(pathOf(about.installation, *spare));
    return {cable ? "remedy.separate-cable-spare" : "remedy.separate-conductors-spare", std::move(said)};
}

Message labelOf(const Equipment& equipment, Unlaid why) {
    switch (why) {
    case Unlaid::LoadOpen:
        return {"remedy.unlaid-circuit-load", {spokenName(equipment)}};
    case Unlaid::WiringOpen:
        return {"remedy.unlaid-circuit-wiring", {spokenName(equipment)}};
    case Unlaid::NoneHolds:
        break;
    }
    return {"remedy.unlaid-circuit", {spokenName(equipment)}};
}

/// Whatever circuit it hangs on, it overloads the fuse in its plug.
bool overloadsItsPlugFuse(const RecordedPiece& piece) {
    const auto fuse = usable(piece.equipment->plugFuse);
    return fuse && piece.each && *piece.each > *fuse;
}

/// Whether a circuit of its own is the same for both.
bool areAlike(const Equipment& one, Equipment other) {
    other.id = one.id;
    other.name = one.name;
    other.since = one.since;
    other.notes = one.notes;
    return one == other;
}

/// Those worth moving, the heaviest first and alike ones once. A lighter one is less and less likely to
/// suffice, so only a few are tried.
std::vector<const RecordedPiece*> worthMoving(const OverloadedCircuit& about) {
    constexpr std::size_t mostTried = 8;
    std::vector<const RecordedPiece*> heaviest;
    for (const RecordedPiece& piece : about.pieces)
        if (!overloadsItsPlugFuse(piece)) heaviest.push_back(&piece);
    std::ranges::stable_sort(heaviest, std::greater<>{}, [](const RecordedPiece* piece) {
        return piece->together().value_or(Current());
    });
    std::vector<const RecordedPiece*> chosen;
    for (const RecordedPiece* piece : heaviest) {
        if (chosen.size() == mostTried) break;
        if (std::ranges::none_of(chosen, [&](const RecordedPiece* each) {
                return areAlike(*each->equipment, *piece->equipment);
            }))
            chosen.push_back(piece);
    }
    return chosen;
}

/// What is taken for granted of a circuit that is not there yet.
std::vector<Message> notesOn(const OverloadedCircuit& about, const Circuit& own, const Circuit* spare) {
    const bool isRing = about.circuit.topology == Topology::Ring;
    std::vector<Message> notes;
    if (!spare) notes.push_back(Message{"remedy.note.no-spare-way", {}});
    notes.push_back(isRing ? Message{"remedy.note.along-ring", {}} : Message{"remedy.note.alongside", {}});
    if (own.residual.fitted && own.residual != about.circuit.residual)
        notes.push_back(Message{"remedy.note.residual",
                                {measure(own.residual.residualCurrent.value, units::milliampere)}});
    return notes;
}

/// Checks of the circuit that fail where the one that is made lies in its bunch, and not beside it.
std::vector<Finding> failingInOneBunch(const Trial& trial, const Change& change) {
    const Circuit& circuit = trial.about().circuit;
    Change bunched = change;
    bunched.edits.push_back(
        setField(RecordKind::Circuit, circuit.id, "wiring.groupedCircuits",
                 formatEntry(toText(withOneMore(circuit.wiring.groupedCircuits), units::ratio))));
    const std::vector<Finding> alone = trial.failingAfter(change);
    std::vector<Finding> failing = trial.failingAfter(bunched);
    std::erase_if(failing, [&](const Finding& finding) {
        return std::ranges::find(alone, finding.check, &Finding::check) != alone.end();
    });
    return failing;
}

std::optional<Remedy> told(const Trial& trial, RemedyKind kind, Change change, const Circuit& own,
                           const Circuit* spare) {
    std::vector<Finding> bunched = failingInOneBunch(trial, change);
    auto remedy = trial.remedy(kind, std::move(change));
    if (!remedy) return std::nullopt;
    const std::vector<Message> notes = notesOn(trial.about(), own, spare);
    remedy->notes.insert(remedy->notes.begin(), notes.begin(), notes.end());
    remedy->failingInBunch = std::move(bunched);
    return remedy;
}

} // namespace

std::optional<Remedy> separateCircuit(const Trial& trial, IdSource& ids) {
    const OverloadedCircuit& about = trial.about();
    if (about.pieces.size() < 2 && !about.circuit.load.hasFigure()) return std::nullopt;
    Id fresh;
    struct ToPlan {
        Change change;
        Circuit own;
        const Circuit* spare;
    };
    std::optional<ToPlan> unlaid;
    for (const RecordedPiece* piece : worthMoving(about)) {
        const Circuit* spare = spareWay(about, *piece);
        if (!spare && fresh.isNone()) fresh = ids.next();
        const Circuit open = unlaidCircuit(about, *piece, spare, fresh);
        auto change = moved(about, *piece, open, spare);
        if (!change || trial.worthOf(RemedyKind::SeparateCircuit, *change) == Worth::Nothing) continue;
        auto site =
            foretold(about.installation, about.visit, about.circuit.id, *change, about.tables, about.rules);
        if (!site) continue;
        const auto laid = laidOut(about, std::move(*site), open.id);
        if (laid) {
            auto whole = moved(about, *piece, *laid, spare);
            whole->label = labelOf(about, *piece->equipment, *laid, spare);
            return told(trial, RemedyKind::SeparateCircuit, std::move(*whole), *laid, spare);
        }
        if (unlaid) continue;
        change->label = labelOf(*piece->equipment, laid.error());
        unlaid = ToPlan{std::move(*change), open, spare};
    }
    if (!unlaid) return std::nullopt;
    return told(trial, RemedyKind::UnlaidCircuit, std::move(unlaid->change), unlaid->own, unlaid->spare);
}

} // namespace loopwright
