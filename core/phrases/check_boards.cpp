// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// Sentences of the checks that look at a board as a whole and at what stands before it.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    // What is asked for together
    Phrase{"check.board-demand.name", LOOPWRIGHT_PHRASE("Phrases", "Demand of the board"), ""},
    Phrase{"check.board-demand.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The demand of {0} on {1} is within {3}, {2}."),
           "current, line, limit, what limits"},
    Phrase{"check.board-demand.close",
           LOOPWRIGHT_PHRASE("Phrases", "The demand of {0} on {1} is close to {3}, {2}."),
           "current, line, limit, what limits"},
    Phrase{"check.board-demand.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The demand of {0} on {1} is above {3}, {2}. Move load to another "
                                        "line or board, or read the demand over a busy week."),
           "current, line, limit, what limits"},
    Phrase{"check.board-demand.no-circuits", LOOPWRIGHT_PHRASE("Phrases", "No circuit is in use here."), ""},
    Phrase{"check.board-demand.no-rating",
           LOOPWRIGHT_PHRASE("Phrases", "The board has no rated current, and nothing limits it further up."),
           ""},
    Phrase{"check.supply-demand.name", LOOPWRIGHT_PHRASE("Phrases", "Demand at the intake"), ""},
    Phrase{"check.supply-demand.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The demand of {0} on {1} is within {3}, {2}."),
           "current, line, limit, what limits"},
    Phrase{"check.supply-demand.close",
           LOOPWRIGHT_PHRASE("Phrases", "The demand of {0} on {1} is close to {3}, {2}."),
           "current, line, limit, what limits"},
    Phrase{"check.supply-demand.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The demand of {0} on {1} is above {3}, {2}. Take load off, or ask "
                                        "the distributor for a larger supply."),
           "current, line, limit, what limits"},
    Phrase{"check.supply-demand.no-circuits",
           LOOPWRIGHT_PHRASE("Phrases", "No circuit is in use on this supply."), ""},
    Phrase{"check.phase-balance.name", LOOPWRIGHT_PHRASE("Phrases", "Balance of the phases"), ""},
    Phrase{"check.phase-balance.holds",
           LOOPWRIGHT_PHRASE("Phrases", "{1} is asked for {0}, the mean of the three for {2}; the neutral "
                                        "carries {3}."),
           "current, line, current, current"},
    Phrase{"check.phase-balance.close",
           LOOPWRIGHT_PHRASE("Phrases", "{1} is asked for {0}, the mean of the three for {2}; the neutral "
                                        "carries {3}. Worth sharing the loads out anew."),
           "current, line, current, current"},
    Phrase{"check.phase-balance.fails",
           LOOPWRIGHT_PHRASE("Phrases", "{1} is asked for {0}, the mean of the three for {2}; the neutral "
                                        "carries {3}."),
           "current, line, current, current"},
    Phrase{"check.phase-balance.one-phase", LOOPWRIGHT_PHRASE("Phrases", "The board has one phase."), ""},
    Phrase{"check.phase-balance.no-load", LOOPWRIGHT_PHRASE("Phrases", "Nothing is asked for here."), ""},
    // Devices in series
    Phrase{"check.selectivity.name", LOOPWRIGHT_PHRASE("Phrases", "Selectivity"), ""},
    Phrase{"check.selectivity.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} operates alone, before the {3} {2} upstream, whatever "
                                        "may flow here."),
           "device, rating, device, rating"},
    Phrase{"check.selectivity.partial",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} operates alone, before the {3} {2} upstream, up to {4}; "
                                        "up to {5} may flow here."),
           "device, rating, device, rating, current, current"},
    Phrase{"check.selectivity.gap",
           LOOPWRIGHT_PHRASE("Phrases",
                             "The {1} {0} is proven to operate alone, before the {3} {2} upstream, "
                             "up to {4}, and again from {5} to {6}; between them both may "
                             "operate. Up to {7} may flow here."),
           "device, rating, device, rating, current, current, current, current"},
    Phrase{"check.selectivity.overload-only",
           LOOPWRIGHT_PHRASE("Phrases",
                             "The {1} {0} operates alone on overload, before the {3} {2} upstream; "
                             "nothing is published for fault currents."),
           "device, rating, device, rating"},
    Phrase{"check.selectivity.no-faults",
           LOOPWRIGHT_PHRASE("Phrases",
                             "The {1} {0} operates alone on overload only; a fault may operate the "
                             "{3} {2} upstream as well. More would go out than need be."),
           "device, rating, device, rating"},
    Phrase{"check.selectivity.close",
           LOOPWRIGHT_PHRASE("Phrases", "Even an overload of the {1} {0} may operate the {3} {2} upstream: "
                                        "their ratings are too near. More would go out than need be."),
           "device, rating, device, rating"},
    Phrase{"check.selectivity.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} and the {3} {2} upstream operate together."),
           "device, rating, device, rating"},
    Phrase{"check.selectivity.nothing-upstream",
           LOOPWRIGHT_PHRASE("Phrases", "Nothing is recorded that stands upstream."), ""},
    Phrase{"check.breaking-capacity.backed-up",
           LOOPWRIGHT_PHRASE("Phrases", "{0} may flow, and the {1} alone breaks {2}. With the supply fuse a "
                                        "consumer unit is good for {3} where its maker declares it."),
           "current, device, current, current"},
    Phrase{"check.breaking-capacity.fails-behind-fuse",
           LOOPWRIGHT_PHRASE("Phrases", "{0} may flow, more than the {2} that the {1} breaks. Fit one that "
                                        "breaks more, or show by its maker’s table that the {3} fuse "
                                        "upstream backs it up."),
           "current, device, current, rating"},
    // END
};

} // namespace

std::span<const Phrase> checkBoards() {
    return table;
}

} // namespace loopwright::phrase_tables
