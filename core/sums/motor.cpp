// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/motor.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <array>

namespace loopwright::sums {
namespace {

struct StarterOption {
    std::string_view key;
    physics::StarterKind kind;
};
constexpr std::array starters{StarterOption{"direct", physics::StarterKind::Direct},
                              StarterOption{"star-delta", physics::StarterKind::StarDelta},
                              StarterOption{"autotransformer", physics::StarterKind::Autotransformer},
                              StarterOption{"soft", physics::StarterKind::Soft}};

std::vector<std::string> starterKeys(const SumContext&) {
    std::vector<std::string> keys;
    keys.reserve(starters.size());
    for (const StarterOption& option : starters)
        keys.emplace_back(option.key);
    return keys;
}

physics::StarterKind starterNamed(std::string_view key) {
    for (const StarterOption& option : starters)
        if (option.key == key) return option.kind;
    return physics::StarterKind::Direct;
}

constexpr auto shaftPower = number<Power>("shaftPower_W", "P", units::watt);
constexpr auto lineCurrent = number<Current>("current_A", "I", units::ampere);
constexpr auto startMultiple =
    within({.least = 1, .most = 20}, number<Ratio>("startMultiple", "m", units::ratio));
constexpr auto starter = name("starter", starterKeys, "sum.starter.", "direct");
constexpr auto setting =
    within({.least = 0.1, .most = 10}, number<Ratio>("starterSetting", "s", units::ratio, one));
constexpr auto multiples = list<Ratio>("multiples", "m_i", units::ratio);

constexpr auto efficiencyResult = result<Ratio>("efficiency_percent", "η", units::percent);
constexpr auto apparent = result<Power>("apparentPower_kVA", "S", units::kilovoltampere);
constexpr auto starting = result<Current>("startingCurrent_A", "I_s", units::ampere);
constexpr auto currents = listResult<Current>("currents_A", "m_i I_n", units::ampere);

Sum motorEfficiency() {
    return {.key = "motor-efficiency",
            .inputs = {shaftPower, nominal, isThreePhase, lineCurrent, powerFactor},
            .results = {apparent, efficiencyResult},
            .example = "shaftPower_W=160000 voltage_V=440 threePhase=yes current_A=245.4 powerFactor=0.92",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const bool three = given[isThreePhase];
                Answer answer;
                answer.step(three ? "S = √3 U I" : "S = U I", apparent,
                            physics::apparentPower(lineToEarthOf(given), given[lineCurrent], three));
                return answer.step("η = P / (S cos φ)", efficiencyResult,
                                   physics::motorEfficiency(given[shaftPower], lineToEarthOf(given),
                                                            given[lineCurrent], given[powerFactor], three),
                                   {.title = "IEC 60034-1"});
            }};
}

std::string_view startingFormula(physics::StarterKind kind) {
    switch (kind) {
    case physics::StarterKind::Direct:
        return "I_s = m I_n";
    case physics::StarterKind::StarDelta:
        return "I_s = m I_n / 3";
    case physics::StarterKind::Autotransformer:
        return "I_s = s^2 m I_n, s the tap";
    case physics::StarterKind::Soft:
        break;
    }
    return "I_s = s I_n, s the limit, at most m I_n";
}

Sum motorStart() {
    return {.key = "motor-start",
            .inputs = {ratedCurrent, startMultiple, starter, setting},
            .results = {starting},
            .example = "ratedCurrent_A=30 startMultiple=6 starter=star-delta",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const physics::StarterKind kind = starterNamed(given[starter]);
                return Answer().step(startingFormula(kind), starting,
                                     physics::startingCurrent(given[ratedCurrent], given[startMultiple],
                                                              {kind, given[setting]}),
                                     {.title = "IEC 60947-4-1"});
            }};
}

Sum currentMultiples() {
    return {.key = "current-multiples",
            .inputs = {ratedCurrent, multiples},
            .results = {currents},
            .example = "ratedCurrent_A=6.5 multiples=1.75,2.5,3,8",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                std::vector<Current> each;
                for (const Ratio multiple : given[multiples])
                    each.push_back(multiple * given[ratedCurrent]);
                return Answer().step("m_i I_n", currents, each);
            }};
}

} // namespace

std::vector<Sum> motorSums() {
    return {motorEfficiency(), motorStart(), currentMultiples()};
}

} // namespace loopwright::sums
