// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/sums/asked.h"

#include <gtest/gtest.h>

namespace loopwright::sums {
namespace {

std::string_view reason(std::string_view sum, std::string_view text) {
    const auto answered = test::asked(sum, text);
    return answered ? "answered" : answered.error().what.key;
}

double number(std::string_view sum, std::string_view text, std::string_view result) {
    const auto answered = test::asked(sum, text);
    if (!answered) throw std::runtime_error(std::string(answered.error().what.key));
    return std::get<double>(answered->cases.front().value(result));
}

TEST(ReadInputs, AUnitMayBeTyped) {
    EXPECT_DOUBLE_EQ(number("current-from-power", "power_W=9.6kW voltage_V=230", "current_A"),
                     number("current-from-power", "power_W=9600 voltage_V=230V", "current_A"));
    EXPECT_EQ(reason("current-from-power", "power_W=9.6A voltage_V=230"), "entry.wrong-unit");
}

TEST(ReadInputs, AnExponentMayBeWritten) {
    EXPECT_DOUBLE_EQ(number("current-from-power", "power_W=9.6e3 voltage_V=2.3E2", "current_A"),
                     9600.0 / 230);
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=1e2,60"), "answered");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=1e999"), "sum.not-finite");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=1e-310"), "sum.not-finite");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=1e2A"), "entry.wrong-unit");
}

TEST(ReadInputs, ANumberThatIsGivenSeveralTimesIsAnsweredEachTime) {
    const auto answered = test::asked("permitted-loop", "operatingCurrent_A=60,100;160");
    ASSERT_TRUE(answered);
    EXPECT_TRUE(answered->several);
    ASSERT_EQ(answered->cases.size(), 3U);
    const auto permitted = [&](std::size_t i) {
        return std::get<double>(answered->cases[i].value("permittedLoop_ohm"));
    };
    EXPECT_NEAR(permitted(0), 230 * test::context().rules.voltageFactorMin / 60, 1e-12);
    EXPECT_NEAR(permitted(2), 230 * test::context().rules.voltageFactorMin / 160, 1e-12);
}

TEST(ReadInputs, SeveralFiguresHereAndThereBelongTogetherOneByOne) {
    const auto answered = test::asked("current-from-power", "power_W=1000,2000 voltage_V=230,400");
    ASSERT_TRUE(answered);
    EXPECT_NEAR(std::get<double>(answered->cases[1].value("current_A")), 5, 1e-12);
    EXPECT_EQ(reason("current-from-power", "power_W=1000,2000 voltage_V=230,400,415"), "sum.lists-differ");
}

TEST(ReadInputs, ListsDoNotMixFiguresWithAndWithoutUnits) {
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=60,100,160mA"), "sum.some-units");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=60A,100A"), "answered");
}

TEST(ReadInputs, WhereTheDecimalSignIsACommaOnlySemicolonsPartAList) {
    const Sum& sum = **sumNamed("permitted-loop");
    const std::vector<RawInput> raw{{"operatingCurrent_A", std::string("60,5; 100")}};
    const auto inputs = readInputs(sum, raw, test::context(), {.decimalPoint = ','});
    ASSERT_TRUE(inputs);
    ASSERT_EQ(inputs->front().figures.size(), 2U);
    EXPECT_DOUBLE_EQ(inputs->front().figures[0].value, 60.5);
}

TEST(ReadInputs, DefaultsComeFromTheRuleSetWithTheirSource) {
    const auto answered = test::asked("permitted-loop", "operatingCurrent_A=160");
    ASSERT_TRUE(answered);
    const std::vector<Term>& terms = answered->cases.front().workings().front().terms;
    ASSERT_EQ(terms.size(), 3U);
    EXPECT_EQ(terms[0].origin, TermOrigin::Typed);
    EXPECT_EQ(terms[1].symbol, "U_0");
    EXPECT_EQ(terms[1].value.value, 230);
    EXPECT_EQ(terms[1].origin, TermOrigin::Rule);
    EXPECT_FALSE(terms[1].source.title.empty());
}

TEST(ReadInputs, SaysWhatIsWrong) {
    EXPECT_EQ(reason("permited-loop", ""), "sum.unknown-sum-near");
    EXPECT_EQ(reason("horoscope", ""), "sum.unknown-sum");
    EXPECT_EQ(reason("permitted-loop", "operatingcurent_A=160"), "sum.unknown-input-near");
    EXPECT_EQ(reason("permitted-loop", "colour=red"), "sum.unknown-input");
    EXPECT_EQ(reason("permitted-loop", ""), "sum.missing");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=1 operatingCurrent_A=2"), "sum.given-twice");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=0"), "sum.zero");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=-5"), "sum.out-of-range");
    EXPECT_EQ(reason("permitted-loop", "operatingCurrent_A=>5"), "sum.not-a-number");
    EXPECT_EQ(reason("current-from-power", "power_W=1 voltage_V=1 threePhase=maybe"), "sum.not-yes-or-no");
    EXPECT_FALSE(readAssignment("length_m"));
    EXPECT_FALSE(readAssignment("=5"));
    EXPECT_EQ(test::asked("current-from-power", "voltage_V=230").error().input, "power_W");
}

TEST(ReadInputs, ARatingThatTheFamilyDoesNotMakeIsNoDevice) {
    EXPECT_EQ(reason("permitted-loop-of-device", "device=60898-B ratedCurrent_A=33 time_s=0.4"),
              "sum.device-not-made");
    EXPECT_EQ(reason("permitted-loop-of-device", "device=60898-B ratedCurrent_A=32 time_s=0.4"), "answered");
    EXPECT_EQ(reason("permitted-loop-of-device", "device=toaster ratedCurrent_A=32 time_s=0.4"),
              "sum.not-an-option");
}

// Preferred ratings of IEC 60898-1, 5.3.2 (from memory), of which 8 A and 13 A stand in no table of loops.
TEST(ReadInputs, EveryPreferredRatingOfABreakerIsMade) {
    for (const char* family : {"60898-B", "60898-C", "60898-D", "61009-B", "61009-C", "61009-D"})
        for (const int rated : {6, 8, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125}) {
            const std::string given =
                "device=" + std::string(family) + " ratedCurrent_A=" + std::to_string(rated) + " time_s=0.4";
            EXPECT_EQ(reason("permitted-loop-of-device", given), "answered") << given;
        }
}

TEST(ReadInputs, OfAnAdjustableBreakerNobodySaysThatItIsNotMade) {
    EXPECT_EQ(reason("permitted-loop-of-device", "device=60947-2 ratedCurrent_A=250 time_s=0.4"),
              "sum.device-without-data");
}

TEST(ReadInputs, AListHasAnEnd) {
    const Sum& sum = **sumNamed("permitted-loop");
    const std::vector<RawInput> raw{{"operatingCurrent_A", std::vector<RawFigure>(1001, 5.0)}};
    const auto inputs = readInputs(sum, raw, test::context());
    ASSERT_FALSE(inputs);
    EXPECT_EQ(inputs.error().what.key, "sum.list-too-long");
}

} // namespace
} // namespace loopwright::sums
