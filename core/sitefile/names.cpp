// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/names.h"

#include "core/sitefile/problems.h"

#include <stdexcept>

#include <fmt/format.h>

namespace loopwright::sitefile {

void Names::Kind::add(Id id, std::string name) {
    idsByName[name].push_back(id);
    nameById.emplace(id, std::move(name));
}

Names::Names(const Installation& installation) {
    for (const Supply& supply : installation.supplies)
        supplies_.add(supply.id, fmt::format("supply {}", supplies_.nameById.size() + 1));
    std::unordered_map<Id, const Board*> boards;
    for (const Board& board : installation.boards) {
        boards_.add(board.id, pathOf(installation, board));
        boards.emplace(board.id, &board);
    }
    for (const Circuit& circuit : installation.circuits)
        if (const auto board = boards.find(circuit.board); board != boards.end())
            circuits_.add(circuit.id, pathOf(*board->second, circuit));
}

const Names::Kind& Names::names(RecordKind kind) const {
    switch (kind) {
    case RecordKind::Supply:
        return supplies_;
    case RecordKind::Board:
        return boards_;
    case RecordKind::Circuit:
        return circuits_;
    default:
        throw std::logic_error("A site file never refers to this kind of record by name");
    }
}

tl::expected<Id, Message> Names::resolve(RecordKind kind, const std::string& text) const {
    const Kind& known = names(kind);
    if (const auto id = Id::parse(text); id && known.nameById.contains(*id)) return *id;
    const auto found = known.idsByName.find(text);
    if (found != known.idsByName.end() && found->second.size() == 1) return found->second.front();
    if (found != known.idsByName.end())
        return tl::unexpected(
            Message{"sitefile.name-not-unique", {static_cast<std::int64_t>(found->second.size()), text}});
    std::vector<std::string> candidates;
    for (const auto& [name, ids] : known.idsByName)
        candidates.push_back(name);
    if (std::string close = nearest(text, candidates); !close.empty())
        return tl::unexpected(Message{"sitefile.unknown-name-nearest", {text, std::move(close)}});
    return tl::unexpected(Message{"sitefile.unknown-name", {text}});
}

std::string Names::nameOf(RecordKind kind, Id id) const {
    const Kind& known = names(kind);
    const auto found = known.nameById.find(id);
    if (found == known.nameById.end() || found->second.empty() || Id::parse(found->second)) return id.text();
    return known.idsByName.at(found->second).size() == 1 ? found->second : id.text();
}

} // namespace loopwright::sitefile
