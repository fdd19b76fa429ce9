// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

namespace loopwright::phrase_tables {

std::span<const Phrase> units() {
    static constexpr std::array table{
        Phrase{
            "entry.limitation-without-reason",
            LOOPWRIGHT_PHRASE("Phrases", "“{0}” gives no reason. Write LIM: and why it could not be read."),
            "text"},
        Phrase{"entry.negative", LOOPWRIGHT_PHRASE("Phrases", "“{0}” is below zero, which cannot be here."),
               "text"},
        Phrase{"entry.not-a-number",
               LOOPWRIGHT_PHRASE("Phrases",
                                 "“{0}” is not a figure. Write a number, >999, <0.05, N/A, or LIM: and why."),
               "text"},
        Phrase{"entry.not-whole", LOOPWRIGHT_PHRASE("Phrases", "“{0}” must be a whole number."), "text"},
        Phrase{"entry.origin-alone",
               LOOPWRIGHT_PHRASE("Phrases", "“{0}” says where a figure came from, but gives none."), "text"},
        Phrase{"entry.too-many-digits",
               LOOPWRIGHT_PHRASE("Phrases", "“{0}” has more digits than can be kept."), "text"},
        Phrase{"entry.wrong-unit",
               LOOPWRIGHT_PHRASE("Phrases", "“{0}”: {1} is not a unit for this field, which counts in {2}."),
               "text, text, text"},
        Phrase{"entry.zero",
               LOOPWRIGHT_PHRASE("Phrases",
                                 "“{0}” is zero, which cannot be here. Leave it empty if it is not known."),
               "text"},
    };
    return table;
}

} // namespace loopwright::phrase_tables
