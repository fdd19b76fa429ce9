// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

namespace loopwright::phrase_tables {

std::span<const Phrase> model() {
    static constexpr std::array table{
        Phrase{"change.added", LOOPWRIGHT_PHRASE("Phrases", "{0} added"), "name"},
        Phrase{"change.already-there",
               LOOPWRIGHT_PHRASE("Phrases", "A record with the id {0} is there already."), "id"},
        Phrase{"change.field", LOOPWRIGHT_PHRASE("Phrases", "{0}, {1}: {2}"), "place, field, value"},
        Phrase{"change.field-cleared", LOOPWRIGHT_PHRASE("Phrases", "{0}, {1}: cleared"), "place, field"},
        Phrase{"change.no-such-record", LOOPWRIGHT_PHRASE("Phrases", "There is no record with the id {0}."),
               "id"},
        Phrase{"change.removed", LOOPWRIGHT_PHRASE("Phrases", "{0} removed"), "name"},
        Phrase{"change.unknown-field", LOOPWRIGHT_PHRASE("Phrases", "There is no field {0} in {1}."),
               "key, record"},
        Phrase{"field.control-characters",
               LOOPWRIGHT_PHRASE("Phrases", "The text holds characters that cannot be shown."), ""},
        Phrase{"field.not-a-date",
               LOOPWRIGHT_PHRASE("Phrases", "“{0}” is not a date. Write it as 2026-03-10."), "text"},
        Phrase{"field.not-a-flag", LOOPWRIGHT_PHRASE("Phrases", "“{0}” is neither true nor false."), "text"},
        Phrase{"field.not-an-id", LOOPWRIGHT_PHRASE("Phrases", "“{0}” is not an id."), "text"},
        Phrase{"field.unknown-option", LOOPWRIGHT_PHRASE("Phrases", "“{0}” is not one of: {1}."),
               "text, list"},
    };
    return table;
}

} // namespace loopwright::phrase_tables
