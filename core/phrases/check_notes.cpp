// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// What goes with the sentences of checks: why there is no verdict ("check.lacks.*"), words inside sentences
/// ("check.word.*"), and notes beside the terms of a working ("check.note.*").
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    // Why there is no verdict
    Phrase{"check.lacks.one", LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. Missing: {1}."), "check, field"},
    Phrase{"check.lacks.two", LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. Missing: {1}; {2}."),
           "check, field, field"},
    Phrase{"check.lacks.more",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. Missing: {1}; {2}; and {3} more."),
           "check, field, field, count"},
    Phrase{"check.lacks.limited",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. {1} could not be found out: {2}."),
           "check, field, reason"},
    Phrase{"check.lacks.not-possible",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. {1} could not be found out."), "check, field"},
    Phrase{"check.lacks.beyond-range",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. {1} is beyond the instrument’s range."),
           "check, field"},
    Phrase{"check.lacks.unusable",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. {1} holds a figure that cannot be reckoned with."),
           "check, field"},
    Phrase{
        "check.lacks.unpublished",
        LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. No published figure goes with what is recorded: {1}."),
        "check, field"},
    Phrase{"check.lacks.assumed",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell. It turns on a figure that is only assumed: {1}."),
           "check, field"},
    Phrase{"check.lacks.nothing-known", LOOPWRIGHT_PHRASE("Phrases", "{0}: can’t tell."), "check"},
    Phrase{"check.not-applicable",
           LOOPWRIGHT_PHRASE("Phrases", "{0}: doesn’t apply. {1} is recorded as not applicable."),
           "check, field"},
    Phrase{"check.taken-out", LOOPWRIGHT_PHRASE("Phrases", "Taken out of use."), ""},
    Phrase{"check.spare", LOOPWRIGHT_PHRASE("Phrases", "No circuit on this way."), ""},
    // Words inside sentences
    Phrase{"check.word.device", LOOPWRIGHT_PHRASE("Phrases", "device"), ""},
    Phrase{"check.word.breaker", LOOPWRIGHT_PHRASE("Phrases", "breaker"), ""},
    Phrase{"check.word.rcbo", LOOPWRIGHT_PHRASE("Phrases", "RCBO"), ""},
    Phrase{"check.word.fuse", LOOPWRIGHT_PHRASE("Phrases", "fuse"), ""},
    Phrase{"check.word.rewirable-fuse", LOOPWRIGHT_PHRASE("Phrases", "rewirable fuse"), ""},
    Phrase{"check.word.plug-fuse", LOOPWRIGHT_PHRASE("Phrases", "plug fuse"), ""},
    Phrase{"check.word.input", LOOPWRIGHT_PHRASE("Phrases", "an input"), ""},
    // Notes beside the terms of a working
    Phrase{"check.note.or-more", LOOPWRIGHT_PHRASE("Phrases", "beyond range: this or more"), ""},
    Phrase{"check.note.or-less", LOOPWRIGHT_PHRASE("Phrases", "beyond range: this or less"), ""},
    Phrase{"check.note.equipment", LOOPWRIGHT_PHRASE("Phrases", "{0}"), "equipment"},
    Phrase{"check.note.equipment-spread", LOOPWRIGHT_PHRASE("Phrases", "{0}, spread over three phases"),
           "equipment"},
    Phrase{"check.note.sum-of-equipment", LOOPWRIGHT_PHRASE("Phrases", "all equipment together"), ""},
    Phrase{"check.note.nominal-voltage", LOOPWRIGHT_PHRASE("Phrases", "nominal voltage"), ""},
    Phrase{"check.note.ring-share", LOOPWRIGHT_PHRASE("Phrases", "share of one leg, by the ring allowance"),
           ""},
    Phrase{"check.note.conventional-by-rating",
           LOOPWRIGHT_PHRASE("Phrases", "taken to operate at this current in its wiring"), ""},
    Phrase{"check.note.final-circuit", LOOPWRIGHT_PHRASE("Phrases", "final circuit"), ""},
    Phrase{"check.note.distribution",
           LOOPWRIGHT_PHRASE("Phrases", "distribution circuit, or above the threshold of final circuits"),
           ""},
    Phrase{"check.note.fault-current", LOOPWRIGHT_PHRASE("Phrases", "from voltage and loop"), ""},
    Phrase{"check.note.earth-fault", LOOPWRIGHT_PHRASE("Phrases", "fault to earth, from voltage and loop"),
           ""},
    Phrase{"check.note.neutral-fault",
           LOOPWRIGHT_PHRASE("Phrases", "fault to neutral, from voltage and loop"), ""},
    Phrase{"check.note.largest-fault", LOOPWRIGHT_PHRASE("Phrases", "the largest of them"), ""},
    Phrase{"check.note.three-phase-fault",
           LOOPWRIGHT_PHRASE("Phrases", "between three phases: twice that of one"), ""},
    Phrase{"check.note.let-through", LOOPWRIGHT_PHRASE("Phrases", "energy that the breaker lets through"),
           ""},
    Phrase{"check.note.fuse-energy",
           LOOPWRIGHT_PHRASE("Phrases", "most energy that a sound fuse lets through"), ""},
    Phrase{"check.note.latest", LOOPWRIGHT_PHRASE("Phrases", "latest that a sound device operates"), ""},
    Phrase{"check.note.latest-residual",
           LOOPWRIGHT_PHRASE("Phrases", "latest that a sound residual current device operates"), ""},
    Phrase{"check.note.whole-loop-warmed",
           LOOPWRIGHT_PHRASE("Phrases", "not known: the whole loop counts as warmed"), ""},
    Phrase{"check.note.corrected-loop",
           LOOPWRIGHT_PHRASE("Phrases", "loop with the conductors at their highest temperature"), ""},
    Phrase{"check.note.guarded-loop",
           LOOPWRIGHT_PHRASE("Phrases", "permitted loop with the guard for cold conductors"), ""},
    Phrase{"check.note.loop-for-residual",
           LOOPWRIGHT_PHRASE("Phrases", "loop through which the residual current device protects"), ""},
    Phrase{"check.note.least-of-family",
           LOOPWRIGHT_PHRASE("Phrases", "not recorded: the least of its family"), ""},
    Phrase{"check.note.start-current", LOOPWRIGHT_PHRASE("Phrases", "as the largest piece starts"), ""},
    Phrase{"check.note.visit-before", LOOPWRIGHT_PHRASE("Phrases", "in the visit before"), ""},
    Phrase{"check.note.insulation-ahead",
           LOOPWRIGHT_PHRASE("Phrases", "after another interval like the last"), ""},
    Phrase{"check.note.uncertainty-instrument",
           LOOPWRIGHT_PHRASE("Phrases", "by which the reading may be off, by its instrument"), ""},
    Phrase{
        "check.note.uncertainty-standard",
        LOOPWRIGHT_PHRASE(
            "Phrases", "by which the reading may be off: the most that the standard allows its instrument"),
        ""},
    Phrase{"check.note.load-of-feeder",
           LOOPWRIGHT_PHRASE("Phrases", "load of {0} is not known: its device’s rating"), "circuit"},
    Phrase{"check.note.drop-from-resistance",
           LOOPWRIGHT_PHRASE("Phrases", "from the conductor’s resistance when hot"), ""},
    Phrase{"check.note.drop-along", LOOPWRIGHT_PHRASE("Phrases", "along {0}"), "circuit"},
};

} // namespace

std::span<const Phrase> checkNotes() {
    return table;
}

} // namespace loopwright::phrase_tables
