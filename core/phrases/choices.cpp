// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

namespace loopwright::phrase_tables {
namespace {

// Words for choices stand alone in a field or a cell, so they begin with a capital; verdicts follow a mark or
// a name and do not.
constexpr std::array words{
    Phrase{"verdict.fails", LOOPWRIGHT_PHRASE("Phrases", "fails"), {}},
    Phrase{"verdict.cannot-tell", LOOPWRIGHT_PHRASE("Phrases", "can’t tell"), {}},
    Phrase{"verdict.close", LOOPWRIGHT_PHRASE("Phrases", "close"), {}},
    Phrase{"verdict.holds", LOOPWRIGHT_PHRASE("Phrases", "holds"), {}},
    Phrase{"verdict.does-not-apply", LOOPWRIGHT_PHRASE("Phrases", "doesn’t apply"), {}},

    Phrase{"origin.read", LOOPWRIGHT_PHRASE("Phrases", "read"), {}},
    Phrase{"origin.typed", LOOPWRIGHT_PHRASE("Phrases", "typed"), {}},
    Phrase{"origin.carried", LOOPWRIGHT_PHRASE("Phrases", "carried"), {}},
    Phrase{"origin.computed", LOOPWRIGHT_PHRASE("Phrases", "computed"), {}},
    Phrase{"origin.assumed", LOOPWRIGHT_PHRASE("Phrases", "assumed"), {}},
    Phrase{"origin.table", LOOPWRIGHT_PHRASE("Phrases", "table"), {}},
    Phrase{"origin.rule", LOOPWRIGHT_PHRASE("Phrases", "rule"), {}},

    Phrase{"choice.earthing.unknown", LOOPWRIGHT_PHRASE("Phrases", "Not known"), {}},
    Phrase{"choice.earthing.tn-s", LOOPWRIGHT_PHRASE("Phrases", "TN-S"), {}},
    Phrase{"choice.earthing.tn-c-s", LOOPWRIGHT_PHRASE("Phrases", "TN-C-S"), {}},
    Phrase{"choice.earthing.tt", LOOPWRIGHT_PHRASE("Phrases", "TT"), {}},

    Phrase{"choice.board-earthing.from-supply", LOOPWRIGHT_PHRASE("Phrases", "From the supply"), {}},
    Phrase{"choice.board-earthing.own-electrode", LOOPWRIGHT_PHRASE("Phrases", "Own electrode"), {}},

    Phrase{"choice.phases.L1", LOOPWRIGHT_PHRASE("Phrases", "L1"), {}},
    Phrase{"choice.phases.L2", LOOPWRIGHT_PHRASE("Phrases", "L2"), {}},
    Phrase{"choice.phases.L3", LOOPWRIGHT_PHRASE("Phrases", "L3"), {}},
    Phrase{"choice.phases.three", LOOPWRIGHT_PHRASE("Phrases", "Three-phase"), {}},

    Phrase{"choice.circuit-use.sockets", LOOPWRIGHT_PHRASE("Phrases", "Socket-outlets"), {}},
    Phrase{"choice.circuit-use.fixed", LOOPWRIGHT_PHRASE("Phrases", "Fixed equipment"), {}},
    Phrase{"choice.circuit-use.lighting", LOOPWRIGHT_PHRASE("Phrases", "Lighting"), {}},
    Phrase{"choice.circuit-use.distribution", LOOPWRIGHT_PHRASE("Phrases", "Feeds a board"), {}},
    Phrase{"choice.circuit-use.spare", LOOPWRIGHT_PHRASE("Phrases", "Spare"), {}},

    Phrase{"choice.equipment-kind.unknown", LOOPWRIGHT_PHRASE("Phrases", "Not known"), {}},
    Phrase{"choice.equipment-kind.general", LOOPWRIGHT_PHRASE("Phrases", "Something else"), {}},
    Phrase{"choice.equipment-kind.lighting", LOOPWRIGHT_PHRASE("Phrases", "Lighting"), {}},
    Phrase{"choice.equipment-kind.socket-fed", LOOPWRIGHT_PHRASE("Phrases", "On a plug"), {}},
    Phrase{"choice.equipment-kind.cooker", LOOPWRIGHT_PHRASE("Phrases", "Cooker"), {}},
    Phrase{"choice.equipment-kind.induction-hob", LOOPWRIGHT_PHRASE("Phrases", "Induction hob"), {}},
    Phrase{"choice.equipment-kind.instantaneous-heater",
           LOOPWRIGHT_PHRASE("Phrases", "Water heater, instantaneous"),
           {}},
    Phrase{"choice.equipment-kind.stored-heater", LOOPWRIGHT_PHRASE("Phrases", "Water heater, stored"), {}},
    Phrase{"choice.equipment-kind.space-heating", LOOPWRIGHT_PHRASE("Phrases", "Space heating"), {}},
    Phrase{"choice.equipment-kind.storage-heating", LOOPWRIGHT_PHRASE("Phrases", "Storage heating"), {}},
    Phrase{"choice.equipment-kind.floor-heating", LOOPWRIGHT_PHRASE("Phrases", "Floor heating"), {}},
    Phrase{"choice.equipment-kind.motor", LOOPWRIGHT_PHRASE("Phrases", "Motor"), {}},
    Phrase{
        "choice.equipment-kind.drive", LOOPWRIGHT_PHRASE("Phrases", "Motor with a frequency converter"), {}},
    Phrase{"choice.equipment-kind.ev-charging", LOOPWRIGHT_PHRASE("Phrases", "Vehicle charging"), {}},
    Phrase{"choice.equipment-kind.pv-inverter", LOOPWRIGHT_PHRASE("Phrases", "Solar inverter"), {}},

    Phrase{"choice.occupancy.unknown", LOOPWRIGHT_PHRASE("Phrases", "Not known"), {}},
    Phrase{"choice.occupancy.dwelling", LOOPWRIGHT_PHRASE("Phrases", "Dwelling"), {}},
    Phrase{"choice.occupancy.small-business",
           LOOPWRIGHT_PHRASE("Phrases", "Small shop, office or workshop"),
           {}},
    Phrase{"choice.occupancy.lodging", LOOPWRIGHT_PHRASE("Phrases", "Hotel or guest house"), {}},

    Phrase{"choice.topology.radial", LOOPWRIGHT_PHRASE("Phrases", "Radial"), {}},
    Phrase{"choice.topology.ring", LOOPWRIGHT_PHRASE("Phrases", "Ring"), {}},

    Phrase{"choice.material.copper", LOOPWRIGHT_PHRASE("Phrases", "Copper"), {}},
    Phrase{"choice.material.aluminium", LOOPWRIGHT_PHRASE("Phrases", "Aluminium"), {}},

    Phrase{"choice.insulation.pvc-70", LOOPWRIGHT_PHRASE("Phrases", "PVC, 70 °C"), {}},
    Phrase{"choice.insulation.xlpe-90", LOOPWRIGHT_PHRASE("Phrases", "XLPE, 90 °C"), {}},

    Phrase{"choice.protective-conductor.in-cable", LOOPWRIGHT_PHRASE("Phrases", "In the cable"), {}},
    Phrase{"choice.protective-conductor.separate", LOOPWRIGHT_PHRASE("Phrases", "Separate"), {}},
    Phrase{"choice.protective-conductor.armour", LOOPWRIGHT_PHRASE("Phrases", "Armour"), {}},
    Phrase{"choice.protective-conductor.conduit", LOOPWRIGHT_PHRASE("Phrases", "Conduit"), {}},

    // What each letter stands for: IEC 60364-5-52:2009, table B.52.1. The numbered methods for flat cable: BS
    // 7671:2018, table 4D5.
    Phrase{"choice.method.unknown", LOOPWRIGHT_PHRASE("Phrases", "Not known"), {}},
    Phrase{"choice.method.A1",
           LOOPWRIGHT_PHRASE("Phrases", "A1: conductors in conduit, in an insulating wall"),
           {}},
    Phrase{
        "choice.method.A2", LOOPWRIGHT_PHRASE("Phrases", "A2: cable in conduit, in an insulating wall"), {}},
    Phrase{"choice.method.B1", LOOPWRIGHT_PHRASE("Phrases", "B1: conductors in conduit, on a wall"), {}},
    Phrase{"choice.method.B2", LOOPWRIGHT_PHRASE("Phrases", "B2: cable in conduit, on a wall"), {}},
    Phrase{"choice.method.C", LOOPWRIGHT_PHRASE("Phrases", "C: cable clipped to a wall"), {}},
    Phrase{"choice.method.D1", LOOPWRIGHT_PHRASE("Phrases", "D1: cable in ducts in the ground"), {}},
    Phrase{"choice.method.D2", LOOPWRIGHT_PHRASE("Phrases", "D2: cable laid in the ground"), {}},
    Phrase{"choice.method.E", LOOPWRIGHT_PHRASE("Phrases", "E: cable in free air or on a tray"), {}},
    Phrase{"choice.method.100",
           LOOPWRIGHT_PHRASE("Phrases", "100: flat cable over a ceiling, under thin insulation"),
           {}},
    Phrase{"choice.method.101",
           LOOPWRIGHT_PHRASE("Phrases", "101: flat cable over a ceiling, under thick insulation"),
           {}},
    Phrase{"choice.method.102",
           LOOPWRIGHT_PHRASE("Phrases", "102: flat cable in an insulated wall, touching the inner face"),
           {}},
    Phrase{"choice.method.103",
           LOOPWRIGHT_PHRASE("Phrases", "103: flat cable in an insulated wall, clear of the inner face"),
           {}},

    Phrase{"choice.residual-type.unknown", LOOPWRIGHT_PHRASE("Phrases", "Not known"), {}},
    Phrase{"choice.residual-type.AC", LOOPWRIGHT_PHRASE("Phrases", "AC"), {}},
    Phrase{"choice.residual-type.A", LOOPWRIGHT_PHRASE("Phrases", "A"), {}},
    Phrase{"choice.residual-type.F", LOOPWRIGHT_PHRASE("Phrases", "F"), {}},
    Phrase{"choice.residual-type.B", LOOPWRIGHT_PHRASE("Phrases", "B"), {}},

    Phrase{"choice.residual-delay.general", LOOPWRIGHT_PHRASE("Phrases", "Without delay"), {}},
    Phrase{"choice.residual-delay.delayed", LOOPWRIGHT_PHRASE("Phrases", "Delayed (S)"), {}},

    Phrase{"choice.visit-kind.periodic", LOOPWRIGHT_PHRASE("Phrases", "Periodic"), {}},
    Phrase{"choice.visit-kind.first", LOOPWRIGHT_PHRASE("Phrases", "First"), {}},
    Phrase{"choice.visit-kind.after-alteration", LOOPWRIGHT_PHRASE("Phrases", "After an alteration"), {}},

    Phrase{"choice.visit-state.open", LOOPWRIGHT_PHRASE("Phrases", "Open"), {}},
    Phrase{"choice.visit-state.issued", LOOPWRIGHT_PHRASE("Phrases", "Issued"), {}},

    Phrase{"choice.test-outcome.not-done", LOOPWRIGHT_PHRASE("Phrases", "Not done"), {}},
    Phrase{"choice.test-outcome.correct", LOOPWRIGHT_PHRASE("Phrases", "Correct"), {}},
    Phrase{"choice.test-outcome.wrong", LOOPWRIGHT_PHRASE("Phrases", "Wrong"), {}},
    Phrase{"choice.test-outcome.limited", LOOPWRIGHT_PHRASE("Phrases", "Could not be done"), {}},
    Phrase{"choice.test-outcome.not-applicable", LOOPWRIGHT_PHRASE("Phrases", "Doesn’t apply"), {}},

    Phrase{"choice.inspection-result.not-looked", LOOPWRIGHT_PHRASE("Phrases", "Not looked at"), {}},
    Phrase{"choice.inspection-result.in-order", LOOPWRIGHT_PHRASE("Phrases", "In order"), {}},
    Phrase{"choice.inspection-result.observed", LOOPWRIGHT_PHRASE("Phrases", "Observed"), {}},
    Phrase{"choice.inspection-result.limited", LOOPWRIGHT_PHRASE("Phrases", "Could not be looked at"), {}},
    Phrase{"choice.inspection-result.not-applicable", LOOPWRIGHT_PHRASE("Phrases", "Doesn’t apply"), {}},

    Phrase{"choice.grade.make-safe", LOOPWRIGHT_PHRASE("Phrases", "Make safe"), {}},
    Phrase{"choice.grade.put-right", LOOPWRIGHT_PHRASE("Phrases", "Put right"), {}},
    Phrase{"choice.grade.look-further", LOOPWRIGHT_PHRASE("Phrases", "Look further"), {}},
    Phrase{"choice.grade.worth-improving", LOOPWRIGHT_PHRASE("Phrases", "Worth improving"), {}},
};

} // namespace

std::span<const Phrase> choices() {
    return words;
}

} // namespace loopwright::phrase_tables
