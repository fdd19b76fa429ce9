// SPDX-License-Identifier: GPL-3.0-or-later
//
// Demand, selectivity, settings and street mains as sums answer them.
#include "core/phrases/phrases.h"
#include "tests/core/sums/asked.h"

#include <gmock/gmock.h>

#include <cmath>

namespace loopwright::sums {
namespace {

/// What the first case answers for one result.
ResultValue answered(std::string_view sum, std::string_view inputs, std::string_view result) {
    const auto answers = test::asked(sum, inputs);
    if (!answers) {
        ADD_FAILURE() << sum << " " << inputs << ": " << answers.error().what.key;
        return {};
    }
    return answers->cases.front().value(result);
}
double number(std::string_view sum, std::string_view inputs, std::string_view result) {
    const ResultValue value = answered(sum, inputs, result);
    if (const auto* figure = std::get_if<double>(&value)) return *figure;
    ADD_FAILURE() << sum << " " << inputs << " gives no " << result;
    return 0;
}
std::string_view word(std::string_view sum, std::string_view inputs, std::string_view result) {
    const ResultValue value = answered(sum, inputs, result);
    if (const auto* text = std::get_if<std::string_view>(&value)) return *text;
    ADD_FAILURE() << sum << " " << inputs << " gives no " << result;
    return {};
}
std::string_view refusal(std::string_view sum, std::string_view inputs) {
    const auto answers = test::asked(sum, inputs);
    EXPECT_FALSE(answers) << sum << " " << inputs;
    return answers ? std::string_view() : answers.error().what.key;
}

TEST(EveryOptionOfASum, HasWordsWherePeopleReadThem) {
    for (const Sum& sum : allSums())
        for (const Input& input : sum.inputs) {
            if (input.kind != InputKind::Choice || input.optionWords.empty()) continue;
            for (const std::string& option : input.options(test::context()))
                EXPECT_TRUE(phrase(std::string(input.optionWords) + option)) << sum.key << " " << option;
        }
}

// A maker's data sheet (named in mcb_ambient_derating.csv and mcb_grouping_factors.csv): 15.1 A at 40 °C of
// 16 A calibrated at 30 °C, and 0.9 for two or three side by side.
TEST(BreakerDeratingSum, TakesTheSharesOfPlaceAndNeighbours) {
    const std::string_view warm =
        "ratedCurrent_A=16 calibrationTemperature_degC=30 ambientTemperature_degC=40 "
        "adjacentBreakers=3";
    EXPECT_DOUBLE_EQ(number("breaker-derating", warm, "breakerAmbientFactor"), 15.1 / 16);
    EXPECT_DOUBLE_EQ(number("breaker-derating", warm, "breakerGroupingFactor"), 0.9);
    EXPECT_NEAR(number("breaker-derating", warm, "deratedCurrent_A"), 15.1 * 0.9, 1e-9);
    EXPECT_NEAR(number("breaker-derating",
                       "ratedCurrent_A=16 calibrationTemperature_degC=30 ambientTemperature_degC=30",
                       "deratedCurrent_A"),
                16, 1e-9)
        << "where it was calibrated, alone";
    EXPECT_EQ(refusal("breaker-derating",
                      "ratedCurrent_A=17 calibrationTemperature_degC=30 ambientTemperature_degC=40"),
              "sum.not-published");
}

// B 32 operates at 160 A: 1.44 Ω at U_0, 1.37 Ω with c_min = 0.95 (BS 7671:2018, table 41.3), 1.29 Ω with
// 0.9.
TEST(PermittedLoopOfDeviceSum, TakesAVoltageFactorOfOnesOwn) {
    const auto loop = [](std::string_view factor) {
        return number("permitted-loop-of-device",
                      "device=60898-B ratedCurrent_A=32 time_s=0.4" + std::string(factor),
                      "permittedLoop_ohm");
    };
    EXPECT_NEAR(loop(""), 230.0 / 160, 1e-9) << "the default rule set takes U0 without a factor";
    EXPECT_NEAR(loop(" voltageFactor=0.95"), 1.366, 5e-4);
    EXPECT_NEAR(loop(" voltageFactor=0.9"), 1.294, 5e-4);
}

TEST(DemandSum, RefusesWhatNoTableKnows) {
    EXPECT_EQ(refusal("demand-with-allowance", "premises=household load=motors-other-than-lifts loads_A=10"),
              "sum.not-published");
    EXPECT_EQ(refusal("simultaneity-factor", "simultaneityKind=flats count=1"), "sum.not-published");
    EXPECT_EQ(refusal("demand-of-feeders", "connectedLoads_kVA=10,20 demandFactors=0.9"), "sum.lists-unlike");
    EXPECT_EQ(refusal("neutral-current", "lineCurrents_A=10,20"), "sum.three-lines");
}

TEST(DemandSum, ASocketCountsOnlyWhereTheAllowanceHasOne) {
    const std::string_view shop = "premises=shop-or-office load=cooking-appliances loads_A=30,20";
    EXPECT_DOUBLE_EQ(number("demand-with-allowance", shop, "demand_A"), 46);
    EXPECT_DOUBLE_EQ(number("demand-with-allowance", std::string(shop) + " cookerSocket=yes", "demand_A"),
                     46);
}

TEST(NeutralSum, IsEmptyWhereTheLinesAreAlike) {
    EXPECT_NEAR(number("neutral-current", "lineCurrents_A=16,16,16", "neutralCurrent_A"), 0, 1e-9);
    EXPECT_NEAR(number("neutral-current", "lineCurrents_A=16,0,0", "neutralCurrent_A"), 16, 1e-9);
    EXPECT_NEAR(number("neutral-current", "lineCurrents_A=16,0,0", "imbalance_percent"), 200, 1e-9);
}

TEST(CurrentForTimeSum, IsTheConverseOfTheTime) {
    const std::string_view device = "device=60898-C ratedCurrent_A=32";
    EXPECT_NEAR(number("current-for-time", std::string(device) + " time_s=0.1", "operatesCurrent_A"), 320,
                1e-9);
    EXPECT_NEAR(number("current-for-time", std::string(device) + " time_s=3600", "operatesCurrent_A"), 46.4,
                1e-9);
    EXPECT_NEAR(number("current-for-time", std::string(device) + " time_s=3600", "holdsCurrent_A"), 36.16,
                1e-9);
    EXPECT_EQ(word("current-for-time", std::string(device) + " time_s=0.001", "operation"),
              "may-never-operate");
}

TEST(AdjustableBreakerSum, TakesBothOfASettingOrNeither) {
    EXPECT_EQ(
        refusal("adjustable-breaker-time", "overloadSetting_A=100 shortTimeSetting_A=800 current_A=500"),
        "sum.missing");
    const std::string_view settings = "overloadSetting_A=100 instantaneousSetting_A=1000";
    EXPECT_EQ(word("adjustable-breaker-time", std::string(settings) + " current_A=110", "operation"),
              "may-never-operate");
    EXPECT_LT(number("adjustable-breaker-time", std::string(settings) + " current_A=1200", "latest_s"), 1);
}

TEST(InverseRelaySum, NeverOperatesAtItsSetting) {
    EXPECT_EQ(word("inverse-relay-time", "curve=very-inverse settingMultiple=1", "operation"),
              "never-operates");
    EXPECT_DOUBLE_EQ(number("inverse-relay-time", "curve=very-inverse settingMultiple=10 timeMultiplier=0.2",
                            "operatingTime_s"),
                     0.3);
}

TEST(FuseSelectivitySum, TwoStepsApartAreSelectiveOneIsNot) {
    const auto verdicts = [](std::string_view inputs) {
        return std::pair(word("fuse-selectivity", inputs, "ratioVerdict"),
                         word("fuse-selectivity", inputs, "energyVerdict"));
    };
    using Both = std::pair<std::string_view, std::string_view>;
    EXPECT_EQ(verdicts("upstreamRating_A=100 downstreamRating_A=63"), Both("holds", "holds"));
    EXPECT_EQ(verdicts("upstreamRating_A=80 downstreamRating_A=63"), Both("fails", "fails"));
    EXPECT_EQ(refusal("fuse-selectivity", "upstreamRating_A=81 downstreamRating_A=63"),
              "sum.device-not-made");
}

TEST(DeviceSelectivitySum, SaysBetweenWhichCurrentsItIsProven) {
    const std::string_view fuseAboveBreaker =
        "upstreamDevice=60269-gG upstreamRating_A=100 downstreamDevice=60898-B downstreamRating_A=16";
    const auto from =
        std::get<std::vector<double>>(answered("device-selectivity", fuseAboveBreaker, "provenAbove_A"));
    const auto upTo =
        std::get<std::vector<double>>(answered("device-selectivity", fuseAboveBreaker, "provenUpTo_A"));
    ASSERT_EQ(from.size(), upTo.size());
    ASSERT_FALSE(from.empty());
    for (std::size_t i = 0; i < from.size(); ++i)
        EXPECT_LT(from[i], upTo[i]);
    EXPECT_EQ(
        word("device-selectivity",
             "upstreamDevice=60898-B upstreamRating_A=6 downstreamDevice=60269-gG downstreamRating_A=100",
             "selectivity"),
        "not-proven");
}

TEST(ResidualSelectivitySum, NeedsADelayAndThreeTimes) {
    const std::string_view pair = "upstreamResidual_mA=100 downstreamResidual_mA=30";
    EXPECT_EQ(word("residual-selectivity", pair, "verdict"), "fails");
    EXPECT_EQ(word("residual-selectivity", std::string(pair) + " upstreamDelayed=yes", "verdict"), "holds");
}

TEST(StreetMainSum, BeginsAtTheTransformer) {
    const std::string plate =
        "ratedPower_kVA=500 lineToLineVoltage_V=400 impedanceVoltage_percent=4 loadLoss_W=5100 ";
    const double terminals = number("transformer-fault", plate, "faultCurrent_kA");
    const auto at = [&](const char* metres, std::string_view result) {
        return number("street-main-fault",
                      plate +
                          "segmentResistances_mohm_per_m=0.164 segmentReactances_mohm_per_m=0.074 "
                          "segmentLengths_m=" +
                          metres,
                      result);
    };
    EXPECT_NEAR(at("0.001", "faultCurrent_kA"), terminals, 1e-3);
    EXPECT_NEAR(at("0.001", "lineToNeutralFault_kA"), terminals, 1e-3);
    // By hand: Z_0 = 3.264 + j12.377 mohm, 150 m: 24.6 + j11.1 mohm.
    EXPECT_NEAR(at("150", "faultCurrent_kA"), 400 / 1.7320508 / std::hypot(27.864, 23.477), 2e-3);
    EXPECT_NEAR(at("150", "lineToNeutralFault_kA"), 400 / 1.7320508 / std::hypot(52.464, 34.577), 2e-3);
    EXPECT_LT(at("300", "faultCurrent_kA"), at("150", "faultCurrent_kA"));
}

} // namespace
} // namespace loopwright::sums
