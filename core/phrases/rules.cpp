// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

namespace loopwright::phrase_tables {

std::span<const Phrase> rules() {
    static constexpr std::array table{
        Phrase{"rule-set.below-zero",
               LOOPWRIGHT_PHRASE("Phrases", "“{0}” is below zero. Give a number from zero up."), "key"},
        Phrase{"rule-set.missing", LOOPWRIGHT_PHRASE("Phrases", "“{0}” is missing. Add it to the rule set."),
               "key"},
        Phrase{"rule-set.no-such-word", LOOPWRIGHT_PHRASE("Phrases", "“{0}” cannot be “{1}”."), "key, text"},
        Phrase{"rule-set.not-a-flag", LOOPWRIGHT_PHRASE("Phrases", "“{0}” must be true or false."), "key"},
        Phrase{"rule-set.not-a-list", LOOPWRIGHT_PHRASE("Phrases", "“{0}” must be a list."), "key"},
        Phrase{"rule-set.not-a-number", LOOPWRIGHT_PHRASE("Phrases", "“{0}” must be a number."), "key"},
        Phrase{"rule-set.not-a-rule-set",
               LOOPWRIGHT_PHRASE("Phrases", "This is JSON, but no rule set: it must be one object."), ""},
        Phrase{"rule-set.not-a-text", LOOPWRIGHT_PHRASE("Phrases", "“{0}” must be a text."), "key"},
        Phrase{"rule-set.not-an-object",
               LOOPWRIGHT_PHRASE("Phrases", "“{0}” must be an object with keys of its own."), "key"},
        Phrase{"rule-set.not-json",
               LOOPWRIGHT_PHRASE("Phrases", "This is not JSON: from byte {0} on it cannot be read."),
               "number"},
        Phrase{"rule-set.unknown",
               LOOPWRIGHT_PHRASE("Phrases", "A rule set has no “{0}”. Check the spelling."), "key"},
    };
    return table;
}

} // namespace loopwright::phrase_tables
