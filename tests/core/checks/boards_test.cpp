// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/checks/random_site.h"

#include <algorithm>

/// What boards and the intake are asked for, and how evenly.
namespace loopwright {
namespace {

using test::Fixture;
using test::typed;

double demandOf(const Fixture& fixture) {
    return fixture.onBoard("board-demand").result.value().value;
}

TEST(BoardDemand, AddsTheCircuitsOfEachLine) {
    Fixture fixture; // 13 A on L1
    EXPECT_NEAR(demandOf(fixture), 13, 1e-9);
    fixture.addCircuit(Phases::L2, amperes(30));
    EXPECT_NEAR(demandOf(fixture), 30, 1e-9) << "the most loaded line counts";
    fixture.addCircuit(Phases::Three, amperes(20));
    EXPECT_NEAR(demandOf(fixture), 50, 1e-9) << "a three-phase circuit counts in each";
    fixture.addCircuit(Phases::L2, amperes(40)).takenOut = true;
    fixture.addCircuit(Phases::L2, amperes(40)).use = CircuitUse::Spare;
    EXPECT_NEAR(demandOf(fixture), 50, 1e-9);
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Holds);
    fixture.addCircuit(Phases::L2, amperes(46));
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Close) << "96 A of 100 A";
    fixture.addCircuit(Phases::L2, amperes(6));
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Fails);
}

// Shares of the largest, second and further loads: The Electrician's Guide, table 6.2.
TEST(BoardDemand, TakesThePublishedAllowanceOfThePremises) {
    Fixture fixture;
    fixture.circuit().use = CircuitUse::Sockets;
    fixture.circuit().load = typed(amperes(10));
    fixture.addCircuit(Phases::L1, amperes(20));
    fixture.addCircuit(Phases::L1, amperes(16));
    const auto with = [&](Occupancy occupancy) {
        fixture.installation.site.occupancy = occupancy;
        return demandOf(fixture);
    };
    EXPECT_NEAR(with(Occupancy::Unknown), 46, 1e-9) << "nobody says what the premises are: in full";
    EXPECT_NEAR(with(Occupancy::Dwelling), 20 + 0.4 * 26, 1e-9);
    EXPECT_NEAR(with(Occupancy::SmallBusiness), 20 + 0.75 * 26, 1e-9);
    EXPECT_NEAR(with(Occupancy::Lodging), 20 + 0.75 * 16 + 0.4 * 10, 1e-9);
    for (Circuit& circuit : fixture.installation.circuits)
        circuit.topology = Topology::Ring;
    EXPECT_NEAR(with(Occupancy::SmallBusiness), 20 + 0.5 * 26, 1e-9) << "standard circuits";
    for (Circuit& circuit : fixture.installation.circuits)
        circuit.use = CircuitUse::Lighting;
    EXPECT_NEAR(with(Occupancy::Dwelling), 0.66 * 46, 1e-9);
}

TEST(BoardDemand, WhatWasMeasuredCountsInFull) {
    Fixture fixture;
    fixture.installation.site.occupancy = Occupancy::Dwelling;
    fixture.circuit().use = CircuitUse::Lighting;
    fixture.circuit().load = typed(amperes(15));
    EXPECT_NEAR(demandOf(fixture), 0.66 * 15, 1e-9);
    fixture.reading().measuredLoad = test::read(amperes(15), 0);
    EXPECT_NEAR(demandOf(fixture), 15, 1e-9) << "the clamp saw what runs together already";
    fixture.addCircuit(Phases::L1, amperes(10));
    EXPECT_NEAR(demandOf(fixture), 15 + 0.66 * 10, 1e-9);
}

TEST(BoardDemand, TakesTheAllowanceOfAFixedCircuitByItsEquipment) {
    Fixture fixture;
    fixture.installation.site.occupancy = Occupancy::Dwelling;
    fixture.circuit().load = {};
    fixture.addEquipment("cooker", kilowatts(6.9)).kind = EquipmentKind::Cooker; // 30 A
    EXPECT_NEAR(demandOf(fixture), 10 + 0.3 * 20, 1e-9);
    fixture.addEquipment("hob", kilowatts(2.3)).kind = EquipmentKind::InductionHob;
    EXPECT_NEAR(demandOf(fixture), 10 + 0.3 * 30, 1e-9) << "both are cooking appliances";
    fixture.installation.equipment.back().kind = EquipmentKind::EvCharging;
    EXPECT_NEAR(demandOf(fixture), 40, 1e-9) << "unlike ones count in full";
    fixture.installation.equipment.clear();
    fixture.addEquipment("roof", kilowatts(4.6)).kind = EquipmentKind::PvInverter;
    EXPECT_NEAR(demandOf(fixture), 0, 1e-9) << "it feeds, and does not draw";
}

// Thermal storage heating counts in full in all premises (The Electrician's Guide, table 6.2).
TEST(BoardDemand, StorageHeatingCountsInFull) {
    Fixture fixture;
    fixture.installation.site.occupancy = Occupancy::Dwelling;
    fixture.circuit().load = {};
    fixture.addEquipment("heater", kilowatts(6.9)).kind = EquipmentKind::SpaceHeating; // 30 A
    EXPECT_NEAR(demandOf(fixture), 10 + 0.5 * 20, 1e-9);
    fixture.installation.equipment.back().kind = EquipmentKind::StorageHeating;
    const Finding finding = fixture.onBoard("board-demand");
    EXPECT_NEAR(finding.result->value, 30, 1e-9) << testing::PrintToString(finding);
    EXPECT_TRUE(std::ranges::any_of(finding.working->terms, [](const Term& term) {
        return term.symbol == "f_1" && term.value.value == 1;
    })) << "by its own row, not for want of one";
}

TEST(BoardDemand, TheInspectorsOwnFigureGoesBefore) {
    Fixture fixture;
    fixture.circuit().demand = typed(amperes(4));
    EXPECT_NEAR(demandOf(fixture), 4, 1e-9);
    Circuit& feeder = fixture.nest();
    feeder.demand = typed(amperes(25));
    const Id main = fixture.installation.boards.back().id;
    EXPECT_NEAR(demandOf(fixture), 25, 1e-9) << "of the whole board, by the circuit that feeds it";
    EXPECT_NEAR(fixture.find("board-demand", main).result->value, 25, 1e-9);
}

TEST(BoardDemand, ZeroIsNoDemandWhereSomethingIsConnected) {
    Fixture fixture;
    fixture.supply().demand = typed(amperes(0));
    EXPECT_NEAR(fixture.onSupply("supply-demand").result->value, 13, 1e-9);
    fixture.circuit().demand = typed(amperes(0));
    EXPECT_NEAR(demandOf(fixture), 13, 1e-9);
    fixture.circuit().load = typed(amperes(0));
    EXPECT_NEAR(demandOf(fixture), 0, 1e-9) << "nothing is connected";
    fixture.addEquipment("heater", kilowatts(2.3));
    const Finding finding = fixture.onBoard("board-demand");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
    EXPECT_EQ(test::missingFields(finding), "load_A");
}

TEST(BoardDemand, IsHeldAgainstDeviceAndWiringOfTheFeeder) {
    Fixture fixture;
    fixture.nest(); // 63 A fuse, 16 mm2 by method C
    fixture.addCircuit(Phases::L1, amperes(48));
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Close) << "61 A of 63 A";
    fixture.addCircuit(Phases::L1, amperes(4));
    Finding finding = fixture.onBoard("board-demand");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_EQ(std::get<Word>(finding.sentence.arguments.at(3)).key, "check.word.feeder-device");
    fixture.installation.circuits[1].wiring.lineSize = typed(squareMillimetres(10));
    fixture.installation.circuits[1].device.ratedCurrent = typed(amperes(100));
    finding = fixture.onBoard("board-demand");
    EXPECT_EQ(std::get<Word>(finding.sentence.arguments.at(3)).key, "check.word.feeder-wiring")
        << testing::PrintToString(finding);
}

TEST(BoardDemand, IsHeldAgainstWhatTheFeedersDeviceCarriesInTheWarmth) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    feeder.device = {"60898-C", typed(amperes(40)), typed(kiloamperes(6))};
    fixture.circuit().load = typed(amperes(36));
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Holds) << "36 A of 40 A";
    fixture.installation.boards.back().ambient = typed(celsius(60));
    const Finding finding = fixture.onBoard("board-demand");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    EXPECT_NEAR(finding.limit->value, 40 * 0.8125, 1e-9) << "8 A at 60 degC";
}

TEST(BoardDemand, IsHeldAgainstTheSettingOfAnAdjustableFeeder) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    feeder.device = {"60947-2", typed(amperes(63)), typed(kiloamperes(36))};
    feeder.wiring.lineSize = typed(squareMillimetres(50));
    fixture.circuit().load = typed(amperes(45));
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Holds) << "45 A of 63 A";
    fixture.installation.circuits.back().device.thermalSetting = typed(amperes(40));
    const Finding finding = fixture.onBoard("board-demand");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    EXPECT_DOUBLE_EQ(finding.limit->value, 40);
}

TEST(BoardDemand, GoesThroughNestedBoardsLineByLine) {
    Fixture fixture;
    fixture.addCircuit(Phases::L2, amperes(9));
    fixture.nest();
    const Id main = fixture.installation.boards.back().id;
    EXPECT_NEAR(fixture.find("board-demand", main).result->value, 13, 1e-9);
    EXPECT_NEAR(fixture.onSupply("supply-demand").result->value, 13, 1e-9);
    fixture.installation.circuits.back().phases = Phases::L3;
    EXPECT_NEAR(fixture.onSupply("supply-demand").result->value, 22, 1e-9)
        << "all of it flows in the one line of the feeder";
    EXPECT_EQ(std::get<Word>(fixture.onSupply("supply-demand").sentence.arguments.at(1)).key,
              "choice.phases.L3");
}

TEST(BoardDemand, CannotBeToldWhereALoadIsNotKnownUnlessTheRestIsTooMuch) {
    Fixture fixture;
    for (int i = 0; i < 3; ++i)
        fixture.addCircuit(Phases::L2, amperes(1)).load = {};
    const Finding unknown = fixture.onBoard("board-demand");
    EXPECT_EQ(unknown.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(unknown), "load_A load_A load_A");
    EXPECT_EQ(unknown.sentence.key, "check.lacks.times");
    EXPECT_EQ(fixture.onSupply("supply-demand").verdict, Verdict::CannotTell);
    fixture.circuit().load = typed(amperes(120));
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::Fails);
    EXPECT_EQ(fixture.onSupply("supply-demand").verdict, Verdict::Fails);
    fixture.circuit().load = test::above(amperes(50));
    for (auto& circuit : fixture.installation.circuits)
        if (circuit.id != fixture.circuit().id) circuit.load = test::notApplicable<Current>();
    EXPECT_EQ(test::missingFields(fixture.onBoard("board-demand")), "load_A") << "50 A or more";
}

TEST(BoardDemand, ABoardInACircleEnds) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    fixture.installation.boards.back().fedFrom = feeder.id;
    EXPECT_NO_THROW(fixture.onBoard("board-demand"));
    EXPECT_EQ(fixture.onSupply("supply-demand").verdict, Verdict::DoesNotApply) << "nothing hangs on it";
}

TEST(BoardDemand, WithoutCircuitsDoesNotApply) {
    Fixture fixture;
    fixture.circuit().use = CircuitUse::Spare;
    EXPECT_EQ(fixture.onBoard("board-demand").verdict, Verdict::DoesNotApply);
    EXPECT_EQ(fixture.onSupply("supply-demand").verdict, Verdict::DoesNotApply);
    EXPECT_EQ(fixture.onBoard("phase-balance").verdict, Verdict::DoesNotApply);
}

// Three conductors of 25 mm2 clipped to a wall carry 96 A or less (IEC 60364-5-52, table B.52.4, and BS 7671,
// table 4D2A, from memory), so that tails of 10 mm2 cannot carry 90 A, whatever the fuse.
TEST(SupplyDemand, IsHeldAgainstFuseAndTails) {
    Fixture fixture;
    const Finding finding = fixture.onSupply("supply-demand");
    EXPECT_EQ(finding.verdict, Verdict::Holds);
    EXPECT_TRUE(finding.working->restsOnAssumption) << "nobody says how the tails run";
    fixture.supply().demand = typed(amperes(90));
    fixture.supply().tails = typed(squareMillimetres(10));
    const Finding thin = fixture.onSupply("supply-demand");
    EXPECT_EQ(thin.verdict, Verdict::CannotTell) << "they may run better than assumed";
    EXPECT_EQ(test::missingFields(thin), "tails_mm2");
    fixture.supply().tails = typed(squareMillimetres(50));
    EXPECT_EQ(fixture.onSupply("supply-demand").verdict, Verdict::Holds) << "90 A of 100 A";
    fixture.supply().demand = typed(amperes(101));
    EXPECT_EQ(fixture.onSupply("supply-demand").verdict, Verdict::Fails);
    fixture.supply().demand = {};
    fixture.supply().fuse = {};
    EXPECT_EQ(test::missingFields(fixture.onSupply("supply-demand")), "fuse.ratedCurrent_A");
}

TEST(PhaseBalance, TellsTheNeutralsCurrentAndIsNeverWorseThanClose) {
    Fixture fixture; // 13 A on L1 alone: 200 % above the mean, but few amperes
    EXPECT_EQ(fixture.onBoard("phase-balance").verdict, Verdict::Holds);
    fixture.circuit().load = typed(amperes(40));
    const Finding uneven = fixture.onBoard("phase-balance");
    EXPECT_EQ(uneven.verdict, Verdict::Close);
    EXPECT_NEAR(uneven.result->value, 200, 1e-9);
    EXPECT_NEAR(std::get<Measure>(uneven.sentence.arguments.at(3)).value, 40, 1e-9) << "all of it returns";
    fixture.addCircuit(Phases::L2, amperes(40));
    fixture.addCircuit(Phases::L3, amperes(40));
    const Finding even = fixture.onBoard("phase-balance");
    EXPECT_EQ(even.verdict, Verdict::Holds);
    EXPECT_NEAR(std::get<Measure>(even.sentence.arguments.at(3)).value, 0, 1e-9);
    fixture.installation.circuits.back().load = {};
    EXPECT_EQ(test::missingFields(fixture.onBoard("phase-balance")), "load_A");
    fixture.board().phases = Phases::L1;
    EXPECT_EQ(fixture.onBoard("phase-balance").verdict, Verdict::DoesNotApply);
}

TEST(PhaseBalance, ShowsWhatTheFeedersNeutralMayCarry) {
    Fixture fixture;
    const auto neutralTerms = [&] {
        std::vector<Term> terms = fixture.onBoard("phase-balance").working->terms;
        std::erase_if(terms, [](const Term& term) { return term.symbol != "I_z,N"; });
        return terms;
    };
    EXPECT_TRUE(neutralTerms().empty()) << "no circuit feeds it";
    fixture.nest();
    const auto shown = neutralTerms();
    ASSERT_EQ(shown.size(), 1U);
    EXPECT_EQ(shown.front().origin, TermOrigin::Assumed);
    EXPECT_GT(shown.front().value.value, 63) << "16 mm2 by method C";
}

TEST(PhaseBalance, CannotBeToldFromABound) {
    Fixture fixture;
    fixture.circuit().load = test::above(amperes(2));
    const Finding finding = fixture.onBoard("phase-balance");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
    EXPECT_EQ(test::missingFields(finding), "load_A");
}

RC_GTEST_PROP(BoardDemand, MoreLoadIsNeverBetter, ()) {
    Fixture fixture;
    fixture.installation.site.occupancy = static_cast<Occupancy>(*rc::gen::inRange(0, 4));
    const int circuits = *rc::gen::inRange(1, 6);
    for (int i = 0; i < circuits; ++i) {
        Circuit& more = fixture.addCircuit(static_cast<Phases>(*rc::gen::inRange(0, 4)),
                                           amperes(*rc::gen::inRange(0, 60)));
        more.use = test::anyOf({CircuitUse::Fixed, CircuitUse::Sockets, CircuitUse::Lighting});
        if (test::chance(5)) more.load = {};
    }
    if (test::chance(2)) fixture.nest();
    const Id main = fixture.installation.boards.back().id;
    const Finding board = fixture.find("board-demand", main), supply = fixture.onSupply("supply-demand");
    auto& grown = fixture.installation.circuits[*rc::gen::inRange<std::size_t>(0, circuits)];
    if (!grown.load.hasFigure()) return;
    grown.load.value += amperes(*rc::gen::inRange(0, 80));
    RC_ASSERT(fixture.find("board-demand", main).verdict <= board.verdict);
    RC_ASSERT(fixture.onSupply("supply-demand").verdict <= supply.verdict);
}

} // namespace
} // namespace loopwright
