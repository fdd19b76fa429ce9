// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/logged_current.h"

#include "core/physics/thermal_replica.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <cmath>

namespace loopwright::overload {
namespace {

const DeviceFamily& family(std::string_view key) {
    return *test::tables().deviceFamily(key);
}
Conductor conductor() {
    return {celsius(30), celsius(70), amperes(27), seconds(53), seconds(340), {89'000, 98'000}};
}

/// A log that follows a cycle of steps, sampled every `step` seconds.
LoggedChannel following(const Steps& cycle, double step, std::size_t samples) {
    LoggedChannel channel{"I", {}, {}, seconds(step), {}};
    const double length = physics::lengthOf(cycle).base();
    for (std::size_t i = 0; i < samples; ++i) {
        const double time = static_cast<double>(i) * step;
        double within = std::fmod(time, length);
        auto piece = cycle.begin();
        while (within >= piece->duration.base() && piece + 1 != cycle.end())
            within -= (piece++)->duration.base();
        channel.seconds.push_back(time);
        channel.amperes.push_back(piece->current.base());
    }
    return channel;
}

LoggedQuestion question(std::string_view key, double rated) {
    return {*test::tables().thermalDevice(family(key), amperes(rated)), amperes(rated),
            test::tables().instantaneousBand(family(key), amperes(rated)), conductor()};
}

/// The edges by going through every sample as one long duty.
struct Reference {
    double earliest = std::numeric_limits<double>::infinity(), latest = 0;
};

/// The mean square of the current over the first `time` seconds.
double meanSquare(const LoggedChannel& channel, double time) {
    double sum = 0;
    for (std::size_t i = 0; i < channel.amperes.size(); ++i) {
        const double next = i + 1 < channel.seconds.size() ? channel.seconds[i + 1]
                                                           : channel.seconds[i] + channel.lastStep.base();
        const double left = std::max(std::min(next, time) - channel.seconds[i], 0.0);
        sum += channel.amperes[i] * channel.amperes[i] * left;
    }
    return sum / std::min(time, channel.seconds.back() + channel.lastStep.base());
}
/// What begins cold, or as the log's first time constant or its mean would leave it.
enum class Begins { Cold, Warm };
physics::ReplicaState startOf(Begins begins, const physics::ThermalReplica& replica,
                              const LoggedChannel& channel) {
    if (begins == Begins::Cold) return {};
    const double all = meanSquare(channel, std::numeric_limits<double>::infinity());
    physics::ReplicaState state{};
    for (std::size_t b = 0; b < 2; ++b)
        state[b] = std::max(all, meanSquare(channel, replica.branches[b].constant.base())) /
                   (replica.reference.base() * replica.reference.base());
    return state;
}

Reference referenceOf(const LoggedQuestion& asked, const LoggedChannel& channel,
                      Begins begins = Begins::Cold) {
    Steps duty;
    for (std::size_t i = 0; i < channel.amperes.size(); ++i) {
        const double next = i + 1 < channel.seconds.size() ? channel.seconds[i + 1]
                                                           : channel.seconds[i] + channel.lastStep.base();
        duty.push_back({amperes(channel.amperes[i]), seconds(next - channel.seconds[i])});
    }
    const auto crossing = [&](const physics::ThermalReplica& replica) {
        const auto start = startOf(begins, replica, channel);
        if (thermalState(replica, start) >= 1) return 0.0;
        const auto reached = physics::firstCrossing(replica, duty, start, 1);
        return reached ? reached->inAll.base() : std::numeric_limits<double>::infinity();
    };
    Reference reference;
    for (const physics::ThermalReplica& replica : asked.device.replicas.early)
        reference.earliest = std::min(reference.earliest, crossing(replica));
    for (const physics::ThermalReplica& replica : asked.device.replicas.late)
        reference.latest = std::max(reference.latest, crossing(replica));
    return reference;
}

void expectSame(const std::optional<Time>& found, double reference, const std::string& told) {
    if (!std::isfinite(reference)) {
        EXPECT_FALSE(found) << told << ": found at " << (found ? found->base() : 0) << " s";
        return;
    }
    ASSERT_TRUE(found) << told << ": not found; expected at " << reference << " s";
    EXPECT_NEAR(found->base(), reference, 1e-6 * reference + 1e-6) << told;
}

TEST(LoggedCurrent, SkippingBlocksComesToWhatGoingThroughEverySampleDoes) {
    for (const auto& [key, rated] :
         {std::pair("60898-C", 50.0), std::pair("60898-B", 16.0), std::pair("88-2", 32.0),
          std::pair("1362", 13.0), std::pair("3036", 15.0)})
        for (const double load : {1.05, 1.3, 1.46, 1.7, 2.2, 2.9})
            for (const auto& [on, off] : {std::pair(240.0, 960.0), std::pair(3000.0, 600.0)}) {
                LoggedQuestion asked = question(key, rated);
                asked.instantaneous.reset();
                const Steps cycle{{amperes(0.4 * rated), seconds(off)}, {amperes(load * rated), seconds(on)}};
                const LoggedChannel channel = following(cycle, 7, 3000);
                const LoggedAnswer answer = answerLogged(asked, channel);
                const Reference reference = referenceOf(asked, channel);
                const std::string told = std::string(key) + " at " + std::to_string(load) + " I_n for " +
                                         std::to_string(on) + " s";
                expectSame(answer.earliest, reference.earliest, told + ", earliest");
                expectSame(answer.latest, reference.latest, told + ", latest");
                const Reference warm = referenceOf(asked, channel, Begins::Warm);
                expectSame(answer.warm.earliest, warm.earliest, told + ", earliest from warm");
                expectSame(answer.warm.latest, warm.latest, told + ", latest from warm");
            }
}

TEST(LoggedCurrent, WarmthIsToTheEarliestAsALargerCurrent) {
    LoggedQuestion asked = question("60898-C", 50);
    asked.instantaneous.reset();
    const auto logOf = [](double load) {
        return following({{amperes(load), minutes(50)}, {amperes(5), minutes(10)}}, 7, 3000);
    };
    const LoggedAnswer usual = answerLogged(asked, logOf(65)), more = answerLogged(asked, logOf(65 / 0.8));
    asked.inWarmth = 0.8;
    const LoggedAnswer warm = answerLogged(asked, logOf(65));
    ASSERT_TRUE(usual.earliest && warm.earliest && more.earliest);
    EXPECT_LT(*warm.earliest, *usual.earliest);
    EXPECT_NEAR(*warm.earliest / *more.earliest, 1, 1e-6) << "within the first run, whose current is larger";
    EXPECT_EQ(warm.latest, usual.latest);
    asked.inWarmth.reset();
    EXPECT_FALSE(answerLogged(asked, logOf(65)).earliest) << "not known";
    EXPECT_EQ(answerLogged(asked, logOf(65)).latest, usual.latest);
}

TEST(LoggedCurrent, APeakShorterThanTheStandardsTimeIsSureOfNothing) {
    // 5 I_n for 0.1 s operates a breaker of type B (IEC 60898-1, table 7, e).
    const LoggedQuestion asked = question("60898-B", 32);
    LoggedChannel channel{"I", {0, 1, 1.05, 2, 2.06, 2.12, 3}, {1, 200, 1, 200, 200, 1, 1}, seconds(1), {}};
    LoggedAnswer answer = answerLogged(asked, channel);
    ASSERT_TRUE(answer.earliest && answer.latest);
    EXPECT_NEAR(answer.earliest->base(), 1, 1e-9);
    EXPECT_NEAR(answer.latest->base(), 2.1, 1e-9) << "two samples together, and not the one before";
    channel.amperes[4] = 1;
    EXPECT_FALSE(answerLogged(asked, channel).latest);
}

RC_GTEST_PROP(LoggedCurrent, IrregularStepsComeToTheSame, ()) {
    LoggedQuestion asked = question("60898-C", 20);
    asked.instantaneous.reset();
    LoggedChannel channel{"I", {}, {}, seconds(3), {}};
    double time = 0;
    for (int i = *rc::gen::inRange(2, 900); i > 0; --i) {
        channel.seconds.push_back(time);
        channel.amperes.push_back(*rc::gen::inRange(0, 500) / 10.0);
        time += *rc::gen::inRange(1, 200) / 10.0;
    }
    const LoggedAnswer answer = answerLogged(asked, channel);
    const Reference reference = referenceOf(asked, channel);
    RC_ASSERT(answer.earliest.has_value() == std::isfinite(reference.earliest));
    RC_ASSERT(answer.latest.has_value() == std::isfinite(reference.latest));
    if (answer.earliest) RC_ASSERT(std::abs(answer.earliest->base() - reference.earliest) < 1e-5);
    if (answer.latest) RC_ASSERT(std::abs(answer.latest->base() - reference.latest) < 1e-5);
    const auto noLater = [](const std::optional<Time>& warm, const std::optional<Time>& cold) {
        return !cold || (warm && *warm <= *cold);
    };
    RC_ASSERT(noLater(answer.warm.earliest, answer.earliest));
    RC_ASSERT(noLater(answer.warm.latest, answer.latest));
    RC_ASSERT(answer.warm.peak.has_value());
    RC_ASSERT(*answer.warm.peak >= answer.conductor->peak);
}

RC_GTEST_PROP(LoggedCurrent, EvenAndOddStretchesWarmTheConductorAlike, ()) {
    const LoggedQuestion asked = question("60898-C", 20);
    LoggedChannel channel{"I", {}, {}, seconds(2), {}};
    double time = 0, square = 0, above = 0, state = 0, peak = 0;
    for (int stretch = *rc::gen::inRange(1, 5); stretch > 0; --stretch) {
        const bool isEven = *rc::gen::arbitrary<bool>();
        for (int i = *rc::gen::inRange(1, 600); i > 0; --i) {
            const double step = isEven ? 2 : 1 + i % 7 * 0.5, current = 15 + i * 31 % 20;
            channel.seconds.push_back(time);
            channel.amperes.push_back(current);
            channel.lastStep = seconds(step);
            time += step;
            square += current * current * step;
            above += current > 20 ? step : 0;
            const double ends = current * current / (27.0 * 27.0);
            state = ends + (state - ends) * std::exp(-step / 53);
            peak = std::max(peak, state);
        }
    }
    const LoggedAnswer answer = answerLogged(asked, channel);
    RC_ASSERT(answer.conductor.has_value());
    RC_ASSERT(std::abs(answer.conductor->peak.base() - (celsius(30).base() + 40 * peak)) < 1e-6);
    RC_ASSERT(std::abs(answer.rms.base() - std::sqrt(square / time)) < 1e-6);
    RC_ASSERT(std::abs(answer.shareAbove - above / time) < 1e-9);
}

TEST(LoggedCurrent, AboveTheirLimitConductorsWarmAsUnderTheSameDuty) {
    const Steps cycle{{amperes(45), minutes(6)}, {amperes(0), minutes(6)}};
    for (const double step : {1.0, 20.0}) {
        LoggedQuestion asked = question("60898-C", 32);
        asked.conductor->coefficient = 0.00393;
        const LoggedAnswer answer = answerLogged(asked, following(cycle, step, 20000));
        const ConductorHeat settled = heatUnder(*asked.conductor, cycle),
                            plain = heatUnder(conductor(), cycle);
        ASSERT_TRUE(answer.conductor);
        EXPECT_GT(settled.peak.base(), plain.peak.base() + 10) << "the resistance rises";
        EXPECT_NEAR(answer.conductor->peak.base(), settled.peak.base(), 1) << step;
        EXPECT_NEAR(answer.conductor->mostAgeing / settled.mostAgeing, 1, 0.2) << step;
    }
}

TEST(LoggedCurrent, ConductorsWarmAsUnderTheSameDuty) {
    const Steps cycle{{amperes(40), minutes(2)}, {amperes(0), minutes(6)}};
    const LoggedAnswer answer = answerLogged(question("60898-C", 32), following(cycle, 1, 20000));
    const ConductorHeat settled = heatUnder(conductor(), cycle);
    ASSERT_TRUE(answer.conductor);
    EXPECT_NEAR(answer.conductor->peak.base(), settled.peak.base(), 0.01);
    EXPECT_NEAR(answer.conductor->leastPeak.base(), settled.leastPeak.base(), 0.05);
    EXPECT_NEAR(answer.conductor->mostAgeing / settled.mostAgeing, 1, 0.1);
    EXPECT_NEAR(answer.shareAbove, 0.25, 0.01);
    EXPECT_NEAR(answer.rms.base(), 20, 0.1);
    EXPECT_EQ(answer.peak, amperes(40));
    EXPECT_EQ(answer.length, seconds(20000));
}

TEST(LoggedCurrent, TheInstantaneousReleaseHasItsSay) {
    LoggedChannel channel = following({{amperes(5), hours(1)}}, 1, 2000);
    channel.amperes[700] = 60;
    EXPECT_EQ(answerLogged(question("60898-B", 16), channel).earliest, seconds(700)) << "above 3 I_n it may";
    EXPECT_FALSE(answerLogged(question("60898-B", 16), channel).latest);
    channel.amperes[700] = 80;
    EXPECT_EQ(answerLogged(question("60898-B", 16), channel).latest, seconds(700) + seconds(0.1))
        << "from 5 I_n on it must, within 0.1 s";
}

TEST(LoggedCurrent, ASteadyLoadMayHaveWarmedEverythingBeforeItWasLogged) {
    // One minute of what the wiring carries: from cold it gets part of the way, from before all of it.
    const LoggedChannel channel = following({{amperes(27), hours(1)}}, 1, 60);
    const LoggedAnswer answer = answerLogged(question("60898-C", 32), channel);
    ASSERT_TRUE(answer.conductor && answer.warm.peak);
    EXPECT_LT(answer.conductor->peak.base(), 62) << "a minute is little more than one time constant of 53 s";
    EXPECT_NEAR(answer.warm.peak->base(), 70, 1e-6);
    EXPECT_FALSE(answer.warm.earliest) << "below its rating no sound device operates";
}

TEST(LoggedCurrent, ALogWithinAnOverloadMayHaveBegunWithTheDeviceAboutToOperate) {
    // 1.45 I_n operates every sound breaker within an hour (IEC 60898-1, table 7), and none at once.
    const LoggedAnswer answer =
        answerLogged(question("60898-B", 16), following({{amperes(1.5 * 16), hours(2)}}, 0.25, 2));
    EXPECT_FALSE(answer.earliest) << "in half a second, from cold";
    EXPECT_EQ(answer.warm.earliest, Time());
    EXPECT_FALSE(answer.latest);
    EXPECT_EQ(answer.warm.latest, Time());
}

TEST(LoggedCurrent, WhatIsFoundLongAfterTheBeginningIsTheSameFromWarm) {
    // A day of next to nothing, and then an overload.
    LoggedChannel channel = following({{amperes(1), hours(48)}}, 20, 4320);
    const double began = channel.seconds.back() + 20;
    for (int i = 0; i < 60; ++i) {
        channel.seconds.push_back(began + 20.0 * i);
        channel.amperes.push_back(40);
    }
    const LoggedAnswer answer = answerLogged(question("60898-C", 16), channel);
    ASSERT_TRUE(answer.earliest && answer.warm.earliest);
    EXPECT_GT(answer.earliest->base(), began);
    EXPECT_NEAR(answer.warm.earliest->base(), answer.earliest->base(), 1);
    EXPECT_NEAR(answer.warm.peak->base(), answer.conductor->peak.base(), 1e-3);
}

TEST(LoggedCurrent, AnEmptyChannelSaysNothing) {
    const LoggedAnswer answer = answerLogged(question("60898-B", 16), {});
    EXPECT_FALSE(answer.earliest);
    EXPECT_EQ(answer.length, Time());
}

TEST(LoggedCurrent, AMillionOddSamplesEndInBoundedTime) {
    // The worst that a file can do: every step another length, every block near the edge.
    LoggedChannel channel{"I", {}, {}, seconds(1), {}};
    double time = 0;
    for (int i = 0; i < 1'000'000; ++i) {
        channel.seconds.push_back(time);
        channel.amperes.push_back(i % 997 == 0 ? 30 : 22.5);
        time += 1 + (i % 101) * 1e-3;
    }
    const auto begin = std::chrono::steady_clock::now();
    const LoggedAnswer answer = answerLogged(question("60898-B", 16), channel);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    EXPECT_TRUE(answer.earliest);
    EXPECT_LT(took.count(), 20) << "bounded, on however slow a machine";
    std::printf("a million odd samples near the edge: %.0f ms\n", took.count() * 1000);
}

} // namespace
} // namespace loopwright::overload
