// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// Sentences of the checks that hold records and readings against each other.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    // Readings that should agree
    Phrase{"check.loop-agreement.name", LOOPWRIGHT_PHRASE("Phrases", "Loop and its parts"), ""},
    Phrase{"check.loop-agreement.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Z_s {0} agrees with the {1} of its parts."),
           "resistance, resistance"},
    Phrase{"check.loop-agreement.close",
           LOOPWRIGHT_PHRASE("Phrases", "Z_s {0} only just agrees with the {1} of its parts."),
           "resistance, resistance"},
    Phrase{"check.loop-agreement.fails",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "Z_s {0} is far above the {1} of its parts. Look for a poor joint, then read both again."),
           "resistance, resistance"},
    Phrase{"check.loop-agreement.below",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "Z_s {0} is below the {1} of its parts, as is usual: other paths to earth share the current."),
           "resistance, resistance"},
    Phrase{"check.loop-agreement.below-start",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Z_s {0} is below even the {1} read where the circuit begins, which no "
                             "path alongside explains. Read both again."),
           "resistance, resistance"},
    Phrase{"check.continuity-agreement.name", LOOPWRIGHT_PHRASE("Phrases", "Continuity and length"), ""},
    Phrase{"check.continuity-agreement.holds",
           LOOPWRIGHT_PHRASE("Phrases", "R_1+R_2 reads {0}; length and sizes lead to expect {1}."),
           "resistance, resistance"},
    Phrase{"check.continuity-agreement.close",
           LOOPWRIGHT_PHRASE("Phrases",
                             "R_1+R_2 reads {0}; length and sizes lead to expect {1}, hardly as much."),
           "resistance, resistance"},
    Phrase{"check.continuity-agreement.fails",
           LOOPWRIGHT_PHRASE("Phrases", "R_1+R_2 reads {0}; length and sizes lead to expect {1}. Look for a "
                                        "poor joint, or correct length and sizes."),
           "resistance, resistance"},
    Phrase{"check.continuity-agreement.low",
           LOOPWRIGHT_PHRASE("Phrases", "R_1+R_2 reads {0}; length and sizes lead to expect {1}. Correct "
                                        "length and sizes, or find the other path."),
           "resistance, resistance"},
    Phrase{"check.continuity-agreement.assumed",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "R_1+R_2 reads {0}; a length that is only assumed leads to expect {1}. Measure the length."),
           "resistance, resistance"},
    Phrase{"check.continuity-agreement.steel",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "Armour or conduit serves as protective conductor; nothing to compare its reading with."),
           ""},
    // Records that contradict each other
    Phrase{"check.conductor-sizes.name", LOOPWRIGHT_PHRASE("Phrases", "Conductor sizes"), ""},
    Phrase{"check.conductor-sizes.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The protective conductor of {0} goes with line conductors of {1}."),
           "size, size"},
    Phrase{"check.conductor-sizes.close",
           LOOPWRIGHT_PHRASE("Phrases",
                             "The protective conductor of {0} hardly goes with line conductors of {1}."),
           "size, size"},
    Phrase{"check.conductor-sizes.fails",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "A protective conductor of {0} inside a cable of {1} is not made. Correct what is recorded."),
           "size, size"},
    Phrase{"check.conductor-sizes.apart",
           LOOPWRIGHT_PHRASE("Phrases", "The protective conductor does not run in the cable."), ""},
    Phrase{"check.conductor-sizes.not-recorded", LOOPWRIGHT_PHRASE("Phrases", "Sizes are not recorded."), ""},
    Phrase{"check.device-rating.name", LOOPWRIGHT_PHRASE("Phrases", "Rating of the device"), ""},
    Phrase{"check.device-rating.holds", LOOPWRIGHT_PHRASE("Phrases", "The {1} is one that is made for {0}."),
           "rating, device"},
    Phrase{"check.device-rating.set-within",
           LOOPWRIGHT_PHRASE("Phrases", "The breaker is set to {0}, within its {1}."), "setting, rating"},
    Phrase{"check.device-rating.close",
           LOOPWRIGHT_PHRASE("Phrases", "No {1} of this family is known for {0}. Check what is recorded."),
           "rating, device"},
    Phrase{"check.device-rating.fails",
           LOOPWRIGHT_PHRASE("Phrases", "No {1} of this family is made for {0}. Correct what is recorded."),
           "rating, device"},
    Phrase{
        "check.device-rating.setting",
        LOOPWRIGHT_PHRASE(
            "Phrases", "The overload setting {0} is above the rated current {1}. Correct what is recorded."),
        "setting, rating"},
    Phrase{"check.device-rating.not-recorded",
           LOOPWRIGHT_PHRASE("Phrases", "Device and rating are not recorded."), ""},
    Phrase{"check.load-agreement.name", LOOPWRIGHT_PHRASE("Phrases", "Load and equipment"), ""},
    Phrase{"check.load-agreement.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The recorded equipment draws {0}; {1} was measured."),
           "current, current"},
    Phrase{"check.load-agreement.close",
           LOOPWRIGHT_PHRASE("Phrases", "The recorded equipment draws {0}; {1} was measured. Was everything "
                                        "running? Measure again with all of it on."),
           "current, current"},
    Phrase{"check.load-agreement.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The recorded equipment draws {0}, far above the load of {1}."),
           "current, current"},
    Phrase{"check.load-agreement.holds-typed",
           LOOPWRIGHT_PHRASE("Phrases", "The recorded equipment draws {0}; a load of {1} was typed."),
           "current, current"},
    Phrase{"check.load-agreement.close-typed",
           LOOPWRIGHT_PHRASE("Phrases", "The recorded equipment draws {0}; a load of {1} was typed. Correct "
                                        "one of the two, or measure the load with everything running."),
           "current, current"},
    Phrase{"check.load-agreement.one-figure",
           LOOPWRIGHT_PHRASE("Phrases", "Load and equipment are not both recorded: nothing to compare."), ""},
    Phrase{"check.load.measured-in-doubt",
           LOOPWRIGHT_PHRASE("Phrases", "Can’t tell: the recorded equipment draws {0}, {1} was measured. Was "
                                        "everything running? Measure again with all of it on."),
           "current, current"},
    Phrase{"check.load.typed-in-doubt",
           LOOPWRIGHT_PHRASE("Phrases", "Can’t tell: the recorded equipment draws {0}, a load of {1} was "
                                        "typed. Correct one of the two, or measure with everything running."),
           "current, current"},
    Phrase{"check.device-residual.name", LOOPWRIGHT_PHRASE("Phrases", "Residual part of the device"), ""},
    Phrase{"check.device-residual.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The residual part of the RCBO is recorded."), ""},
    Phrase{"check.device-residual.close",
           LOOPWRIGHT_PHRASE("Phrases", "The residual part of the RCBO is hardly recorded."), ""},
    Phrase{"check.device-residual.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The residual part of the RCBO is not recorded."), ""},
    Phrase{"check.device-residual.not-recorded",
           LOOPWRIGHT_PHRASE("Phrases",
                             "An RCBO is recorded, and no residual device. Record its rated residual "
                             "current, or correct the family of the device."),
           ""},
    Phrase{"check.device-residual.no-rcbo", LOOPWRIGHT_PHRASE("Phrases", "The device is no RCBO."), ""},
    Phrase{"check.equipment-voltage.name", LOOPWRIGHT_PHRASE("Phrases", "Voltage of the equipment"), ""},
    Phrase{"check.equipment-voltage.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The equipment is rated for the voltage of the circuit."), ""},
    Phrase{"check.equipment-voltage.close",
           LOOPWRIGHT_PHRASE("Phrases", "The equipment is hardly rated for the voltage of the circuit."), ""},
    Phrase{"check.equipment-voltage.fails",
           LOOPWRIGHT_PHRASE("Phrases",
                             "{0} is recorded for {1}, on a circuit of one phase. Correct its voltage, "
                             "or the phases of the circuit."),
           "equipment, voltage"},
    Phrase{"check.equipment-voltage.three-phase",
           LOOPWRIGHT_PHRASE("Phrases", "The circuit has three phases."), ""},
    Phrase{"check.equipment-voltage.not-recorded",
           LOOPWRIGHT_PHRASE("Phrases", "No voltage of equipment is recorded."), ""},
    Phrase{"check.phases.name", LOOPWRIGHT_PHRASE("Phrases", "Phases"), ""},
    Phrase{"check.phases.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The board has the phase that the circuit is on."), ""},
    Phrase{"check.phases.close",
           LOOPWRIGHT_PHRASE("Phrases", "The board may have the phase that the circuit is on."), ""},
    Phrase{"check.phases.fails",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "The circuit is recorded on a phase that its board does not have. Correct what is recorded."),
           ""},
    Phrase{"check.phases.holds-board",
           LOOPWRIGHT_PHRASE("Phrases", "The board is fed with the phases that it has."), ""},
    Phrase{
        "check.phases.fails-board",
        LOOPWRIGHT_PHRASE(
            "Phrases",
            "The board is recorded with phases that what feeds it does not bring. Correct what is recorded."),
        ""},
    Phrase{"check.phases.not-known",
           LOOPWRIGHT_PHRASE("Phrases", "Nothing is recorded that feeds the board."), ""},
    // Instruments
    Phrase{"check.calibration.name", LOOPWRIGHT_PHRASE("Phrases", "Calibration"), ""},
    Phrase{"check.calibration.holds", LOOPWRIGHT_PHRASE("Phrases", "{0} was in calibration."), "instrument"},
    Phrase{"check.calibration.close", LOOPWRIGHT_PHRASE("Phrases", "{0} was only just in calibration."),
           "instrument"},
    Phrase{
        "check.calibration.fails",
        LOOPWRIGHT_PHRASE(
            "Phrases",
            "{0} was out of calibration in this visit. Have it calibrated, and read again what it decided."),
        "instrument"},
    Phrase{"check.instrument-uncertainty.name", LOOPWRIGHT_PHRASE("Phrases", "Uncertainty"), ""},
    Phrase{"check.instrument-uncertainty.holds",
           LOOPWRIGHT_PHRASE("Phrases", "{0} may be off by {1}, within the {2} that its standard allows."),
           "instrument, share, share"},
    Phrase{"check.instrument-uncertainty.close",
           LOOPWRIGHT_PHRASE("Phrases", "{0} may be off by {1}; its standard allows {2}. Check what is "
                                        "recorded, or read with another instrument."),
           "instrument, share, share"},
    Phrase{"check.instrument-uncertainty.fails",
           LOOPWRIGHT_PHRASE("Phrases", "{0} may be off by {1}; its standard allows {2}."),
           "instrument, share, share"},
    Phrase{
        "check.instrument-uncertainty.not-recorded",
        LOOPWRIGHT_PHRASE("Phrases", "Nothing is recorded of its uncertainty; that of its standard counts."),
        ""},
    Phrase{"check.instrument-range.name", LOOPWRIGHT_PHRASE("Phrases", "Range"), ""},
    Phrase{"check.instrument-range.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Every reading of the visit lies within the range of {0}."),
           "instrument"},
    Phrase{"check.instrument-range.close",
           LOOPWRIGHT_PHRASE("Phrases", "{0} is good as far as {1}; {2} was recorded at {3}. Read that again "
                                        "with an instrument made for it."),
           "instrument, limit, reading, place"},
    Phrase{"check.instrument-range.fails",
           LOOPWRIGHT_PHRASE("Phrases", "{0} is good as far as {1}; {2} was recorded at {3}."),
           "instrument, limit, reading, place"},
    Phrase{"check.instrument-range.not-recorded",
           LOOPWRIGHT_PHRASE("Phrases", "Nothing is recorded of its range."), ""},
    // Since the visit before
    Phrase{"check.drift.name", LOOPWRIGHT_PHRASE("Phrases", "Since the visit before"), ""},
    Phrase{"check.drift.holds", LOOPWRIGHT_PHRASE("Phrases", "Readings are as before: {0} then, {1} now."),
           "reading, reading"},
    Phrase{"check.drift.close", LOOPWRIGHT_PHRASE("Phrases", "Readings move: {0} then, {1} now."),
           "reading, reading"},
    Phrase{"check.drift.fails", LOOPWRIGHT_PHRASE("Phrases", "Readings move: {0} then, {1} now."),
           "reading, reading"},
    Phrase{"check.drift.loop",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "The loop has risen from {0} to {1} since the visit before. Look for a joint that loosens."),
           "resistance, resistance"},
    Phrase{"check.drift.continuity",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "R_1+R_2 has risen from {0} to {1} since the visit before. Look for a joint that loosens."),
           "resistance, resistance"},
    Phrase{"check.drift.electrode",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "The electrode has risen from {0} to {1} since the visit before. Look at it before it fails."),
           "resistance, resistance"},
    Phrase{"check.drift.insulation",
           LOOPWRIGHT_PHRASE("Phrases", "Insulation has fallen from {0} to {1} since the visit before; as "
                                        "much again brings it below the minimum. Look again sooner."),
           "resistance, resistance"},
    Phrase{"check.changed.name", LOOPWRIGHT_PHRASE("Phrases", "Changed since the visit before"), ""},
    Phrase{"check.changed.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Nothing is recorded as changed since the visit before."), ""},
    Phrase{"check.changed.together",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Device or wiring were changed with what they feed since the visit before."),
           ""},
    Phrase{"check.changed.close",
           LOOPWRIGHT_PHRASE("Phrases", "{0} came into use since the visit before; device and wiring stayed "
                                        "as they were. Reckon anew whether they still belong together."),
           "equipment"},
    Phrase{"check.changed.fails",
           LOOPWRIGHT_PHRASE("Phrases", "{0} came into use since the visit before; device and wiring stayed "
                                        "as they were."),
           "equipment"},
    Phrase{"check.changed.device",
           LOOPWRIGHT_PHRASE("Phrases", "The device was changed since the visit before, and nothing else "
                                        "with it. Find out why, and whether its wiring bears it."),
           ""},
    Phrase{
        "check.changed.not-recorded",
        LOOPWRIGHT_PHRASE("Phrases", "Nobody recorded since when equipment, device and wiring are in place."),
        ""},
    Phrase{"check.changed.nothing-before",
           LOOPWRIGHT_PHRASE("Phrases", "There is no visit before, or its days are not recorded."), ""},
    Phrase{"check.drift.nothing-before",
           LOOPWRIGHT_PHRASE("Phrases", "Nothing was read both in the visit before and in this one."), ""},
};

} // namespace

std::span<const Phrase> checkAgreement() {
    return table;
}

} // namespace loopwright::phrase_tables
