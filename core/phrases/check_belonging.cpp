// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// What the checks say of whether load, device and wiring belong together.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    Phrase{"check.load-device.name", LOOPWRIGHT_PHRASE("Phrases", "Load and device"), ""},
    Phrase{"check.load-device.holds", LOOPWRIGHT_PHRASE("Phrases", "Load {0} is within the {2} {1}."),
           "current, device, rating"},
    Phrase{"check.load-device.close",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is close to what the {2} {1} is rated for."),
           "current, device, rating"},
    Phrase{"check.load-device.fails",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Load {0} is above the {2} {1}. Take load off, or change device and wiring."),
           "current, device, rating"},
    Phrase{"check.load-device.fails-carried",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is above the {2} {1}, which may carry it without ever "
                                        "operating. Take load off, or change device and wiring."),
           "current, device, rating"},
    Phrase{"check.load-device.fails-unsure",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is above the {2} {1}; neither operation nor non-operation "
                                        "is assured. Take load off, or change device and wiring."),
           "current, device, rating"},
    Phrase{"check.device-wiring.name", LOOPWRIGHT_PHRASE("Phrases", "Device and wiring"), ""},
    Phrase{"check.device-wiring.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} protects wiring that may carry {2}."),
           "device, rating, capacity"},
    Phrase{"check.device-wiring.close",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} only just protects wiring that may carry {2}."),
           "device, rating, capacity"},
    Phrase{
        "check.device-wiring.fails",
        LOOPWRIGHT_PHRASE(
            "Phrases",
            "The {1} {0} is too large for wiring that may carry {2}. Fit a smaller device or larger wiring."),
        "device, rating, capacity"},
    Phrase{"check.device-wiring.holds-buried",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} protects wiring in the ground, of which {2} count for "
                                        "protection against overload."),
           "device, rating, capacity"},
    Phrase{"check.device-wiring.close-buried",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} only just protects wiring in the ground, of which {2} "
                                        "count for protection against overload."),
           "device, rating, capacity"},
    Phrase{"check.device-wiring.fails-buried",
           LOOPWRIGHT_PHRASE("Phrases", "The {1} {0} is too large for wiring in the ground, of which {2} "
                                        "count for protection against overload. Fit a smaller device or "
                                        "larger wiring."),
           "device, rating, capacity"},
    Phrase{"check.device-wiring.holds-ring",
           LOOPWRIGHT_PHRASE("Phrases", "A leg of the ring may carry {0}; at least {1} is needed."),
           "capacity, least capacity"},
    Phrase{"check.device-wiring.close-ring",
           LOOPWRIGHT_PHRASE("Phrases",
                             "A leg of the ring may carry only just enough: {0}; at least {1} is needed."),
           "capacity, least capacity"},
    Phrase{"check.device-wiring.fails-ring-size",
           LOOPWRIGHT_PHRASE("Phrases", "The ring’s conductors are {0}; a ring of this device asks for {1}. "
                                        "Fit a smaller device or larger wiring."),
           "size, size"},
    Phrase{"check.device-wiring.fails-ring",
           LOOPWRIGHT_PHRASE("Phrases", "A leg of the ring may carry {0}; at least {1} is needed. Remove "
                                        "what limits it, or fit a smaller device."),
           "capacity, least capacity"},
    Phrase{
        "check.device-wiring.fails-ring-device",
        LOOPWRIGHT_PHRASE(
            "Phrases", "The {1} {0} is too large for a ring; at most {2} is allowed. Fit a smaller device."),
        "device, rating, largest rating"},
    Phrase{"check.load-wiring.name", LOOPWRIGHT_PHRASE("Phrases", "Load and wiring"), ""},
    Phrase{"check.load-wiring.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The wiring may carry {1} and carries {0}."), "current, capacity"},
    Phrase{"check.load-wiring.close",
           LOOPWRIGHT_PHRASE("Phrases", "The wiring carries {0}, close to the {1} that it may carry."),
           "current, capacity"},
    Phrase{"check.load-wiring.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The wiring carries {0}, more than the {1} that it may carry. Take "
                                        "load off, or fit larger wiring."),
           "current, capacity"},
    Phrase{"check.conventional.name", LOOPWRIGHT_PHRASE("Phrases", "Overload of the wiring"), ""},
    Phrase{"check.conventional.holds",
           LOOPWRIGHT_PHRASE("Phrases", "The {0} is sure to operate at {1}; the wiring bears {2}."),
           "device, current, current"},
    Phrase{"check.conventional.close",
           LOOPWRIGHT_PHRASE("Phrases",
                             "The {0} is sure to operate only at {1}; the wiring bears {2}, hardly more."),
           "device, current, current"},
    Phrase{"check.conventional.fails",
           LOOPWRIGHT_PHRASE("Phrases", "The {0} is sure to operate only at {1}; the wiring bears {2}. Fit a "
                                        "smaller device or larger wiring."),
           "device, current, current"},
    Phrase{"check.conventional.ring",
           LOOPWRIGHT_PHRASE("Phrases", "For a ring the ring allowance stands in for this."), ""},
    Phrase{"check.plug-fuse.name", LOOPWRIGHT_PHRASE("Phrases", "Plug fuse"), ""},
    Phrase{"check.plug-fuse.holds", LOOPWRIGHT_PHRASE("Phrases", "{0} draws {1}, within its {2} plug fuse."),
           "equipment, current, rating"},
    Phrase{"check.plug-fuse.close",
           LOOPWRIGHT_PHRASE("Phrases", "{0} draws {1}, close to what its {2} plug fuse is rated for."),
           "equipment, current, rating"},
    Phrase{"check.plug-fuse.continuous",
           LOOPWRIGHT_PHRASE("Phrases", "{0} draws {1} for hours through its {2} plug fuse: plug and outlet "
                                        "stay hot. Look at both, and better give it a device of its own."),
           "equipment, current, rating"},
    Phrase{"check.plug-fuse.fails",
           LOOPWRIGHT_PHRASE(
               "Phrases", "{0} draws {1}, which overloads its {2} plug fuse. Give it a device of its own."),
           "equipment, current, rating"},
    Phrase{"check.plug-fuse.none", LOOPWRIGHT_PHRASE("Phrases", "Nothing here is fed through a plug fuse."),
           ""},
    // Load and device where the board is warm
    Phrase{"check.load-device.holds-warm",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is within the {3} that the {2} {1} carries in a place at "
                                        "{4}."),
           "current, device, rating, current, temperature"},
    Phrase{"check.load-device.close-warm",
           LOOPWRIGHT_PHRASE("Phrases", "Load {0} is close to the {3} that the {2} {1} carries in a place at "
                                        "{4}."),
           "current, device, rating, current, temperature"},
    Phrase{"check.load-device.fails-warm",
           LOOPWRIGHT_PHRASE("Phrases", "In a place at {4} the {2} {1} carries {3} at most, and load {0} is "
                                        "more. Cool the place, take load off, or change device and wiring."),
           "current, device, rating, current, temperature"},
    Phrase{"check.load-device.fails-warm-unsure",
           LOOPWRIGHT_PHRASE("Phrases", "In a place at {4} the {2} {1} carries {3} at most, and load {0} is "
                                        "more; neither operation nor non-operation is assured. Cool the "
                                        "place, take load off, or change device and wiring."),
           "current, device, rating, current, temperature"},
};

} // namespace

std::span<const Phrase> checkBelonging() {
    return table;
}

} // namespace loopwright::phrase_tables
