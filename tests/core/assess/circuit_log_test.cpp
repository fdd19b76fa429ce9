// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_log.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <algorithm>

/// What the demo's log of the kiln says about its fuse and its cable.
namespace loopwright {
namespace {

class CircuitLogTest : public testing::Test {
  protected:
    CircuitLogTest() {
        const CurrentLog& row = site.currentLogs.at(0);
        const CircuitReading& reading = *find(site.circuitReadings, row.reading);
        visit = reading.visit;
        circuit = reading.circuit;
        for (const Attachment& each : imported.attachments)
            if (each.digest == row.digest) bytes = each.bytes;
    }
    tl::expected<CircuitLog, Message> asked(std::string_view channel = {}) {
        const auto log = readKeptLog(bytes);
        EXPECT_TRUE(log);
        return circuitLog(site, visit, circuit, test::tables(), test::rules(), *log, channel);
    }

    SiteImport imported = test::importedDemo();
    Installation& site = imported.installation;
    Id visit, circuit;
    std::string bytes;
};

TEST_F(CircuitLogTest, TheKilnWorksAndOverloads) {
    const auto log = asked("line [A]");
    ASSERT_TRUE(log) << log.error().key;
    EXPECT_EQ(log->rated, amperes(30));
    EXPECT_GT(log->found.peak, amperes(41.5));
    EXPECT_LT(log->found.peak, amperes(42.5));
    EXPECT_GT(log->found.shareAbove, 0.4);
    EXPECT_FALSE(log->found.latest) << "no sound fuse is sure to operate";
    EXPECT_NEAR(log->found.gaps.base(), minutes(28).base(), 30);
    ASSERT_TRUE(log->found.conductor);
    EXPECT_GT(log->found.conductor->peak, log->conductor->limit) << "the cable cooks";
    EXPECT_EQ(log->picture.device, "check.word.fuse");
    EXPECT_TRUE(std::ranges::any_of(log->picture.columns, [](const auto& each) { return !each.isLogged; }));
}

TEST_F(CircuitLogTest, MarksNoMomentForTheEarliestWhereAnyWouldDo) {
    std::ranges::find(site.circuits, circuit, &Circuit::id)->device.family = "3036";
    const auto log = asked("line [A]");
    ASSERT_TRUE(log) << log.error().key;
    ASSERT_TRUE(log->mayOperateAtAnyTime()) << "no standard says how long a rewirable fuse holds out";
    EXPECT_TRUE(log->found.earliest) << "or there is nothing to leave out";
    EXPECT_FALSE(log->picture.earliestOperated);
}

TEST_F(CircuitLogTest, AnEmptyNameIsTheFirstChannel) {
    ASSERT_TRUE(asked());
    EXPECT_EQ(asked()->found.peak, asked("line [A]")->found.peak);
    EXPECT_LT(asked("neutral [A]")->found.peak, asked()->found.peak);
}

TEST_F(CircuitLogTest, RefusalsSayWhy) {
    EXPECT_EQ(asked("L2").error(), (Message{"log.no-such-channel", {std::string("L2")}}));
    EXPECT_EQ(readKeptLog(std::nullopt).error().key, "log.not-kept");
    EXPECT_EQ(readKeptLog("").error().key, "log.empty");
    std::ranges::find(site.circuits, circuit, &Circuit::id)->device.family.clear();
    EXPECT_EQ(asked().error().key, "log.no-device");
}

TEST_F(CircuitLogTest, LogsAreThoseOfTheCircuitInTheVisit) {
    EXPECT_EQ(logsOf(site, visit, circuit), (std::vector<const CurrentLog*>{&site.currentLogs[0]}));
    EXPECT_TRUE(logsOf(site, site.visits.front().id, circuit).empty()) << "of the visit before";
    EXPECT_TRUE(logsOf(site, visit, site.circuits.front().id).empty());
}

} // namespace
} // namespace loopwright
