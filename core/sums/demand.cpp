// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/demand.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <algorithm>
#include <numeric>

namespace loopwright::sums {
namespace {

std::vector<std::string> premisesKeys(const SumContext& context) {
    const auto known = context.tables.allowancePremises();
    return {known.begin(), known.end()};
}
std::vector<std::string> loadKeys(const SumContext& context) {
    const auto known = context.tables.allowanceLoads();
    return {known.begin(), known.end()};
}
std::vector<std::string> kindKeys(const SumContext& context) {
    return context.tables.simultaneityKinds();
}

constexpr Range share{.least = 1e-3, .most = 1};

constexpr auto premises = name("premises", premisesKeys, "sum.premises.");
constexpr auto load = name("load", loadKeys, "sum.load.");
constexpr auto loads = list<Current>("loads_A", "I_i", units::ampere);
constexpr auto cookerSocket = flag("cookerSocket");
constexpr auto demands = list<Current>("demands_A", "I_{d,i}", units::ampere);
constexpr auto connectedLoads = list<Power>("connectedLoads_kVA", "S_i", units::kilovoltampere);
constexpr auto demandFactors = within(share, optionalList<Ratio>("demandFactors", "k_{u,i}", units::ratio));
constexpr auto simultaneity = within(share, number<Ratio>("simultaneityFactor", "k_s", units::ratio, one));
constexpr auto diversity =
    within({.least = 1, .most = 1000}, number<Ratio>("diversityFactor", "g", units::ratio, one));
constexpr auto kind = name("simultaneityKind", kindKeys, "sum.simultaneity.");
constexpr auto count = within({.least = 1, .most = 10000}, number<Ratio>("count", "n", units::ratio));
constexpr auto lineCurrents = orZero(list<Current>("lineCurrents_A", "I_i", units::ampere));
constexpr auto linePowerFactors =
    within({.least = 0.01, .most = 1}, optionalList<Ratio>("linePowerFactors", "cos φ_i", units::ratio));

constexpr auto connected = result<Current>("connectedLoad_A", "ΣI", units::ampere);
constexpr auto demandResult = result<Current>("demand_A", "I_d", units::ampere);
constexpr auto perLine = result<Current>("demandPerLine_A", "I_L", units::ampere);
constexpr auto connectedPower = result<Power>("connectedLoad_kVA", "ΣS", units::kilovoltampere);
constexpr auto usedPower = result<Power>("usedLoad_kVA", "S_u", units::kilovoltampere);
constexpr auto demandPower = result<Power>("demand_kVA", "S_d", units::kilovoltampere);
constexpr auto simultaneityResult = result<Ratio>("simultaneityFactor", "k_s", units::ratio);
constexpr auto neutral = result<Current>("neutralCurrent_A", "I_N", units::ampere);
constexpr auto imbalance = result<Ratio>("imbalance_percent", "u", units::percent);

template <class Q>
Q sumOf(const std::vector<Q>& several) {
    return std::accumulate(several.begin(), several.end(), Q());
}

/// The shares that count, as the table gives them.
void addAllowance(Answer& answer, const Sourced<physics::Allowance>& allowance, bool hasSocket) {
    const auto& [value, source] = allowance;
    if (value.inFull > Current()) answer.term(tableTerm("I_full", value.inFull, units::ampere, source));
    answer.term(tableTerm("f_1", value.largest, units::ratio, source));
    answer.term(tableTerm("f_2", value.second, units::ratio, source));
    answer.term(tableTerm("f_3", value.others, units::ratio, source));
    if (hasSocket) answer.term(tableTerm("I_socket", value.withSocket, units::ampere, source));
}

Sum demandWithAllowance() {
    return {.key = "demand-with-allowance",
            .inputs = {premises, load, loads, cookerSocket},
            .results = {connected, demandResult},
            .example = "premises=household load=cooking-appliances loads_A=52.2 cookerSocket=yes",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto allowance = context.tables.allowance(given[premises], given[load]);
                if (!allowance)
                    return tl::unexpected(
                        Refusal{std::string(load.key), {"sum.not-published", {std::string(load.key)}}});
                const bool hasSocket = given[cookerSocket] && allowance->value.withSocket > Current();
                Answer answer;
                answer.step("ΣI", connected, sumOf(given[loads]));
                addAllowance(answer, *allowance, hasSocket);
                return answer.step(hasSocket ? "I_d = f_1 I_1 + f_2 I_2 + f_3 (ΣI − I_1 − I_2) + (1 − f_1) "
                                               "min(ΣI, I_full) + I_socket"
                                             : "I_d = f_1 I_1 + f_2 I_2 + f_3 (ΣI − I_1 − I_2) + (1 − f_1) "
                                               "min(ΣI, I_full)",
                                   demandResult, physics::demand(given[loads], allowance->value, hasSocket),
                                   allowance->source);
            }};
}

Sum demandTogether() {
    return {.key = "demand-together",
            .inputs = {demands, simultaneity, isThreePhase},
            .results = {demandResult, perLine},
            .example = "demands_A=137.5,25,55,81,187.5 threePhase=yes",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Current whole = given[simultaneity] * sumOf(given[demands]);
                Answer answer;
                answer.step("I_d = k_s Σ I_{d,i}", demandResult, whole);
                return answer.step(given[isThreePhase] ? "I_L = I_d / 3, spread evenly over three lines"
                                                       : "I_L = I_d",
                                   perLine, given[isThreePhase] ? whole / 3 : whole);
            }};
}

Sum demandOfFeeders() {
    return {.key = "demand-of-feeders",
            .inputs = {connectedLoads, demandFactors, simultaneity, diversity},
            .results = {connectedPower, usedPower, demandPower},
            .example =
                "connectedLoads_kVA=250,200,150,400 demandFactors=0.9,0.8,0.75,0.85 diversityFactor=1.5",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const auto each = given[connectedLoads];
                auto used = given[demandFactors];
                if (used.empty()) used.assign(each.size(), 1);
                if (auto unlike = refuseUnlike(connectedLoads, each.size(), demandFactors, used.size()))
                    return tl::unexpected(std::move(*unlike));
                Power ofAll;
                for (std::size_t i = 0; i < each.size(); ++i)
                    ofAll += used[i] * each[i];
                Answer answer;
                answer.step("ΣS", connectedPower, sumOf(each));
                answer.step("S_u = Σ k_{u,i} S_i", usedPower, ofAll);
                return answer.step("S_d = k_s S_u / g", demandPower,
                                   ofAll * (given[simultaneity] / given[diversity]));
            }};
}

Sum simultaneityFactor() {
    return {.key = "simultaneity-factor",
            .inputs = {kind, count},
            .results = {simultaneityResult},
            .example = "simultaneityKind=flats count=25",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto factor =
                    context.tables.simultaneityFactor(given[kind], static_cast<int>(given[count]));
                if (!factor)
                    return tl::unexpected(
                        Refusal{std::string(count.key), {"sum.not-published", {std::string(count.key)}}});
                return Answer().step("k_s of n alike", simultaneityResult, factor->value, factor->source);
            }};
}

Sum neutralCurrent() {
    return {.key = "neutral-current",
            .inputs = {lineCurrents, linePowerFactors},
            .results = {neutral, imbalance},
            .example = "lineCurrents_A=40,30,20",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const auto currents = given[lineCurrents];
                auto factors = given[linePowerFactors];
                if (factors.empty()) factors.assign(currents.size(), 1);
                if (currents.size() != 3)
                    return tl::unexpected(Refusal{std::string(lineCurrents.key),
                                                  {"sum.three-lines", {std::string(lineCurrents.key)}}});
                if (auto unlike = refuseUnlike(lineCurrents, 3, linePowerFactors, factors.size()))
                    return tl::unexpected(std::move(*unlike));
                std::array<physics::LineLoad, 3> lines;
                std::array<Current, 3> sizes;
                for (std::size_t line = 0; line < 3; ++line) {
                    lines[line] = {currents[line], factors[line]};
                    sizes[line] = currents[line];
                }
                Answer answer;
                answer.step("I_N = |Σ I_i|, phasors, without harmonics", neutral,
                            physics::neutralCurrent(lines));
                return answer.step("u = max |I_i / I_mean − 1|", imbalance, physics::imbalance(sizes));
            }};
}

} // namespace

std::vector<Sum> demandSums() {
    return {demandWithAllowance(), demandTogether(), demandOfFeeders(), simultaneityFactor(),
            neutralCurrent()};
}

} // namespace loopwright::sums
