// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// Why a workbook could not be opened, read or changed.
namespace loopwright::phrase_tables {

std::span<const Phrase> workbook() {
    static constexpr std::array table{
        Phrase{"workbook.already-there",
               LOOPWRIGHT_PHRASE("Phrases",
                                 "{0} is there already. Choose another name: nothing is written over it."),
               "file"},
        Phrase{
            "workbook.busy",
            LOOPWRIGHT_PHRASE("Phrases", "Another program is writing to {0}. Wait a moment, then try again."),
            "file"},
        Phrase{"workbook.cannot-open",
               LOOPWRIGHT_PHRASE(
                   "Phrases",
                   "{0} cannot be opened. Check that its folder is there and that you may write in it."),
               "file"},
        Phrase{"workbook.changed-outside",
               LOOPWRIGHT_PHRASE(
                   "Phrases",
                   "This cannot be taken back: another program has changed the workbook past its journal."),
               ""},
        Phrase{"workbook.damaged",
               LOOPWRIGHT_PHRASE(
                   "Phrases",
                   "{0} is damaged and cannot be read whole. Keep it, and go on with a copy from before."),
               "file"},
        Phrase{"workbook.dangling-reference",
               LOOPWRIGHT_PHRASE(
                   "Phrases",
                   "A {0} names a {1} that is not in the workbook. Add that first; nothing was changed."),
               "record, record"},
        Phrase{
            "workbook.disk-full",
            LOOPWRIGHT_PHRASE(
                "Phrases",
                "There is no room left on the disk for {0}. Make room, then try again; nothing was changed."),
            "file"},
        Phrase{"workbook.folder-read-only",
               LOOPWRIGHT_PHRASE("Phrases", "The folder of {0} may be read but not written. Allow writing "
                                            "there, or open a copy in a folder of yours."),
               "file"},
        Phrase{"workbook.id-taken",
               LOOPWRIGHT_PHRASE("Phrases",
                                 "{0} has a record with one of these ids already; nothing was changed."),
               "file"},
        Phrase{"workbook.input-output",
               LOOPWRIGHT_PHRASE("Phrases", "The disk of {0} does not answer as it should. Check it, then "
                                            "try again; nothing was changed."),
               "file"},
        Phrase{
            "workbook.issued",
            LOOPWRIGHT_PHRASE("Phrases", "“{0}” is issued and never changes. Issue it again to correct it."),
            "visit"},
        Phrase{"workbook.newer",
               LOOPWRIGHT_PHRASE("Phrases", "{0} was written by a newer Loopwright (version {1} of the file; "
                                            "this one knows {2}). Open it with that one."),
               "file, version, version"},
        Phrase{"workbook.no-such-file", LOOPWRIGHT_PHRASE("Phrases", "There is no file {0}."), "file"},
        Phrase{"workbook.no-such-attachment", LOOPWRIGHT_PHRASE("Phrases", "{0} does not hold the file {1}."),
               "file, digest"},
        Phrase{"workbook.no-such-site",
               LOOPWRIGHT_PHRASE("Phrases", "There is no site with the id {0} in the workbook."), "id"},
        Phrase{"workbook.not-a-workbook", LOOPWRIGHT_PHRASE("Phrases", "{0} is not a Loopwright workbook."),
               "file"},
        Phrase{"workbook.not-safe-here",
               LOOPWRIGHT_PHRASE(
                   "Phrases",
                   "Where {0} lies, changes cannot be kept safely. Move it to a disk of this computer."),
               "file"},
        Phrase{"workbook.owner-missing",
               LOOPWRIGHT_PHRASE("Phrases",
                                 "A record does not say what it belongs to; nothing was changed in {0}."),
               "file"},
        Phrase{"workbook.read-only",
               LOOPWRIGHT_PHRASE(
                   "Phrases",
                   "{0} may be read but not written. Allow writing, or open a copy in a folder of yours."),
               "file"},
        Phrase{"workbook.refused",
               LOOPWRIGHT_PHRASE("Phrases", "{0} did not take this ({1}); nothing was changed."),
               "file, reason"},
        Phrase{"workbook.unknown-label",
               LOOPWRIGHT_PHRASE("Phrases", "A change that a newer Loopwright describes"), ""},
        Phrase{"workbook.unknown-word", LOOPWRIGHT_PHRASE("Phrases", "something newer"), ""},
        Phrase{"workbook.unreadable-value",
               LOOPWRIGHT_PHRASE(
                   "Phrases", "A {0} of this workbook has “{2}” as {1}, which this Loopwright cannot read."),
               "record, field, text"},
    };
    return table;
}

} // namespace loopwright::phrase_tables
