// SPDX-License-Identifier: GPL-3.0-or-later
// Which way a circuit of its own takes, what is taken for granted of it, and what is said about that.
#include "core/remedy/predicted_reading.h"
#include "tests/core/remedy/remedies_of.h"

namespace loopwright {
namespace {

using test::Fixture;
using test::madeBy;
using test::notes;
using test::ovenAnd;
using test::remediesOf;
using test::remedyIn;
using test::told;
using test::typed;

/// The remedy of a fixture that has one of that kind.
Remedy remedyOf(const Fixture& fixture, RemedyKind kind = RemedyKind::SeparateCircuit) {
    const auto found = remediesOf(fixture);
    const Remedy* remedy = remedyIn(found, kind);
    return remedy ? *remedy : throw std::runtime_error("no such remedy among " + told(found));
}
Circuit& addSpare(Fixture& fixture, Phases phases = Phases::L1) {
    fixture.installation.circuits.push_back({.id = SequentialIds(2'000'000).next(),
                                             .board = fixture.board().id,
                                             .way = "7",
                                             .name = "Spare",
                                             .use = CircuitUse::Spare,
                                             .phases = phases});
    return fixture.installation.circuits.back();
}
std::string stored(const Entry<Ratio>& entry) {
    return formatEntry(toText(entry, units::ratio));
}

TEST(OwnWay, HasOneMoreInTheBunch) {
    Fixture fixture = ovenAnd(watts(4000));
    EXPECT_EQ(stored(madeBy(remedyOf(fixture), fixture).wiring.groupedCircuits), "2 (assumed)");
    fixture.wiring().groupedCircuits = typed(Ratio(2));
    const Remedy remedy = remedyOf(fixture);
    EXPECT_EQ(stored(madeBy(remedy, fixture).wiring.groupedCircuits), "3 (assumed)");
    EXPECT_TRUE(notes(remedy, "remedy.note.alongside")) << "the others have one more beside them";
}

TEST(OwnWay, SaysWhatFailsOfTheCircuitInOneBunchWithIt) {
    Fixture fixture = ovenAnd(watts(4000)); // 2.5 mm2 carry 27 A alone
    EXPECT_TRUE(remedyOf(fixture).failingInBunch.empty());
    fixture.circuit().device.ratedCurrent = typed(amperes(25));
    const Remedy remedy = remedyOf(fixture);
    EXPECT_NE(std::ranges::find(remedy.failingInBunch, "device-wiring", &Finding::check),
              remedy.failingInBunch.end())
        << "and 21.6 A beside another";
}

TEST(OwnWay, ChoosesNoSizeOfArmourOrConduitAndPredictsNothingOfIt) {
    for (const auto kind : {ProtectiveConductor::Armour, ProtectiveConductor::Conduit}) {
        Fixture fixture = ovenAnd(watts(4000));
        fixture.wiring().protectiveConductor = kind; // 1.5 mm2 are recorded of it
        const Remedy remedy = remedyOf(fixture);
        EXPECT_EQ(remedy.change.label.key, "remedy.separate-conductors") << choiceKey(kind);
        const Circuit made = madeBy(remedy, fixture);
        EXPECT_EQ(made.wiring.protectiveConductor, kind);
        EXPECT_TRUE(made.wiring.protectiveSize.isMissing()) << choiceKey(kind);
        const Installation changed = test::foretoldBy(remedy, fixture);
        const CircuitReading* reading =
            findReading(changed.circuitReadings, fixture.visit().id, &CircuitReading::circuit, made.id);
        ASSERT_NE(reading, nullptr);
        EXPECT_TRUE(reading->continuity.isMissing() && reading->loopImpedance.isMissing());
    }
}

TEST(PredictedReading, TakesTheSupplysLoopOnlyWhereItsEarthServesTheBoard) {
    for (const auto earthing : {BoardEarthing::FromSupply, BoardEarthing::OwnElectrode}) {
        Fixture fixture;
        fixture.board().earthing = earthing;
        fixture.boardReading().loopImpedance = {};
        const CircuitReading reading =
            predictedReading(fixture.installation, fixture.visit().id, fixture.circuit(), test::tables());
        ASSERT_TRUE(reading.continuity.hasFigure());
        const bool isSupplys = earthing == BoardEarthing::FromSupply;
        ASSERT_EQ(reading.loopImpedance.hasFigure(), isSupplys) << choiceKey(earthing);
        if (isSupplys) {
            EXPECT_NEAR(reading.loopImpedance.value.base(), 0.14 + reading.continuity.value.base(), 1e-9);
        }
    }
}

TEST(OwnWay, TakesNoSpareOfWhichSomethingIsRecorded) {
    using Record = void (*)(Circuit&);
    const std::pair<const char*, Record> kept[]{
        {"notes", [](Circuit& way) { way.notes = "kept for the lift"; }},
        {"device",
         [](Circuit& way) {
             way.device = {"60898-B", typed(amperes(16))};
         }},
        {"wiring", [](Circuit& way) { way.wiring.lineSize = typed(squareMillimetres(4)); }}};
    for (const auto& [what, record] : kept) {
        Fixture fixture = ovenAnd(watts(4000));
        Circuit& spare = addSpare(fixture);
        EXPECT_EQ(madeBy(remedyOf(fixture), fixture).id, spare.id) << "nothing is recorded of it";
        EXPECT_FALSE(notes(remedyOf(fixture), "remedy.note.no-spare-way"));
        record(spare);
        EXPECT_NE(madeBy(remedyOf(fixture), fixture).id, spare.id) << what;
        EXPECT_TRUE(notes(remedyOf(fixture), "remedy.note.no-spare-way")) << what;
    }
}

TEST(OwnWay, IsOfOnePhaseForAPieceOfOnePhase) {
    Fixture fixture = ovenAnd(watts(4000));
    fixture.circuit().phases = Phases::Three;
    for (Equipment& equipment : fixture.installation.equipment)
        equipment.ratedVoltage = typed(volts(230));
    EXPECT_EQ(madeBy(remedyOf(fixture), fixture).phases, Phases::L1);
    const Id spare = addSpare(fixture, Phases::L3).id;
    const Circuit made = madeBy(remedyOf(fixture), fixture);
    EXPECT_EQ(made.id, spare);
    EXPECT_EQ(made.phases, Phases::L3);
}

TEST(OwnWay, CallsWhatHasNoNameByWhatItIs) {
    for (const auto& [kind, word] :
         {std::pair(EquipmentKind::Unknown, std::string_view("remedy.word.equipment")),
          std::pair(EquipmentKind::StoredHeater, std::string_view("choice.equipment-kind.stored-heater"))}) {
        Fixture fixture = ovenAnd(watts(4000));
        Equipment& kiln = fixture.installation.equipment.back();
        kiln.name.clear();
        kiln.kind = kind;
        const Remedy remedy = remedyOf(fixture);
        ASSERT_FALSE(remedy.change.label.arguments.empty());
        EXPECT_EQ(remedy.change.label.arguments.front(), Argument(Word{word})) << word;
    }
}

TEST(OwnWay, OfARingGoesHalfwayRound) {
    Fixture fixture = ovenAnd(watts(6900)); // 40 A together
    fixture.makeRing();
    ASSERT_EQ(fixture.find("load-device").verdict, Verdict::Fails);
    const Remedy remedy = remedyOf(fixture);
    const Circuit made = madeBy(remedy, fixture);
    EXPECT_EQ(made.topology, Topology::Radial);
    EXPECT_EQ(made.wiring.length.value, metres(27)) << "54 m once round";
    EXPECT_EQ(made.wiring.length.origin, Origin::Assumed);
    EXPECT_TRUE(notes(remedy, "remedy.note.along-ring"));
}

TEST(OwnWay, HasAResidualDeviceWhereItsUseAsksForOne) {
    for (const bool isTt : {false, true}) {
        Fixture fixture = ovenAnd(watts(4000));
        if (isTt) {
            fixture.makeTt();
            fixture.board().residual = {}; // nothing else on the way has one
        } else {
            fixture.circuit().use = CircuitUse::Sockets;
        }
        const Remedy remedy = remedyOf(fixture);
        const Circuit made = madeBy(remedy, fixture);
        EXPECT_EQ(made.device.family, "61009-B") << (isTt ? "TT" : "sockets");
        ASSERT_TRUE(made.residual.fitted);
        EXPECT_EQ(made.residual.residualCurrent.value, fixture.ruleSet.additionalProtection);
        for (const CheckShift& shift : remedy.made)
            EXPECT_NE(shift.after->verdict, Verdict::Fails)
                << shift.check << " of a circuit that is not there yet";
        EXPECT_TRUE(notes(remedy, "remedy.note.residual"));
    }
}

TEST(OwnWay, SaysTheTrueReasonWhyItHasToBePlanned) {
    Fixture open = ovenAnd(watts(4000));
    open.wiring().method = InstallationMethod::Unknown;
    EXPECT_EQ(remedyOf(open, RemedyKind::UnlaidCircuit).change.label.key, "remedy.unlaid-circuit-wiring");
    Fixture atLeast = ovenAnd(watts(4000));
    atLeast.installation.equipment.back().current = test::above(amperes(25)); // goes before its power
    EXPECT_EQ(remedyOf(atLeast, RemedyKind::UnlaidCircuit).change.label.key, "remedy.unlaid-circuit-load");
    Fixture plugged = ovenAnd(watts(4000));
    plugged.installation.equipment.back().plugFuse = typed(amperes(13));
    const auto found = remediesOf(plugged);
    EXPECT_EQ(remedyIn(found, RemedyKind::UnlaidCircuit), nullptr) << "17.4 A overload 13 A anywhere";
    EXPECT_EQ(remedyIn(found, RemedyKind::SeparateCircuit), nullptr) << told(found);
}

} // namespace
} // namespace loopwright
