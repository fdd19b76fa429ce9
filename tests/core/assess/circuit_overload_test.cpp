// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_overload.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

/// Pictures of a load over time show what the answer says: they are drawn from the same limits by another
/// way.
namespace loopwright {
namespace {

using physics::TimeCurrent;

struct Shown {
    std::string path;
    CircuitOverload overload;
};

/// Of every circuit of the demo site that has one.
std::vector<Shown> shownInTheDemo() {
    const Installation site = test::importedDemo().installation;
    const Visit& visit = site.visits.back();
    std::vector<Shown> all;
    for (const Circuit& circuit : site.circuits)
        if (auto overload =
                circuitOverload(site, visit.id, circuit.id, test::tables(), test::rules(visit.ruleSet)))
            all.push_back({pathOf(site, circuit), std::move(*overload)});
    return all;
}

/// The time of an edge at a current, on logarithmic scales; infinite below its first point.
double secondsAt(const std::vector<TimeCurrent>& edge, Current current) {
    const auto next = std::ranges::upper_bound(edge, current, {}, &TimeCurrent::current);
    if (next == edge.begin()) return std::numeric_limits<double>::infinity();
    if (next == edge.end()) return edge.back().time.base();
    const TimeCurrent& before = *std::prev(next);
    const double share = std::log(current / before.current) / std::log(next->current / before.current);
    return before.time.base() * std::pow(next->time / before.time, share);
}

TEST(CircuitOverload, TheEarliestIsNeverLaterThanTheLatest) {
    const auto shown = shownInTheDemo();
    ASSERT_GT(shown.size(), 20U) << "circuits of the demo site with a known load and device";
    for (const Shown& each : shown) {
        const auto& band = each.overload.band;
        for (const TimeCurrent& late : band.latest)
            EXPECT_LE(secondsAt(band.earliest, late.current), late.time.base() * 1.001)
                << each.path << " at " << late.current.base() << " A";
    }
}

TEST(CircuitOverload, TimesFallAsCurrentsRise) {
    for (const Shown& each : shownInTheDemo())
        for (const auto* edge : {&each.overload.band.earliest, &each.overload.band.latest})
            for (std::size_t i = 1; i < edge->size(); ++i) {
                ASSERT_LE((*edge)[i - 1].current, (*edge)[i].current) << each.path;
                EXPECT_LE((*edge)[i].time.base(), (*edge)[i - 1].time.base() * (1 + 1e-9))
                    << each.path << " at " << (*edge)[i].current.base() << " A";
            }
}

TEST(CircuitOverload, ASteadyLoadStandsInTheBandWhereTheAnswerSaysSo) {
    int steady = 0;
    for (const Shown& each : shownInTheDemo()) {
        const auto& found = each.overload.found;
        if (!found.load.load.isSteady) continue;
        ++steady;
        const double earliest = secondsAt(each.overload.band.earliest, found.load.load.peak);
        if (found.answer.earliest.operates() && found.answer.earliest.after > seconds(1)) {
            EXPECT_NEAR(earliest / found.answer.earliest.after.base(), 1, 0.15) << each.path;
        } else if (!found.answer.earliest.operates()) {
            EXPECT_GT(earliest, hours(5).base()) << each.path;
        }
    }
    EXPECT_GT(steady, 5);
}

TEST(CircuitOverload, TheConductorGetsAsWarmAsTheAnswerSays) {
    int warm = 0;
    for (const Shown& each : shownInTheDemo()) {
        const auto& conductor = each.overload.found.answer.conductor;
        if (!conductor) continue;
        ++warm;
        Temperature peak;
        for (const auto& moment : each.overload.heat.moments)
            peak = std::max(peak, moment.conductor);
        EXPECT_LE(peak.base(), conductor->peak.base() + 0.01)
            << each.path << ": a few cycles against for ever";
        EXPECT_GE(peak.base(), conductor->leastPeak.base() - 2) << each.path;
        EXPECT_EQ(each.overload.heat.limit, each.overload.found.conductor->limit) << each.path;
    }
    EXPECT_GT(warm, 10);
}

TEST(CircuitOverload, TheDeviceOperatesInThePictureWhenTheAnswerSaysSo) {
    for (const Shown& each : shownInTheDemo()) {
        const auto& heat = each.overload.heat;
        const overload::Edge& earliest = each.overload.found.answer.earliest;
        const Time span = heat.moments.back().time, grain = span / 400;
        if (each.overload.found.answer.holdsOut && earliest.operates() && earliest.after > grain &&
            earliest.after < span - grain) {
            const auto operated = std::ranges::find_if(
                heat.moments, [](const auto& moment) { return !moment.earliest.has_value(); });
            ASSERT_NE(operated, heat.moments.end()) << each.path;
            EXPECT_NEAR(operated->time.base(), earliest.after.base(), grain.base() * 2) << each.path;
        }
        if (!earliest.operates() && each.overload.found.answer.holdsOut) {
            EXPECT_TRUE(heat.moments.back().earliest.has_value()) << each.path;
        }
    }
}

TEST(CircuitOverload, WhatIsNotKnownHasNoPicture) {
    Installation site = test::importedDemo().installation;
    const Id visit = site.visits.back().id;
    Circuit& circuit = site.circuits.front();
    circuit.device.family.clear();
    EXPECT_FALSE(circuitOverload(site, visit, circuit.id, test::tables(), test::rules()));
    EXPECT_FALSE(circuitOverload(site, visit, Id{}, test::tables(), test::rules()));
    EXPECT_FALSE(circuitOverload(site, Id{}, circuit.id, test::tables(), test::rules()));
}

TEST(CircuitOverload, AnAdjustableBreakersBandIsThatOfItsSettings) {
    test::Fixture fixture;
    Device& device = fixture.circuit().device;
    device.family = "60947-2";
    device.ratedCurrent = test::typed(amperes(100));
    device.thermalSetting = test::typed(amperes(63));
    device.instantaneousSetting = test::typed(amperes(315));
    const Installation& site = fixture.installation;
    const auto shown = circuitOverload(site, site.visits.front().id, site.circuits.front().id, test::tables(),
                                       fixture.ruleSet);
    ASSERT_TRUE(shown);
    EXPECT_FALSE(shown->band.earliest.empty());
    ASSERT_FALSE(shown->band.latest.empty());
    EXPECT_FALSE(shown->band.published.empty());
    EXPECT_NEAR(secondsAt(shown->band.latest, amperes(400)), 0.2, 1e-6) << "above 1.2 I_i";
    EXPECT_GT(secondsAt(shown->band.earliest, amperes(65)), 3600) << "1.05 I_r is carried for two hours";
}

} // namespace
} // namespace loopwright
