// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/places/search.h"

#include "forms/frame/place_text.h"
#include "forms/words/words.h"

#include <algorithm>

namespace loopwright {
namespace {

QString boardName(const Installation& installation, Id board) {
    const Board* found = find(installation.boards, board);
    return found ? text(found->name) : QString();
}

std::vector<Match> everything(const Installation& installation) {
    std::vector<Match> all;
    for (const Board& board : installation.boards)
        all.push_back({{RecordKind::Board, board.id}, boardTitle(board), text(board.location), Icon::Board});
    for (const Circuit& circuit : installation.circuits)
        all.push_back({{RecordKind::Circuit, circuit.id},
                       circuitTitle(circuit),
                       boardName(installation, circuit.board),
                       Icon::Circuit});
    for (const Equipment& equipment : installation.equipment) {
        const Circuit* circuit = find(installation.circuits, equipment.circuit);
        all.push_back({{RecordKind::Equipment, equipment.id},
                       text(equipment.name),
                       circuit ? text(pathOf(installation, *circuit)) : QString(),
                       Icon::Equipment});
    }
    for (const Observation& observation : installation.observations)
        all.push_back({{RecordKind::Observation, observation.id},
                       text(observation.text),
                       boardName(installation, observation.board),
                       Icon::Observations});
    return all;
}

} // namespace

std::vector<Match> findByWords(const Installation& installation, const QString& query, std::size_t most) {
    const QStringList words = query.simplified().split(u' ', Qt::SkipEmptyParts);
    if (words.isEmpty()) return {};
    std::vector<Match> found = everything(installation);
    std::erase_if(found, [&](const Match& match) {
        const QString said = match.title + u' ' + match.where;
        return !std::ranges::all_of(
            words, [&](const QString& word) { return said.contains(word, Qt::CaseInsensitive); });
    });
    const QString start = words.join(u' ');
    std::stable_partition(found.begin(), found.end(), [&](const Match& match) {
        return match.title.startsWith(start, Qt::CaseInsensitive);
    });
    if (found.size() > most) found.resize(most);
    return found;
}

} // namespace loopwright
