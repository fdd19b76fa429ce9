// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/change.h"

#include <gtest/gtest.h>

namespace loopwright {
namespace {

Installation workshop() {
    SequentialIds ids;
    Installation installation;
    installation.site = {ids.next(), "Net loft", {}, {}, {}, {}, {}};
    Board main{.id = ids.next(), .site = installation.site.id, .name = "Main"};
    Circuit feeder{.id = ids.next(), .board = main.id, .way = "3", .name = "Feeder to B"};
    Board nested{.id = ids.next(), .site = installation.site.id, .name = "Board B", .fedFrom = feeder.id};
    Circuit lights{.id = ids.next(), .board = nested.id, .way = "1", .name = "Lights"};
    Equipment lamp{.id = ids.next(), .circuit = lights.id, .name = "Lamp"};
    Visit visit{.id = ids.next(), .site = installation.site.id, .label = "2026, periodic"};
    CircuitReading reading{.id = ids.next(), .visit = visit.id, .circuit = lights.id};
    Observation observation{.id = ids.next(), .visit = visit.id, .board = main.id, .circuit = feeder.id};
    installation.boards = {main, nested};
    installation.circuits = {feeder, lights};
    installation.equipment = {lamp};
    installation.visits = {visit};
    installation.circuitReadings = {reading};
    installation.observations = {observation};
    return installation;
}

TEST(Apply, SetsAFieldByItsKey) {
    Installation installation = workshop();
    const Id reading = installation.circuitReadings[0].id;
    ASSERT_TRUE(apply(installation,
                      {{}, {setField(RecordKind::CircuitReading, reading, "loopImpedance_ohm", "0.54")}}));
    EXPECT_EQ(installation.circuitReadings[0].loopImpedance, Entry<Resistance>::of(ohms(0.54), 2));
    EXPECT_EQ(fieldText(installation, RecordKind::CircuitReading, reading, "loopImpedance_ohm"), "0.54");
}

TEST(Apply, RefusesAWrongValueAndLeavesEverythingAsItWas) {
    const Installation before = workshop();
    Installation installation = before;
    const Id circuit = installation.circuits[1].id;
    const auto done =
        apply(installation, {{},
                             {setField(RecordKind::Circuit, circuit, "name", "Renamed"),
                              setField(RecordKind::Circuit, circuit, "wiring.lineSize_mm2", "-2.5")}});
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().key, "entry.negative");
    EXPECT_EQ(installation, before);
}

TEST(Apply, InsertThenRemoveIsNothing) {
    const Installation before = workshop();
    Installation installation = before;
    SequentialIds ids(100);
    Circuit circuit{.id = ids.next(), .board = installation.boards[0].id, .way = "9", .name = "Kiln"};
    circuit.device = {"1361", Entry<Current>::of(amperes(30), 0), {}};
    circuit.generalSockets = false;
    ASSERT_TRUE(apply(installation, {{}, {insertRecord(circuit)}}));
    ASSERT_EQ(installation.circuits.size(), 3u);
    EXPECT_EQ(installation.circuits[2], circuit);
    ASSERT_TRUE(apply(installation, {{}, {removeRecord(RecordKind::Circuit, circuit.id)}}));
    EXPECT_EQ(installation, before);
}

TEST(Apply, RemovingABoardTakesItsCircuitsAndTheirReadingsAlong) {
    Installation installation = workshop();
    ASSERT_TRUE(apply(installation, {{}, {removeRecord(RecordKind::Board, installation.boards[1].id)}}));
    EXPECT_EQ(installation.boards.size(), 1u);
    EXPECT_EQ(installation.circuits.size(), 1u);
    EXPECT_TRUE(installation.equipment.empty());
    EXPECT_TRUE(installation.circuitReadings.empty());
    EXPECT_EQ(installation.observations.size(), 1u);
}

TEST(Apply, RemovingAFeederLeavesTheBoardAndTheObservationThatMentionIt) {
    Installation installation = workshop();
    ASSERT_TRUE(apply(installation, {{}, {removeRecord(RecordKind::Circuit, installation.circuits[0].id)}}));
    ASSERT_EQ(installation.boards.size(), 2u);
    EXPECT_TRUE(installation.boards[1].fedFrom.isNone());
    ASSERT_EQ(installation.observations.size(), 1u);
    EXPECT_TRUE(installation.observations[0].circuit.isNone());
    EXPECT_EQ(installation.observations[0].board, installation.boards[0].id);
}

TEST(ParseField, RefusesWhatCannotBeAValueOfItsKind) {
    const auto refused = [](RecordKind kind, std::string_view key, std::string_view typed) -> std::string {
        const FieldInfo* info = fieldInfo(kind, key);
        if (!info) return "no such field";
        const auto parsed = parseField(*info, typed, {});
        return parsed ? "accepted as " + *parsed : std::string(parsed.error().key);
    };
    EXPECT_EQ(refused(RecordKind::Circuit, "wiring.lineSize_mm2", "0"), "entry.zero");
    EXPECT_EQ(refused(RecordKind::Circuit, "wiring.lineSize_mm2", "-1"), "entry.negative");
    EXPECT_EQ(refused(RecordKind::Circuit, "points", "2.5"), "entry.not-whole");
    EXPECT_EQ(refused(RecordKind::Circuit, "use", "toaster"), "field.unknown-option");
    EXPECT_EQ(refused(RecordKind::Visit, "started", "2026-02-30"), "field.not-a-date");
    EXPECT_EQ(refused(RecordKind::Board, "fedFrom", "Main / 3"), "field.not-an-id");
    EXPECT_EQ(refused(RecordKind::Circuit, "name", "bell\a"), "field.control-characters");
    EXPECT_EQ(refused(RecordKind::Circuit, "wiring.ambient_degC", "-5"), "accepted as -5");
    EXPECT_EQ(refused(RecordKind::CircuitReading, "loopImpedance_ohm", "0"), "accepted as 0");
}

} // namespace
} // namespace loopwright
