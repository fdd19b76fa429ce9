// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

namespace loopwright::phrase_tables {

std::span<const Phrase> report() {
    static constexpr std::array table{
        Phrase{
            "report.cannot-open",
            LOOPWRIGHT_PHRASE("Phrases", "The report cannot be written to {0}: {1}. Choose another folder."),
            "path, reason"},
        Phrase{"report.cannot-write",
               LOOPWRIGHT_PHRASE("Phrases",
                                 "The report could not be written whole to {0}: {1}. Make room, or choose "
                                 "another folder; nothing was left there."),
               "path, reason"},
        Phrase{
            "report.no-visit",
            LOOPWRIGHT_PHRASE("Phrases", "There is no such visit at this site. Choose one that is recorded."),
            ""},
    };
    return table;
}

} // namespace loopwright::phrase_tables
