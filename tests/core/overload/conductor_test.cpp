// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/conductor.h"

#include "core/physics/thermal.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::overload {
namespace {

Conductor conductor() {
    return {celsius(30), celsius(70), amperes(27), seconds(53), seconds(340), {89'000, 98'000}};
}
Steps steady(double current) {
    return {{amperes(current), hours(1e5)}};
}
Steps runs(double current, double on, double off) {
    return {{amperes(current), minutes(on)}, {amperes(0), minutes(off)}};
}

TEST(ConductorHeat, AtItsCapacityItEndsAtItsLimitAndAgesAtTheRateOfItsLimit) {
    const ConductorHeat heat = heatUnder(conductor(), steady(27));
    EXPECT_NEAR(heat.peak.base(), 70, 1e-6);
    EXPECT_NEAR(heat.leastPeak.base(), 70, 1e-6);
    EXPECT_NEAR(heat.mean.base(), 70, 1e-6);
    EXPECT_NEAR(heat.leastAgeing, 1, 1e-6);
    EXPECT_NEAR(heat.mostAgeing, 1, 1e-6);
}

TEST(ConductorHeat, TheConventionalCurrentIsWorth114Degrees) {
    // insulation_ageing.csv: 114.1 degC at 1.45 I_z, 81.1 degC at 1.13 I_z, PVC 70 in 30 degC.
    EXPECT_NEAR(heatUnder(conductor(), steady(1.45 * 27)).peak.base(), 114.1, 0.05);
    EXPECT_NEAR(heatUnder(conductor(), steady(1.13 * 27)).peak.base(), 81.1, 0.05);
}

TEST(ConductorHeat, InShortRunsTheQuickEstimateIsWarmerAndTheMeanIsTheSame) {
    const ConductorHeat heat = heatUnder(conductor(), runs(40, 2, 6));
    EXPECT_GT(heat.peak, heat.leastPeak);
    EXPECT_GT(heat.leastPeak, heat.mean);
    EXPECT_NEAR(heat.mean.base(), 30 + 40 * (40.0 / 27) * (40.0 / 27) * 0.25, 1e-9);
    Conductor buried = conductor();
    buried.slow.reset();
    const ConductorHeat there = heatUnder(buried, runs(40, 2, 6));
    EXPECT_EQ(there.leastPeak, there.mean) << "nothing says how quick its surroundings are";
    EXPECT_GE(there.mostAgeing, there.leastAgeing);
}

TEST(ConductorHeat, TimeConstantsAreThoseOfTheBalance) {
    // 2.5 mm2 copper, 27 A by method C: 53 s for the conductor alone (insulation_ageing.csv, derived there
    // from IEC 60228 and IEC 60364-5-52).
    const ResistancePerLength hot = ohmsPerKilometre(7.41) * (1 + 0.00393 * 50);
    EXPECT_NEAR(timeConstant(3.45 * 2.5, kelvins(40), amperes(27), hot).base(), 53, 1);
}

TEST(RelativeAgeing, DoublesByTheHalvingStepOfItsActivationEnergy) {
    // insulation_ageing.csv: 98 kJ/mol halves life every 6.92 K at 70 degC, 89 kJ/mol every 7.62 K (first
    // order, so over half a step to either side).
    for (const auto& [energy, step] : {std::pair(98'000.0, 6.92), std::pair(89'000.0, 7.62)})
        EXPECT_NEAR(relativeAgeing(energy, celsius(70 - step / 2), celsius(70 + step / 2)), 2, 0.01)
            << energy;
    EXPECT_DOUBLE_EQ(relativeAgeing(98'000, celsius(70), celsius(70)), 1);
}

/// 1.5 mm2 copper in PVC, method C: 19.5 A.
Conductor thin() {
    return {celsius(30), celsius(70), amperes(19.5), seconds(38), seconds(300), {89'000, 98'000}, 0.00393};
}

TEST(ConductorHeat, AboveItsLimitTheResistanceIsThatOfItsTemperature) {
    // The temperature that the heat balance with R(theta) ends in (IEC 60287-1-1), as physics has it.
    const Conductor wire = thin();
    for (const double current : {22.0, 31.0, 38.0}) {
        const auto ends = physics::conductorTemperature(wire.ambient, wire.limit, amperes(current),
                                                        wire.capacity, wire.coefficient);
        ASSERT_TRUE(ends);
        const ConductorHeat heat = heatUnder(wire, steady(current));
        EXPECT_NEAR(heat.peak.base(), ends->base(), 1e-6) << current;
        EXPECT_NEAR(heat.mean.base(), ends->base(), 1e-6) << current;
    }
    EXPECT_NEAR(heatUnder(wire, steady(31)).peak.base(), 161, 1);
    EXPECT_NEAR(heatUnder(wire, steady(15)).peak.base(), 30 + 40 * (15 / 19.5) * (15 / 19.5), 1e-6)
        << "below the limit it is that at the limit";
    EXPECT_NEAR(heatUnder(wire, steady(500)).peak.base(), 1000, 1e-6) << "heating outruns cooling";
    EXPECT_TRUE(std::isfinite(heatUnder(wire, steady(500)).mostAgeing));
}

TEST(ConductorHeat, WarmestWithinIsBoundedByTheSettledCycle) {
    const Conductor wire = thin();
    const Steps cycle = runs(25, 2, 3);
    const auto within = [&](Time time) { return warmestWithin(wire, *wire.slow, cycle, time).base(); };
    EXPECT_NEAR(within({}), 30, 1e-9);
    EXPECT_NEAR(within(minutes(1)), 30 + 40 * std::pow(25 / 19.5, 2) * -std::expm1(-60 / 300.0), 1e-6);
    EXPECT_NEAR(within(hours(9)), heatUnder(wire, cycle).leastPeak.base(), 1e-6);
    EXPECT_GT(within(minutes(11)), within(minutes(2)));
}

/// By small steps: the settled cycle's peak, mean and ageing at the most energy.
struct Stepped {
    double peak = 0, mean = 0, ageing = 0;
};
Stepped stepped(const Conductor& wire, const Steps& cycle, Time constant) {
    const double atLimit = 1 + wire.coefficient * (wire.limit.base() - 20);
    const double rise = wire.limit.base() - wire.ambient.base(), tau = constant.base();
    double warm = wire.ambient.base();
    Stepped result;
    const double length = physics::lengthOf(cycle).base();
    const int rounds = 2 + static_cast<int>(12 * tau / length);
    for (int round = 0; round < rounds; ++round) {
        result = {};
        for (const physics::DutyStep& step : cycle) {
            const double square = std::pow(step.current / wire.capacity, 2);
            const int parts = static_cast<int>(std::ceil(step.duration.base() / (tau / 1000)));
            const double part = step.duration.base() / parts;
            for (int i = 0; i < parts; ++i) {
                const double resistance = std::max(1.0, (1 + wire.coefficient * (warm - 20)) / atLimit);
                const double before = warm;
                warm += (square * resistance * rise - (warm - wire.ambient.base())) * part / tau;
                const double between = (before + warm) / 2;
                result.peak = std::max(result.peak, warm);
                result.mean += between * part;
                result.ageing += relativeAgeing(wire.life.most, wire.limit, celsius(between)) * part;
            }
        }
    }
    return {result.peak, result.mean / length, result.ageing / length};
}

TEST(ConductorHeat, AgreesWithSmallSteps) {
    for (const Steps& cycle :
         {runs(38, 2, 8), runs(38, 2, 1440), runs(30, 0.3, 0.3), runs(30, 60, 240),
          Steps{{amperes(25), minutes(3)}, {amperes(40), minutes(1)}, {{}, minutes(9)}}}) {
        Conductor wire = thin();
        wire.slow = wire.quick;
        const ConductorHeat heat = heatUnder(wire, cycle);
        const Stepped expected = stepped(wire, cycle, wire.quick);
        const double load = cycle.front().current.base(), rest = cycle.back().duration.base();
        EXPECT_NEAR(heat.peak.base(), expected.peak, 0.3) << load << ' ' << rest;
        EXPECT_NEAR(heat.mean.base(), expected.mean, 0.1) << load << ' ' << rest;
        EXPECT_NEAR(heat.mostAgeing / expected.ageing, 1, 0.02) << load << ' ' << rest;
    }
}

RC_GTEST_PROP(ConductorHeat, MoreLoadIsNeverCoolerAndNeverAgesLess, ()) {
    const double current = *rc::gen::inRange(1, 60), more = current + *rc::gen::inRange(0, 30);
    const double on = *rc::gen::inRange(1, 600) / 10.0, off = *rc::gen::inRange(1, 600) / 10.0;
    const ConductorHeat less = heatUnder(conductor(), runs(current, on, off)),
                        greater = heatUnder(conductor(), runs(more, on, off));
    RC_ASSERT(greater.peak >= less.peak);
    RC_ASSERT(greater.leastPeak >= less.leastPeak);
    RC_ASSERT(greater.mostAgeing >= less.mostAgeing * (1 - 1e-9));
    RC_ASSERT(less.leastPeak.base() <= less.peak.base() + 1e-9);
    RC_ASSERT(less.mean.base() <= less.leastPeak.base() + 1e-9);
    RC_ASSERT(less.leastAgeing <= less.mostAgeing);
    const ConductorHeat cooler = heatUnder(thin(), runs(current, on, off)),
                        warmer = heatUnder(thin(), runs(more, on, off));
    RC_ASSERT(warmer.peak.base() >= cooler.peak.base() - 1e-9);
    RC_ASSERT(warmer.mostAgeing >= cooler.mostAgeing * (1 - 1e-6));
    RC_ASSERT(cooler.mean <= cooler.peak);
}

} // namespace
} // namespace loopwright::overload
