// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/current_log.h"

#include "core/phrases/phrases.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::overload {
namespace {

LoggedCurrents logOf(std::string_view text) {
    auto log = readCurrentLog(text);
    if (!log) throw std::runtime_error(std::string(log.error().key));
    return std::move(*log);
}

struct Refused {
    std::string_view key;
    std::int64_t line = 0;
};
Refused refusalOf(std::string_view text) {
    const auto log = readCurrentLog(text);
    if (log) return {"read"};
    EXPECT_TRUE(phrase(log.error().key)) << log.error().key;
    const auto& arguments = log.error().arguments;
    const auto* line = arguments.empty() ? nullptr : std::get_if<std::int64_t>(&arguments.front());
    return {log.error().key, line ? *line : 0};
}

TEST(CurrentLog, ReadsWhatLoggersWrite) {
    // The same two samples, however they are written.
    for (const char* text : {
             "time_s;I_A\n0;1.5\n10;2.5\n",
             "time_s;I_A\r\n0;1,5\r\n10;2,5\r\n",
             "0,1.5\n10,2.5\n",
             "Time\tL1\n0\t1,5\n10\t2,5",
             "\xEF\xBB\xBFlogger 7\nserial 12\n\ntime;current "
             "[mA]\n2026-03-10T08:00:00;1500\n2026-03-10T08:00:10;2500\n",
             "date;time;A\n10.03.2026;23:59:55;1,5\n11.03.2026;00:00:05;2,5\n",
             "clock,A\n23:59:55,1.5\n00:00:05,2.5\n",
             "2026-03-10 08:00:00+01:00;1.5\n2026-03-10 07:00:10Z;2.5\n",
             "t [ms];I (kA)\n0;0.0015\n10000;0.0025\n",
             "\"time\",\"I\"\n\"0\",\"1.5\"\n\"10\",\"2.5\"\n",
         }) {
        const LoggedCurrents log = logOf(text);
        ASSERT_EQ(log.channels.size(), 1U) << text;
        const LoggedChannel& channel = log.channels.front();
        ASSERT_EQ(channel.amperes.size(), 2U) << text;
        EXPECT_NEAR(channel.amperes[0], 1.5, 1e-12) << text;
        EXPECT_NEAR(channel.amperes[1], 2.5, 1e-12) << text;
        EXPECT_DOUBLE_EQ(channel.seconds[0], 0) << text;
        EXPECT_NEAR(channel.seconds[1], 10, 1e-6) << text;
        EXPECT_EQ(channel.lastStep, seconds(10)) << text;
        EXPECT_EQ(channel.gaps, Time()) << text;
    }
}

TEST(CurrentLog, HonoursQuotesAndUnitsOfItsHeads) {
    // A minute apart, 45.4 A and 7 A.
    for (const char* text : {
             "\"Time (s)\",\"I (A)\"\n\"0\",\"45,4\"\n\"60\",\"7,0\"\n",
             "\"0\",\"45,4\"\n\"60\",\"7\"\n",
             "\"Time, elapsed\",\"Current, L1\"\n0,45.4\n60,7\n",
             "Time (minutes);Current\n0;45.4\n1;7\n",
             "Time / min;I / mA\n0;45400\n1;7000\n",
             "t_h;mA\n0;45400\n0.016666666666666666;7000\n",
             "Time [s];Voltage [V];Current [A]\n0;230;45.4\n60;229;7\n",
             "time;Voltage;P (kW);f [Hz];T [°C];load %;I\n0;230;9;50;21;80;45,4\n60;229;1;50;21;8;7\n",
             "time;state;Current [A]\n0;1;45.4\n60;1;7\n",
             "s;V;A\n0;230;45.4\n60;229;7\n",
         }) {
        const LoggedCurrents log = logOf(text);
        const LoggedChannel& channel = log.channels.front();
        ASSERT_EQ(channel.amperes.size(), 2U) << text;
        EXPECT_NEAR(channel.amperes[0], 45.4, 1e-9) << text;
        EXPECT_NEAR(channel.amperes[1], 7, 1e-9) << text;
        EXPECT_NEAR(channel.seconds[1], 60, 1e-9) << text;
    }
    EXPECT_EQ(logOf("t;I avg [A];I min\n0;2;1\n1;2;1\n").channels.size(), 2U) << "the least of a current";
}

TEST(CurrentLog, TheFirstMarkInANumberIsThatOfAll) {
    EXPECT_EQ(logOf("0;5\n1;5,3\n2;6\n").channels[0].amperes, (std::vector<double>{5, 5.3, 6}));
    EXPECT_EQ(logOf("0;5\n1;5.3\n").channels[0].amperes, (std::vector<double>{5, 5.3}));
    EXPECT_EQ(refusalOf("0;5\n1;5,3\n2;5.3\n").key, "log.bad-number") << "either is a mistake";
}

TEST(CurrentLog, RefusesWhereNoColumnCanBeACurrent) {
    EXPECT_EQ(refusalOf("Time;Voltage [V]\n0;230\n1;229\n").key, "log.no-current-column");
    EXPECT_EQ(refusalOf("No;Time [s];I [A]\n1;0;5\n2;10;5\n").key, "log.time-not-first");
    EXPECT_EQ(refusalOf("t,I\n0,45,4\n1,45,6\n").key, "log.commas") << "45 A and 4 A, or 45.4 A";
}

TEST(CurrentLog, TakesEveryChannelAndItsName) {
    const LoggedCurrents log = logOf("time;L1;state;L2\n0;1;ok;4\n1;2;ok;5\n2;3;ok;6\n");
    ASSERT_EQ(log.channels.size(), 2U) << "a column of words is no channel";
    EXPECT_EQ(log.channels[0].name, "L1");
    EXPECT_EQ(log.channels[1].name, "L2");
    EXPECT_EQ(log.channels[1].amperes, (std::vector<double>{4, 5, 6}));
    EXPECT_EQ(logOf("0;1;2\n1;1;2\n").channels[1].name, "2");
    const LoggedCurrents units = logOf("s;A;A\n0;1;2\n1;1;2\n");
    EXPECT_EQ(units.channels[0].name, "A");
    EXPECT_EQ(units.channels[1].name, "A (2)") << "two of a name could not be chosen between";
    EXPECT_EQ(channelOf(units, "A (2)"), &units.channels[1]);
    EXPECT_EQ(channelOf(units, ""), &units.channels[0]);
    EXPECT_EQ(channelOf(units, "B"), nullptr);
}

TEST(CurrentLog, GapsAreNoCurrentAndAreCounted) {
    const LoggedCurrents log = logOf("0;5;1\n1;5;1\n2;;1\n3;5;1\n4;5;1\n104;5;1\n105;5;1\n");
    const LoggedChannel& first = log.channels[0];
    EXPECT_EQ(first.gaps, seconds(1 + 99)) << "an empty cell, and a step a hundred times the usual one";
    EXPECT_EQ(first.amperes, (std::vector<double>{5, 5, 0, 5, 5, 0, 5, 5}));
    EXPECT_EQ(first.seconds[5], 5);
    EXPECT_EQ(first.gapsApart, (std::vector<LoggedChannel::Gap>{{2, 3}, {5, 104}}));
    EXPECT_EQ(logOf("0;5;1\n1;;1\n2;;1\n3;5;1\n").channels[0].gapsApart,
              (std::vector<LoggedChannel::Gap>{{1, 3}}))
        << "one gap, however many cells are empty";
    EXPECT_EQ(log.channels[1].gaps, seconds(99));
}

TEST(CurrentLog, RefusesWithTheLine) {
    EXPECT_EQ(refusalOf("").key, "log.empty");
    EXPECT_EQ(refusalOf("  ").key, "log.empty");
    EXPECT_EQ(refusalOf(std::string(100, '\0')).key, "log.not-text");
    EXPECT_EQ(refusalOf("Dear all,\nplease find attached\n").key, "log.no-rows");
    EXPECT_EQ(refusalOf("time;A\n0;1\n").key, "log.too-short");
    const Refused backwards = refusalOf("t;A\n0;1\n5;1\n3;1\n");
    EXPECT_EQ(backwards.key, "log.time-backwards");
    EXPECT_EQ(backwards.line, 4);
    EXPECT_EQ(refusalOf("0;1\n0;1\n").key, "log.time-backwards") << "twice the same moment";
    EXPECT_EQ(refusalOf("0;1\n1;text\n").key, "log.bad-number");
    EXPECT_EQ(refusalOf("0;1\n1;text\n").line, 2);
    EXPECT_EQ(refusalOf("0;1\nnoon;2\n").key, "log.bad-time");
    for (const char* value : {"-1", "nan", "inf", "1e30"})
        EXPECT_EQ(refusalOf(std::string("0;1\n1;") + value + "\n").key, "log.no-current") << value;
    EXPECT_EQ(readCurrentLog({std::string_view("").data(), largestLog + 1}).error().key, "log.too-large");
}

RC_GTEST_PROP(CurrentLog, WhateverIsInTheFileIsReadOrRefused, ()) {
    const auto text = *rc::gen::container<std::string>(
        rc::gen::elementOf(std::string("0123456789;,.:-T\n\t eE+naif\xEF\xBB\xBF")));
    const auto log = readCurrentLog(text);
    if (!log) {
        RC_ASSERT(phrase(log.error().key).has_value());
        return;
    }
    for (const LoggedChannel& channel : log->channels) {
        RC_ASSERT(channel.seconds.size() == channel.amperes.size());
        for (std::size_t i = 0; i < channel.seconds.size(); ++i) {
            RC_ASSERT(std::isfinite(channel.amperes[i]) && channel.amperes[i] >= 0);
            if (i > 0) RC_ASSERT(channel.seconds[i] > channel.seconds[i - 1]);
        }
    }
}

} // namespace
} // namespace loopwright::overload
