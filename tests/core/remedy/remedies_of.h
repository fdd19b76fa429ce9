// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/remedy.h"
#include "tests/core/fixture.h"

#include <algorithm>
#include <stdexcept>
#include <string>

/// The remedies of a fixture's circuit, and what they do.
namespace loopwright::test {

/// Ids that no record of these tests has.
inline constexpr std::uint64_t unusedIds = 1'000'000;

inline std::vector<Remedy> remediesOf(const Fixture& fixture, Id circuit) {
    SequentialIds ids(unusedIds);
    return remedies(fixture.installation, fixture.installation.visits.front().id, circuit, tables(),
                    fixture.ruleSet, ids);
}
inline std::vector<Remedy> remediesOf(const Fixture& fixture) {
    return remediesOf(fixture, fixture.installation.circuits.front().id);
}

inline const Remedy* remedyIn(const std::vector<Remedy>& list, RemedyKind kind) {
    const auto found = std::ranges::find(list, kind, &Remedy::kind);
    return found == list.end() ? nullptr : &*found;
}

/// For failure messages.
inline std::string told(const std::vector<Remedy>& list) {
    std::string text;
    for (const Remedy& remedy : list)
        text += std::string(remedy.change.label.key) + (remedy.holdsThroughout ? "; " : " (not all); ");
    return text;
}

inline bool notes(const Remedy& remedy, std::string_view key) {
    return std::ranges::find(remedy.notes, key, &Message::key) != remedy.notes.end();
}

/// What the change sets the field of that record to; nothing where it leaves it.
inline std::optional<std::string> setTo(const Change& change, Id record, std::string_view key) {
    for (const Edit& edit : change.edits)
        for (const Edit::Value& value : edit.values)
            if (edit.id == record && value.key == key) return value.text;
    return std::nullopt;
}

inline Installation foretoldBy(const Remedy& remedy, const Fixture& fixture) {
    const Installation& site = fixture.installation;
    auto changed = foretold(site, site.visits.front().id, site.circuits.front().id, remedy.change, tables(),
                            fixture.ruleSet);
    if (!changed) throw std::runtime_error(std::string(changed.error().key));
    return std::move(*changed);
}

/// The circuit that the remedy makes, or the spare way that it takes.
inline Circuit madeBy(const Remedy& remedy, const Fixture& fixture) {
    const Installation changed = foretoldBy(remedy, fixture);
    for (const Edit& edit : remedy.change.edits)
        if (edit.kind == RecordKind::Circuit && edit.id != fixture.installation.circuits.front().id)
            return *loopwright::find(changed.circuits, edit.id);
    throw std::runtime_error("no circuit is made");
}

/// A circuit of 20 A on which an oven and a kiln hang.
inline Fixture ovenAnd(Power kiln) {
    Fixture fixture;
    fixture.circuit().load = {};
    fixture.addEquipment("Oven", watts(2300));
    fixture.addEquipment("Kiln", kiln);
    return fixture;
}

} // namespace loopwright::test
