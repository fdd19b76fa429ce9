// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/insulation.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto circuits = list<Resistance>("circuits_Mohm", "R_i", units::megohm);
constexpr auto minimum = optional<Resistance>("minimum_Mohm", "R_min", units::megohm);
constexpr auto known = number<Resistance>("known_Mohm", "R_1", units::megohm);
constexpr auto knownLength = number<Length>("knownLength_m", "l_1", units::metre);

constexpr auto together = result<Resistance>("insulation_Mohm", "R", units::megohm);

Outcome judged(Answer answer, Resistance insulation, const std::optional<Resistance>& least) {
    if (least) answer.judge(Relation::AtLeast, insulation, *least, units::megohm);
    return answer;
}

Sum insulationTogether() {
    return {.key = "insulation-together",
            .inputs = {circuits, minimum},
            .results = {together, verdict},
            .example = "circuits_Mohm=5,10,200 minimum_Mohm=1",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Resistance insulation = physics::inParallel(given[circuits]);
                return judged(Answer().step("1/R = Σ 1/R_i", together, insulation), insulation,
                              given[minimum]);
            }};
}

Sum insulationOfLength() {
    return {.key = "insulation-of-length",
            .inputs = {known, knownLength, length, minimum},
            .results = {together, verdict},
            .example = "known_Mohm=100 knownLength_m=50 length_m=200",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Resistance insulation =
                    physics::insulationOfLength(given[known], given[knownLength], given[length]);
                return judged(Answer().step("R = R_1 l_1 / l", together, insulation), insulation,
                              given[minimum]);
            }};
}

} // namespace

std::vector<Sum> insulationSums() {
    return {insulationTogether(), insulationOfLength()};
}

} // namespace loopwright::sums
