// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/log_picture.h"

#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>

/// Pictures of logs keep of a million samples what a person would look for.
namespace loopwright::overload {
namespace {

LoggedQuestion question(std::string_view key, double rated) {
    const DeviceFamily& family = *test::tables().deviceFamily(key);
    return {*test::tables().thermalDevice(family, amperes(rated)), amperes(rated),
            test::tables().instantaneousBand(family, amperes(rated)),
            Conductor{celsius(30), celsius(70), amperes(27), seconds(53), seconds(340), {89'000, 98'000}}};
}

/// 10 A for 55 s of each minute, 30 A for the rest.
LoggedChannel pulses(std::size_t samples) {
    LoggedChannel channel{"I", {}, {}, seconds(1), {}, {}};
    for (std::size_t i = 0; i < samples; ++i) {
        channel.seconds.push_back(static_cast<double>(i));
        channel.amperes.push_back(i % 60 < 55 ? 10 : 30);
    }
    return channel;
}

LogPicture pictureOf(const LoggedQuestion& asked, const LoggedChannel& channel,
                     std::size_t columns = usualColumns) {
    return logPicture(asked, channel, answerLogged(asked, channel), columns);
}

TEST(LogPicture, PeaksSurviveThinning) {
    LoggedChannel channel = pulses(1'000'000);
    for (const std::size_t sample : {0U, 123'456U, 500'000U, 999'999U}) {
        channel.amperes[sample] = 77;
        const LogPicture picture = pictureOf(question("60898-D", 32), channel);
        EXPECT_EQ(picture.columns.size(), usualColumns);
        const auto highest = std::ranges::max_element(picture.columns, {}, &LogPicture::Column::most);
        EXPECT_EQ(highest->most, amperes(77)) << "sample " << sample;
        EXPECT_LE(highest->from.base(), static_cast<double>(sample) + 1e-6) << "sample " << sample;
        EXPECT_GE(highest->to.base(), static_cast<double>(sample) - 1e-6) << "sample " << sample;
        channel.amperes[sample] = 10;
    }
}

TEST(LogPicture, ColumnsStandSideBySideOverAllOfTheLog) {
    const LoggedChannel channel = pulses(5000);
    const LogPicture picture = pictureOf(question("60898-C", 32), channel, 321);
    ASSERT_EQ(picture.columns.size(), 321U);
    EXPECT_EQ(picture.columns.front().from, Time());
    EXPECT_NEAR(picture.columns.back().to.base(), 5000, 1e-6);
    for (std::size_t i = 1; i < picture.columns.size(); ++i)
        EXPECT_EQ(picture.columns[i].from, picture.columns[i - 1].to) << "column " << i;
    EXPECT_TRUE(std::ranges::all_of(picture.columns, &LogPicture::Column::isLogged));
}

TEST(LogPicture, ALogOfFewSamplesHoldsEachUntilTheNext) {
    const LoggedChannel channel{"I", {0, 60}, {5, 25}, seconds(60), {}, {}};
    const LogPicture picture = pictureOf(question("60898-C", 32), channel, 100);
    EXPECT_EQ(picture.columns[10].most, amperes(5));
    EXPECT_EQ(picture.columns[90].least, amperes(25));
    EXPECT_GT(picture.columns[90].conductor, picture.columns[60].conductor) << "it goes on warming";
}

TEST(LogPicture, GapsAreLeftOpen) {
    const auto log = readCurrentLog("0;5\n1;5\n2;5\n3;5\n103;9\n104;9\n105;9\n106;9\n");
    ASSERT_TRUE(log);
    const LogPicture picture = pictureOf(question("60898-C", 32), log->channels.front(), 107);
    EXPECT_TRUE(picture.columns[2].isLogged);
    EXPECT_FALSE(picture.columns[50].isLogged);
    EXPECT_TRUE(picture.columns[105].isLogged);
    EXPECT_EQ(picture.columns[105].least, amperes(9)) << "the 0 A that stands for a gap is no current";
}

TEST(LogPicture, ShowsTheAnswer) {
    for (const auto& [key, rated] : {std::pair("60898-C", 10.0), std::pair("60898-B", 16.0),
                                     std::pair("88-2", 10.0), std::pair("1361", 15.0)}) {
        const LoggedQuestion asked = question(key, rated);
        const LoggedChannel channel = pulses(20'000);
        const LoggedAnswer answer = answerLogged(asked, channel);
        const LogPicture picture = logPicture(asked, channel, answer);
        Temperature warmest;
        for (const LogPicture::Column& column : picture.columns)
            warmest = std::max(warmest, column.conductor);
        EXPECT_NEAR(warmest.base(), answer.conductor->peak.base(), 0.05) << key;
        EXPECT_EQ(picture.earliestOperated, answer.earliest) << key;
        for (const LogPicture::Column& column : picture.columns) {
            const bool isOver = answer.earliest && column.from > *answer.earliest;
            if (!asked.device.replicas.early.empty()) {
                EXPECT_EQ(column.earliest.has_value(), !isOver)
                    << key << " at " << column.from.base() << " s";
            }
            if (!answer.latest && column.latest) {
                EXPECT_LT(*column.latest, 1) << key;
            }
            if (!answer.earliest && column.earliest) {
                EXPECT_LT(*column.earliest, 1) << key;
            }
        }
    }
}

TEST(LogPicture, NothingLoggedIsNothingDrawn) {
    EXPECT_TRUE(pictureOf(question("60898-B", 16), {}).columns.empty());
}

TEST(LogPicture, AMillionSamplesAreDrawnInBoundedTime) {
    const LoggedQuestion asked = question("60898-C", 32);
    const LoggedChannel channel = pulses(1'000'000);
    const LoggedAnswer answer = answerLogged(asked, channel);
    const auto begin = std::chrono::steady_clock::now();
    const LogPicture picture = logPicture(asked, channel, answer);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    EXPECT_EQ(picture.columns.size(), usualColumns);
    EXPECT_LT(took.count(), 20) << "bounded, on however slow a machine";
    std::printf("a picture of a million samples: %.0f ms\n", took.count() * 1000);
}

} // namespace
} // namespace loopwright::overload
