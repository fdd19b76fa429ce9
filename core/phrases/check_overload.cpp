// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// What the checks of overload over time say, and the notes of their workings.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    // Works, and overloads
    Phrase{"check.hidden-overload.name", LOOPWRIGHT_PHRASE("Phrases", "Hidden overload"), ""},
    Phrase{"check.hidden-overload.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is within the {2} {1}: nothing is hidden."),
           "current, device, rating"},
    Phrase{"check.hidden-overload.close",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3}. A sound {3} "
                                        "operates after {4} at the latest, so it cannot stay unnoticed."),
           "load, ratio, rating, device, time"},
    Phrase{"check.hidden-overload.fails",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} without rest. A "
                                        "sound {3} need never operate, and not even one at the early limit "
                                        "would. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current"},
    Phrase{"check.hidden-overload.steady-at-once",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} without rest. A "
                                        "sound {3} need never operate; one at the early limit may do so at "
                                        "any time. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current"},
    Phrase{"check.hidden-overload.steady-after",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} without rest. A "
                                        "sound {3} need never operate; one at the early limit would after "
                                        "{5}. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current, time"},
    Phrase{"check.hidden-overload.runs",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} for {5} in {6}. A "
                                        "sound {3} need never operate, and not even one at the early limit "
                                        "would. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current, time, time"},
    Phrase{"check.hidden-overload.runs-at-once",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} for {5} in {6}. A "
                                        "sound {3} need never operate; one at the early limit may do so in "
                                        "any run. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current, time, time"},
    Phrase{"check.hidden-overload.runs-after",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} for {5} in {6}. A "
                                        "sound {3} need never operate; one at the early limit would after "
                                        "{7} of the first run. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current, time, time, time"},
    Phrase{"check.hidden-overload.runs-later",
           LOOPWRIGHT_PHRASE("Phrases", "{0} runs at {1} times the rating of the {2} {3} for {5} in {6}. A "
                                        "sound {3} need never operate; one at the early limit would in run "
                                        "{7}, after {8}. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current, time, time, number, time"},
    Phrase{"check.hidden-overload.together",
           LOOPWRIGHT_PHRASE("Phrases", "{0} comes to {1} times the rating of the {2} {3} when everything "
                                        "runs together. A sound {3} need never operate, and not even one at "
                                        "the early limit would. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current"},
    Phrase{"check.hidden-overload.together-at-once",
           LOOPWRIGHT_PHRASE("Phrases", "{0} comes to {1} times the rating of the {2} {3} when everything "
                                        "runs together. A sound {3} need never operate; one at the early "
                                        "limit may do so at any time. The load is {4} more than the {3} is "
                                        "for."),
           "load, ratio, rating, device, current"},
    Phrase{"check.hidden-overload.together-after",
           LOOPWRIGHT_PHRASE("Phrases", "{0} comes to {1} times the rating of the {2} {3} when everything "
                                        "runs together. A sound {3} need never operate; one at the early "
                                        "limit would after {5}. The load is {4} more than the {3} is for."),
           "load, ratio, rating, device, current, time"},
    Phrase{"check.hidden-overload.together-later",
           LOOPWRIGHT_PHRASE("Phrases", "{0} comes to {1} times the rating of the {2} {3} when everything "
                                        "runs together. A sound {3} need never operate; one at the early "
                                        "limit would in round {5}, after {6}. The load is {4} more than the "
                                        "{3} is for."),
           "load, ratio, rating, device, current, number, time"},
    Phrase{"check.hidden-overload.duty-unknown",
           LOOPWRIGHT_PHRASE("Phrases",
                             "{0} comes to {1} times the rating of the {2} {3}. How long it runs is "
                             "not recorded exactly, so no sound {3} is sure to operate. The load "
                             "is {4} more than the {3} is for. Record how long it runs and rests."),
           "load, ratio, rating, device, current"},
    Phrase{"check.hidden-overload.at-least",
           LOOPWRIGHT_PHRASE("Phrases",
                             "{0} is at least {1} times the rating of the {2} {3}. What a sound {3} "
                             "does depends on how much more it is. The load is at least {4} more "
                             "than the {3} is for. Measure it within the range of the instrument."),
           "load, ratio, rating, device, current"},
    Phrase{"check.hidden-overload.close-at-least",
           LOOPWRIGHT_PHRASE("Phrases",
                             "{0} runs at no less than {1} times the rating of the {2} {3}. A sound "
                             "{3} operates after {4} at the latest, so it cannot stay unnoticed."),
           "load, ratio, rating, device, time"},
    // About to operate in normal use
    Phrase{"check.early-operation.name", LOOPWRIGHT_PHRASE("Phrases", "Operation in normal use"), ""},
    Phrase{"check.early-operation.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is carried by every sound {1} of {2}."),
           "current, device, rating"},
    Phrase{"check.early-operation.holds-in-runs",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is carried by every sound {1} of {2} in these runs and "
                                        "rests; in longer runs it need not be."),
           "current, device, rating"},
    Phrase{"check.early-operation.close",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0}: a sound {1} {2} may operate from {3} on, the earliest "
                                        "after {4}. It may operate in normal use."),
           "current, rating, device, current, time"},
    Phrase{"check.early-operation.at-once",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0}: a sound {1} {2} may operate from {3} on, the earliest at "
                                        "any time. It may operate in normal use."),
           "current, rating, device, current"},
    Phrase{"check.early-operation.unsure-warm",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Load {0} is more than a sound {1} {2} is sure to carry in a place at {3}. It "
                             "may operate in normal use."),
           "current, rating, device, temperature"},
    Phrase{"check.early-operation.close-warm",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Load {0}: in a place at {5} a sound {1} {2} may operate from {3} on, "
                             "the earliest after {4}. It may operate in normal use."),
           "current, rating, device, current, time, temperature"},
    Phrase{"check.early-operation.at-once-warm",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Load {0}: in a place at {4} a sound {1} {2} may operate from {3} on, "
                             "the earliest at any time. It may operate in normal use."),
           "current, rating, device, current, temperature"},
    Phrase{"check.early-operation.fails",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is more than a sound {1} of {2} is sure to carry."),
           "current, device, rating"},
    // The wiring cooks
    Phrase{"check.conductor-heat.name", LOOPWRIGHT_PHRASE("Phrases", "Heat of the wiring"), ""},
    Phrase{"check.conductor-heat.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Conductors reach {0}; their insulation bears {1}."),
           "temperature, temperature"},
    Phrase{
        "check.conductor-heat.close",
        LOOPWRIGHT_PHRASE("Phrases", "Conductors reach {0}, close to the {1} that their insulation bears."),
        "temperature, temperature"},
    Phrase{"check.conductor-heat.may-pass",
           LOOPWRIGHT_PHRASE("Phrases", "Conductors may reach {0} in each run, above the {1} that their "
                                        "insulation bears, if the cable is slow to share their heat."),
           "temperature, temperature"},
    Phrase{"check.conductor-heat.fails",
           LOOPWRIGHT_PHRASE("Phrases", "Conductors reach {0} in use; their insulation bears {1}, and the "
                                        "device does not end it. Take load off, or fit larger wiring."),
           "temperature, temperature"},
    Phrase{"check.conductor-heat.fails-between",
           LOOPWRIGHT_PHRASE("Phrases", "Conductors reach {0} to {2} in use; their insulation bears {1}, and "
                                        "the device does not end it. Take load off, or fit larger wiring."),
           "temperature, temperature, temperature"},
    Phrase{"check.conductor-heat.before-the-end",
           LOOPWRIGHT_PHRASE("Phrases", "Conductors reach {0} or more before a sound device is sure to end "
                                        "the load, after {2}; a short overload may warm them to {1}. Take "
                                        "load off, or fit larger wiring."),
           "temperature, temperature, time"},
    Phrase{"check.conductor-heat.may-pass-before-the-end",
           LOOPWRIGHT_PHRASE("Phrases", "Conductors may reach {0} before a sound device is sure to end the "
                                        "load, after {2}; a short overload may warm them to {1}."),
           "temperature, temperature, time"},
    Phrase{"check.conductor-heat.device-ends-it",
           LOOPWRIGHT_PHRASE("Phrases", "A sound device is sure to end this load."), ""},
    // A plug fuse that need not operate
    Phrase{"check.plug-fuse.fails-carried",
           LOOPWRIGHT_PHRASE("Phrases", "{0} draws {1} through its {2} plug fuse, which need never operate "
                                        "and heats plug and outlet {3} times as much as its rating does. "
                                        "Give it a device of its own."),
           "equipment, current, rating, ratio"},
    // Words and notes
    Phrase{"check.word.the-load", LOOPWRIGHT_PHRASE("Phrases", "The load"), ""},
    Phrase{"check.note.replica",
           LOOPWRIGHT_PHRASE("Phrases", "carried for ever; the device counts as any element and body that "
                                        "together meet its standard’s limits, from cold, at its own ambient"),
           ""},
    Phrase{"check.note.around-devices", LOOPWRIGHT_PHRASE("Phrases", "around the devices of its board"), ""},
    Phrase{"check.note.calibrated-at",
           LOOPWRIGHT_PHRASE("Phrases", "up to this the device carries its rating"), ""},
    Phrase{"check.note.share-in-warmth",
           LOOPWRIGHT_PHRASE("Phrases",
                             "of its rating is carried there, by the makers’ stricter figure; between two "
                             "temperatures that of the warmer"),
           ""},
    Phrase{"check.note.share-of-others",
           LOOPWRIGHT_PHRASE("Phrases",
                             "of its rating; no figure for this rating reaches so far, so the strictest of "
                             "the others, which hardly differ, is assumed"),
           ""},
    Phrase{"check.note.share-at-most",
           LOOPWRIGHT_PHRASE("Phrases",
                             "of its rating, in the warmest place that is published; here it is no more"),
           ""},
    Phrase{"check.note.carried-in-warmth", LOOPWRIGHT_PHRASE("Phrases", "what it carries there at most"), ""},
    Phrase{"check.note.where-calibrated",
           LOOPWRIGHT_PHRASE("Phrases", "at the temperature that it is calibrated for"), ""},
    Phrase{"check.note.latest-in-cold",
           LOOPWRIGHT_PHRASE("Phrases",
                             "assumed for the latest sound device: all currents at which heat operates it "
                             "are so many times what they are where it was calibrated"),
           ""},
    Phrase{"check.note.cold-not-published",
           LOOPWRIGHT_PHRASE("Phrases",
                             "colder than any place that is published: heat is not sure to operate "
                             "the device"),
           ""},
    Phrase{"check.note.warmth-not-reckoned",
           LOOPWRIGHT_PHRASE("Phrases", "around the devices; not reckoned with, since only the maker of a "
                                        "device of this kind says what it carries there"),
           ""},
    Phrase{"check.note.earliest-in-warmth",
           LOOPWRIGHT_PHRASE("Phrases",
                             "assumed for the earliest sound device: all currents at which heat operates it "
                             "are C_a of what they are where it was calibrated"),
           ""},
    Phrase{"check.note.earliest-device",
           LOOPWRIGHT_PHRASE("Phrases", "the earliest sound device operates, runs falling together"), ""},
    Phrase{"check.note.latest-device",
           LOOPWRIGHT_PHRASE("Phrases", "the latest sound device has operated, however runs fall"), ""},
    Phrase{"check.note.may-operate-at",
           LOOPWRIGHT_PHRASE("Phrases", "from this load on, in the same runs, a sound device may operate"),
           ""},
    Phrase{"check.note.must-operate-at",
           LOOPWRIGHT_PHRASE("Phrases", "from this load on, in the same runs, every sound device operates"),
           ""},
    Phrase{"check.note.device-shift",
           LOOPWRIGHT_PHRASE("Phrases", "by which a device that was hot for years is assumed to operate "
                                        "early; no standard says"),
           ""},
    Phrase{"check.note.aged-may-operate-at",
           LOOPWRIGHT_PHRASE("Phrases", "from this load on such a device may operate"), ""},
    Phrase{"check.note.mean-load",
           LOOPWRIGHT_PHRASE("Phrases", "steady current that heats as much, over a long time"), ""},
    Phrase{"check.note.share-above",
           LOOPWRIGHT_PHRASE("Phrases", "of the time above the rating, if the pieces run independently"), ""},
    Phrase{"check.note.contact-heat",
           LOOPWRIGHT_PHRASE("Phrases", "heat in contacts during a run, that at the rating being 1"), ""},
    Phrase{"check.note.contact-heat-mean",
           LOOPWRIGHT_PHRASE("Phrases", "heat in contacts on average, that at the rating being 1"), ""},
    Phrase{"check.note.quick-constant",
           LOOPWRIGHT_PHRASE("Phrases", "time constant if the conductor alone takes up heat"), ""},
    Phrase{"check.note.slow-constant", LOOPWRIGHT_PHRASE("Phrases", "time constant if the whole cable does"),
           ""},
    Phrase{"check.note.conductor-peak",
           LOOPWRIGHT_PHRASE("Phrases", "highest in the settled cycle, the conductor alone taking up heat"),
           ""},
    Phrase{"check.note.conductor-least-peak",
           LOOPWRIGHT_PHRASE("Phrases", "highest in the settled cycle, all around it taking up heat"), ""},
    Phrase{"check.note.conductor-mean", LOOPWRIGHT_PHRASE("Phrases", "mean over the settled cycle"), ""},
    Phrase{
        "check.note.ageing-least",
        LOOPWRIGHT_PHRASE("Phrases", "estimate: ageing of the insulation, that at its limit being 1; least"),
        ""},
    Phrase{
        "check.note.ageing-most",
        LOOPWRIGHT_PHRASE("Phrases", "estimate: ageing of the insulation, that at its limit being 1; most"),
        ""},
};

} // namespace

std::span<const Phrase> checkOverload() {
    return table;
}

} // namespace loopwright::phrase_tables
