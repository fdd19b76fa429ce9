// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/sum.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace loopwright::sums {
namespace {

std::size_t caseCount(const Sum& sum, const Inputs& inputs) {
    std::size_t count = 1;
    for (std::size_t i = 0; i < inputs.size(); ++i)
        if (sum.inputs[i].kind == InputKind::Number) count = std::max(count, inputs[i].figures.size());
    return count;
}

TermOrigin originOf(const GivenInput& given) {
    if (!given.byDefault) return TermOrigin::Typed;
    return given.source.title.empty() ? TermOrigin::Assumed : TermOrigin::Rule;
}

/// What was given, as the terms that a working begins with.
std::vector<Term> givenTerms(const Sum& sum, const Inputs& inputs, const Given& given) {
    std::vector<Term> terms;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const Input& input = sum.inputs[i];
        for (const GivenFigure& figure : given.figures(i))
            terms.push_back({std::string(input.symbol),
                             {input.unit.fromBase(figure.value), input.unit, figure.decimals},
                             originOf(inputs[i]),
                             {},
                             inputs[i].source});
    }
    return terms;
}

bool isFinite(const ResultValue& value) {
    if (const auto* number = std::get_if<double>(&value)) return std::isfinite(*number);
    if (const auto* list = std::get_if<std::vector<double>>(&value))
        return std::ranges::all_of(*list, [](double each) { return std::isfinite(each); });
    return true;
}

void checkDeclared(const Sum& sum, const Answer& answer) {
    for (const Answer::Filled& filled : answer.results())
        if (std::ranges::find(sum.results, filled.key, &Result::key) == sum.results.end())
            throw std::logic_error(std::string(sum.key) +
                                   " gives a result that it does not declare: " + std::string(filled.key));
}

} // namespace

tl::expected<Answers, Refusal> answer(const Sum& sum, const Inputs& inputs, const SumContext& context) {
    const std::size_t count = caseCount(sum, inputs);
    Answers answers;
    answers.several = count > 1;
    for (std::size_t index = 0; index < count; ++index) {
        const Given given(sum.inputs, inputs, index);
        Outcome outcome = sum.work(given, context);
        if (!outcome) return tl::unexpected(outcome.error());
        checkDeclared(sum, *outcome);
        for (const Answer::Filled& filled : outcome->results())
            if (!isFinite(filled.value))
                return tl::unexpected(Refusal{{}, {"sum.no-finite-answer", {std::string(filled.key)}}});
        outcome->beginWith(givenTerms(sum, inputs, given));
        answers.cases.push_back(std::move(*outcome));
    }
    return answers;
}

} // namespace loopwright::sums
