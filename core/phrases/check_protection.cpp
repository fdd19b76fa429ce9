// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// Sentences of checks of residual current devices, main conductors and starts.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    // Residual current devices
    Phrase{"check.residual-type.name", LOOPWRIGHT_PHRASE("Phrases", "Type of residual device"), ""},
    Phrase{"check.residual-type.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Type {0} sees what {1} can feed it; type {2} is asked for."),
           "type, equipment, type"},
    Phrase{"check.residual-type.close",
           LOOPWRIGHT_PHRASE("Phrases", "Type {0} does for {1} only if its maker states that it leaks no "
                                        "smooth direct current; otherwise type {2}. Find out."),
           "type, equipment, type"},
    Phrase{
        "check.residual-type.fails",
        LOOPWRIGHT_PHRASE(
            "Phrases",
            "Type {0} does not see the direct current that {1} can leak, or is blinded by it. Fit type {2}."),
        "type, equipment, type"},
    Phrase{"check.residual-type.close-alternating",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "Type {0} does for {1} only if it leaks no direct current; type {2} is asked for today."),
           "type, equipment, type"},
    Phrase{"check.residual-type.none", LOOPWRIGHT_PHRASE("Phrases", "No residual current device on the way."),
           ""},
    Phrase{"check.residual-type.not-asked",
           LOOPWRIGHT_PHRASE("Phrases", "Nothing recorded here asks for a type of residual current device."),
           ""},
    Phrase{"check.residual-half.name", LOOPWRIGHT_PHRASE("Phrases", "Residual device at half"), ""},
    Phrase{"check.residual-half.holds",
           LOOPWRIGHT_PHRASE("Phrases", "It stays in at half its rated residual current."), ""},
    Phrase{"check.residual-half.close",
           LOOPWRIGHT_PHRASE("Phrases", "It hardly stays in at half its rated residual current."), ""},
    Phrase{"check.residual-half.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The residual current device operates at half its rated residual "
                                        "current. Look for leakage; otherwise replace it."),
           ""},
    Phrase{"check.residual-half.not-done",
           LOOPWRIGHT_PHRASE("Phrases", "Not tested at half its rated residual current."), ""},
    Phrase{"check.residual-series.name", LOOPWRIGHT_PHRASE("Phrases", "Residual devices in series"), ""},
    Phrase{"check.residual-series.holds",
           LOOPWRIGHT_PHRASE(
               "Phrases", "Only the device of {0} operates on a fault here; the one of {1} before it waits."),
           "residual current, residual current"},
    Phrase{"check.residual-series.close",
           LOOPWRIGHT_PHRASE("Phrases", "The devices of {0} and {1} may operate together."),
           "residual current, residual current"},
    Phrase{"check.residual-series.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The devices of {0} and {1} operate together."),
           "residual current, residual current"},
    Phrase{"check.residual-series.not-delayed",
           LOOPWRIGHT_PHRASE("Phrases", "A fault here may operate the device of {1} before the one of {0}: "
                                        "it does not wait. Worth a delayed one."),
           "residual current, residual current"},
    Phrase{
        "check.residual-series.too-near",
        LOOPWRIGHT_PHRASE(
            "Phrases",
            "A fault here may operate the device of {1} before the one of {0}: their ratings are too near."),
        "residual current, residual current"},
    Phrase{"check.residual-series.single",
           LOOPWRIGHT_PHRASE("Phrases", "No two residual current devices in series."), ""},
    // Faults that last
    Phrase{"check.adiabatic.too-long",
           LOOPWRIGHT_PHRASE("Phrases", "A fault may last {0}; beyond {1} heat flows off, and the adiabatic "
                                        "equation cannot tell whether the conductor bears it. Lower the "
                                        "loop, or ask the maker of the cable."),
           "time, time"},
    Phrase{"check.adiabatic.let-through-unknown",
           LOOPWRIGHT_PHRASE("Phrases",
                             "At a fault current of {0} nothing published says that the device lets "
                             "through no more than {1} bears. Ask its maker."),
           "current, size"},
    Phrase{"check.adiabatic.overload-protects",
           LOOPWRIGHT_PHRASE("Phrases", "A fault at the end of the circuit needs at most {0}. A breaker that "
                                        "protects line conductors of {1} against overload, and breaks what "
                                        "flows at the start, protects them there too."),
           "size, size"},
    Phrase{"check.adiabatic.published-as-enough",
           LOOPWRIGHT_PHRASE("Phrases", "A fault at the end of the circuit needs at most {0}. For one at the "
                                        "start, {1} is published as enough behind this breaker."),
           "size, size"},
    // Conductors at the intake
    Phrase{"check.earthing-conductor.name", LOOPWRIGHT_PHRASE("Phrases", "Earthing conductor"), ""},
    Phrase{"check.earthing-conductor.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The earthing conductor of {0} is as large as asked for: {1}."),
           "size, size"},
    Phrase{
        "check.earthing-conductor.close",
        LOOPWRIGHT_PHRASE("Phrases", "The earthing conductor of {0} is hardly as large as asked for: {1}."),
        "size, size"},
    Phrase{"check.earthing-conductor.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The earthing conductor of {0} is too small; {1} is asked for."),
           "size, size"},
    Phrase{"check.earthing-conductor.smaller",
           LOOPWRIGHT_PHRASE("Phrases", "The earthing conductor of {0} is smaller than the {1} of the table. "
                                        "Show by calculation that it bears a fault, or fit a larger one."),
           "size, size"},
    Phrase{"check.earthing-conductor.tt",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Earthed by an electrode: the tails say nothing about its earthing conductor."),
           ""},
    Phrase{"check.main-bonding.name", LOOPWRIGHT_PHRASE("Phrases", "Main bonding"), ""},
    Phrase{"check.main-bonding.holds",
           LOOPWRIGHT_PHRASE("Phrases", "Main bonding of {0} is as large as asked for: {1}."), "size, size"},
    Phrase{"check.main-bonding.close",
           LOOPWRIGHT_PHRASE("Phrases", "Main bonding of {0} is hardly as large as asked for: {1}."),
           "size, size"},
    Phrase{"check.main-bonding.fails",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Main bonding of {0} is too small; {1} is asked for. Fit a larger conductor."),
           "size, size"},
    // Starts
    Phrase{"check.motor-start.name", LOOPWRIGHT_PHRASE("Phrases", "Starting current"), ""},
    Phrase{"check.motor-start.holds",
           LOOPWRIGHT_PHRASE("Phrases", "{0} starts with {1}; the device rides through up to {2}."),
           "equipment, current, current"},
    Phrase{
        "check.motor-start.close",
        LOOPWRIGHT_PHRASE("Phrases", "{0} starts with {1}; the device rides through up to {2}, hardly more."),
        "equipment, current, current"},
    Phrase{"check.motor-start.fails",
           LOOPWRIGHT_PHRASE("Phrases", "{0} starts with {1}; from {2} on the device operates at once. Fit "
                                        "one of a slower type, or a softer starter."),
           "equipment, current, current"},
    Phrase{"check.motor-start.in-band",
           LOOPWRIGHT_PHRASE(
               "Phrases",
               "{0} starts with {1}; above {2} the device may operate at once. Expect nuisance operation."),
           "equipment, current, current"},
    Phrase{"check.motor-start.none", LOOPWRIGHT_PHRASE("Phrases", "Nothing here starts with a surge."), ""},
    Phrase{"check.motor-start.fuse", LOOPWRIGHT_PHRASE("Phrases", "A fuse has no instantaneous band."), ""},
};

} // namespace

std::span<const Phrase> checkProtection() {
    return table;
}

} // namespace loopwright::phrase_tables
