// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/demo/demo_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

/// What the demo site has to offer, counted in the file itself.
namespace loopwright {
namespace {

using nlohmann::json;

template <class Visitor>
void forEachCircuit(const json& site, Visitor&& visit) {
    for (const json& board : site["boards"])
        for (const json& circuit : board["circuits"])
            visit(board, circuit);
}

std::size_t countCircuits(const json& site, const std::string& key, const std::string& value) {
    std::size_t count = 0;
    forEachCircuit(site, [&](const json&, const json& circuit) { count += circuit.value(key, "") == value; });
    return count;
}

std::string boardOf(const std::string& circuitPath) {
    return circuitPath.substr(0, circuitPath.find(" / "));
}

/// How many boards stand between this one and the supply.
int depthOf(const std::map<std::string, std::string>& fedFrom, const std::string& board) {
    const std::string& feeder = fedFrom.at(board);
    return feeder.empty() ? 0 : 1 + depthOf(fedFrom, boardOf(feeder));
}

TEST(DemoContent, BoardsNestAndOneStandsOnItsOwnElectrode) {
    const json site = test::demoDocument();
    std::map<std::string, std::string> fedFrom;
    for (const json& board : site["boards"])
        fedFrom[board["name"]] = board.value("fedFrom", "");
    EXPECT_GE(fedFrom.size(), 4U);

    const auto nestedAtLeast = [&](int depth) {
        return std::ranges::count_if(fedFrom,
                                     [&](const auto& row) { return depthOf(fedFrom, row.first) >= depth; });
    };
    EXPECT_GE(nestedAtLeast(2), 2) << "boards fed from a board that is itself fed from a board";
    EXPECT_GE(nestedAtLeast(3), 1) << "a board fed from a nested board";

    const auto hasElectrode = [](const json& board) {
        return board.value("earthing", "") == "own-electrode";
    };
    EXPECT_EQ(std::ranges::count_if(site["boards"], hasElectrode), 1);
    EXPECT_EQ(site["supplies"][0]["earthing"], "tn-c-s");
}

TEST(DemoContent, CircuitsAreManyAndOfEveryKind) {
    const json site = test::demoDocument();
    std::size_t circuits = 0, threePhase = 0, loaded = 0;
    forEachCircuit(site, [&](const json&, const json& circuit) {
        const bool spare = circuit["use"] == "spare";
        circuits += !spare;
        threePhase += circuit.value("phases", "") == "three";
        loaded += !spare && (circuit.contains("load_A") || circuit.contains("equipment"));
    });
    EXPECT_GE(circuits, 45U);
    EXPECT_EQ(loaded, circuits) << "every circuit says what it carries";
    EXPECT_GE(threePhase, 10U);
    EXPECT_LT(threePhase, circuits / 2);
    for (const char* use : {"lighting", "sockets", "fixed", "distribution", "spare"})
        EXPECT_GE(countCircuits(site, "use", use), 3U) << use;
    EXPECT_GE(countCircuits(site, "topology", "ring"), 3U);
}

TEST(DemoContent, OldAndNewDevicesStandSideBySide) {
    const json site = test::demoDocument();
    std::set<std::string> families;
    bool plugFused = false;
    forEachCircuit(site, [&](const json&, const json& circuit) {
        if (circuit.contains("device")) families.insert(circuit["device"]["family"]);
        if (circuit.contains("equipment"))
            for (const json& equipment : circuit["equipment"])
                plugFused = plugFused || equipment.contains("plugFuse_A");
    });
    EXPECT_THAT(families, testing::IsSupersetOf({"60898-B", "60898-C", "60898-D", "61009-B", "61009-C",
                                                 "88-2", "88-3", "1361", "3036", "3871-1"}));
    EXPECT_TRUE(plugFused) << "a BS 1362 fuse in a plug or fused outlet";
}

TEST(DemoContent, EquipmentRunsInTurnsAndSomeOfItIsMotors) {
    const json site = test::demoDocument();
    std::size_t inTurns = 0, motors = 0;
    forEachCircuit(site, [&](const json&, const json& circuit) {
        if (!circuit.contains("equipment")) return;
        for (const json& equipment : circuit["equipment"]) {
            inTurns += equipment.contains("onTime_min") && equipment.contains("offTime_min");
            motors += equipment.contains("efficiency") && equipment.contains("powerFactor");
        }
    });
    EXPECT_GE(inTurns, 15U);
    EXPECT_GE(motors, 10U);
}

TEST(DemoContent, TwoVisitsAreFiveYearsApart) {
    const json site = test::demoDocument();
    ASSERT_EQ(site["visits"].size(), 2U);
    const json &first = site["visits"][0], &second = site["visits"][1];
    const auto yearOf = [](const json& visit) { return std::stoi(visit["started"].get<std::string>()); };
    EXPECT_EQ(yearOf(second) - yearOf(first), 5);
    EXPECT_EQ(first["state"], "issued");
    EXPECT_EQ(second["state"], "open");
    for (const json& visit : site["visits"]) {
        EXPECT_FALSE(visit["instruments"].empty()) << visit["label"];
        EXPECT_FALSE(visit["inspection"].empty()) << visit["label"];
        EXPECT_EQ(visit["boardReadings"].size(), site["boards"].size()) << visit["label"];
    }
}

TEST(DemoContent, ObservationsCarryEveryGradeAndSayWhatToDo) {
    const json visit = test::demoDocument()["visits"][1];
    std::set<std::string> grades;
    for (const json& observation : visit["observations"]) {
        grades.insert(observation["grade"]);
        for (const char* key : {"text", "action", "byWhen", "whoActs"})
            EXPECT_FALSE(observation.value(key, "").empty()) << observation.dump();
    }
    EXPECT_EQ(grades, (std::set<std::string>{"make-safe", "put-right", "look-further", "worth-improving"}));
}

TEST(DemoContent, EachPhotoIsThereIsSmallAndIsUsed) {
    constexpr std::uintmax_t largest = 60'000; ///< bytes; a report with all of them stays easy to send
    const json site = test::demoDocument();
    std::set<std::string> used, present;
    for (const json& visit : site["visits"])
        for (const json& observation : visit["observations"])
            if (observation.contains("photos"))
                for (const json& photo : observation["photos"]) {
                    used.insert(photo["file"]);
                    EXPECT_FALSE(photo.value("caption", "").empty()) << photo.dump();
                }
    for (const auto& entry : std::filesystem::directory_iterator(test::demoFolder / "photos")) {
        present.insert("photos/" + entry.path().filename().string());
        EXPECT_LT(entry.file_size(), largest) << entry.path();
    }
    EXPECT_EQ(used, present);
    EXPECT_GE(present.size(), 8U);
}

TEST(DemoContent, EachLogIsThereIsSmallAndIsUsed) {
    constexpr std::uintmax_t largest = 60'000; ///< bytes
    const json site = test::demoDocument();
    std::set<std::string> used, present;
    for (const json& visit : site["visits"])
        for (const json& reading : visit["circuitReadings"])
            if (reading.contains("currentLogs"))
                for (const json& log : reading["currentLogs"]) {
                    used.insert(log["file"]);
                    EXPECT_FALSE(log.value("name", "").empty()) << log.dump();
                }
    for (const auto& entry : std::filesystem::directory_iterator(test::demoFolder / "logs")) {
        present.insert("logs/" + entry.path().filename().string());
        EXPECT_LT(entry.file_size(), largest) << entry.path();
    }
    EXPECT_EQ(used, present);
    EXPECT_GE(present.size(), 1U);
}

TEST(DemoContent, PlantedFaultsAreOfManyKindsAndThreeOverloadsWork) {
    const json faults = test::plantedFaults()["faults"];
    std::set<std::string> kinds;
    for (const json& fault : faults)
        kinds.insert(fault["kind"]);
    EXPECT_GE(faults.size(), 8U);
    EXPECT_GE(kinds.size(), 8U);
    EXPECT_GE(std::ranges::count_if(faults, [](const json& fault) { return fault.value("works", false); }),
              3);
}

} // namespace
} // namespace loopwright
