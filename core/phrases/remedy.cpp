// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// What remedies propose; the same sentence is the label of the change that takes one.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    Phrase{
        "remedy.run-in-turns",
        LOOPWRIGHT_PHRASE("Phrases", "Interlock the equipment so that no two pieces run at once: {0} then."),
        "current"},
    Phrase{"remedy.less-load", LOOPWRIGHT_PHRASE("Phrases", "Take {0} off: {1} is left."),
           "current, current"},
    Phrase{"remedy.other-device", LOOPWRIGHT_PHRASE("Phrases", "Fit another device: {0}, {1}."),
           "family, rating"},
    Phrase{
        "remedy.separate-conductors",
        LOOPWRIGHT_PHRASE("Phrases", "Give a circuit of its own to {0}: {1}, {2}; line conductors of {3}."),
        "equipment, family, rating, size"},
    Phrase{"remedy.separate-cable",
           LOOPWRIGHT_PHRASE("Phrases", "Give a circuit of its own to {0}: {1}, {2}; {3}, its protective "
                                        "conductor {4}."),
           "equipment, family, rating, size, size"},
    Phrase{"remedy.separate-conductors-spare",
           LOOPWRIGHT_PHRASE("Phrases", "Give a circuit of its own to {0}, on the spare way {4}: {1}, {2}; "
                                        "line conductors of {3}."),
           "equipment, family, rating, size, path"},
    Phrase{"remedy.separate-cable-spare",
           LOOPWRIGHT_PHRASE("Phrases", "Give a circuit of its own to {0}, on the spare way {5}: {1}, {2}; "
                                        "{3}, its protective conductor {4}."),
           "equipment, family, rating, size, size, path"},
    Phrase{"remedy.unlaid-circuit",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Move to a circuit of its own, which has to be planned: {0}. Along this way no "
                             "standard device with standard conductors is sure to hold for it."),
           "equipment"},
    Phrase{"remedy.unlaid-circuit-load",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Move to a circuit of its own, which has to be planned: {0}. What it draws is "
                             "not known exactly, so neither is the device that it takes."),
           "equipment"},
    Phrase{"remedy.unlaid-circuit-wiring",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Move to a circuit of its own, which has to be planned: {0}. How the wiring is "
                             "laid here is not recorded well enough to choose conductors."),
           "equipment"},
    Phrase{"remedy.without-plug-fuse",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Connect directly instead of by a fused plug or outlet, so that the circuit’s "
                             "own device protects it: {0}. Its flexible cord and the appliance itself have "
                             "to be fit for that device; where they are not, fit a plug fuse that carries "
                             "the load or a smaller device for the circuit."),
           "equipment"},
    Phrase{"remedy.word.equipment", LOOPWRIGHT_PHRASE("Phrases", "the equipment"), ""},
    Phrase{"remedy.note.alongside",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Reckoned as long as the present circuit and laid the same way, with one "
                             "circuit more in the bunch: the others in it then have one more beside them, "
                             "and carry less."),
           ""},
    Phrase{"remedy.note.along-ring",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Reckoned half as long as the ring and laid the same way, with one circuit "
                             "more in the bunch: the others in it then have one more beside them, and "
                             "carry less."),
           ""},
    Phrase{"remedy.note.no-spare-way",
           LOOPWRIGHT_PHRASE("Phrases", "The board has no free spare way recorded for it."), ""},
    Phrase{"remedy.note.residual",
           LOOPWRIGHT_PHRASE("Phrases", "Its device is one with a residual current of {0}."), "current"},
    Phrase{"remedy.note.clamp",
           LOOPWRIGHT_PHRASE("Phrases", "The clamp reading of this visit still counts until it is taken "
                                        "anew: measure the load again after the work."),
           ""},
    Phrase{"remedy.none",
           LOOPWRIGHT_PHRASE("Phrases", "No standard change was found that makes every check hold; a "
                                        "competent person has to plan one."),
           ""},
    Phrase{"remedy.other-setting",
           LOOPWRIGHT_PHRASE("Phrases", "Set the breaker’s overload release to {0}, {1} of its rating."),
           "current, share"},
    Phrase{"remedy.other-setting-between",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Set the breaker’s overload release to {0}, {1} of its rating, if its dial can "
                             "stand between the usual positions."),
           "current, share"},
    Phrase{"remedy.larger-conductor", LOOPWRIGHT_PHRASE("Phrases", "Fit larger line conductors: {0}."),
           "size"},
    Phrase{"remedy.device-and-conductor",
           LOOPWRIGHT_PHRASE("Phrases", "Fit another device and larger line conductors: {0}, {1}; {2}."),
           "family, rating, size"},
    Phrase{"remedy.larger-cable",
           LOOPWRIGHT_PHRASE("Phrases", "Fit a larger cable: {0}, its protective conductor {1}."),
           "size, size"},
    Phrase{"remedy.device-and-cable",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Fit another device and a larger cable: {0}, {1}; {2}, its protective "
                             "conductor {3}."),
           "family, rating, size, size"},
    Phrase{"remedy.advice",
           LOOPWRIGHT_PHRASE("Phrases", "Advice for a competent person. Local rules and the actual site "
                                        "decide; prove dead before work, and test after it."),
           ""},
    Phrase{"trial.taken", LOOPWRIGHT_PHRASE("Phrases", "Tried and taken at {0}"), "path"},
};

} // namespace

std::span<const Phrase> remedy() {
    return table;
}

} // namespace loopwright::phrase_tables
