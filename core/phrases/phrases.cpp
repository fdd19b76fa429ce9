// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/phrases.h"

#include "core/phrases/tables.h"

#include <algorithm>
#include <vector>

namespace loopwright {
namespace {

std::vector<Phrase> joined() {
    std::vector<Phrase> all;
    for (const auto table :
         {phrase_tables::checks(), phrase_tables::checkAgreement(), phrase_tables::checkProtection(),
          phrase_tables::checkBelonging(), phrase_tables::checkBoards(), phrase_tables::checkOverload(),
          phrase_tables::checkNotes(), phrase_tables::choices(), phrase_tables::fields(),
          phrase_tables::units(), phrase_tables::model(), phrase_tables::rules(), phrase_tables::siteFile(),
          phrase_tables::remedy(), phrase_tables::currentLog(), phrase_tables::workbook(),
          phrase_tables::sums(), phrase_tables::sumFigures()})
        all.insert(all.end(), table.begin(), table.end());
    std::ranges::sort(all, {}, &Phrase::key);
    return all;
}

} // namespace

std::span<const Phrase> phrases() {
    static const std::vector<Phrase> all = joined();
    return all;
}

std::optional<Phrase> phrase(std::string_view key) {
    const auto found = std::ranges::lower_bound(phrases(), key, {}, &Phrase::key);
    if (found == phrases().end() || found->key != key) return std::nullopt;
    return *found;
}

} // namespace loopwright
