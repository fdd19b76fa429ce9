// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/answer.h"

#include <algorithm>
#include <stdexcept>

namespace loopwright::sums {

Answer& Answer::term(Term term) {
    pending_.push_back(std::move(term));
    return *this;
}

Answer& Answer::word(const WordResult& declared, std::string_view word) {
    if (std::ranges::find(declared.words, word) == declared.words.end())
        throw std::logic_error("a sum answers with a word that it does not declare: " + std::string(word));
    fill(declared, word);
    return *this;
}

const ResultValue& Answer::value(std::string_view key) const {
    static const ResultValue nothing;
    const auto found = std::ranges::find(results_, key, &Filled::key);
    return found == results_.end() ? nothing : found->value;
}

void Answer::beginWith(std::vector<Term> terms) {
    if (workings_.empty()) return;
    std::vector<Term>& first = workings_.front().terms;
    terms.insert(terms.end(), std::make_move_iterator(first.begin()), std::make_move_iterator(first.end()));
    first = std::move(terms);
}

void Answer::fill(const Result& declared, ResultValue value) {
    results_.push_back({declared.key, std::move(value)});
}

Answer& Answer::addWorking(std::string_view formula, std::string_view symbol, Measure result, Source source) {
    Working working;
    working.formula = formula;
    working.terms = std::move(pending_);
    working.resultSymbol = symbol;
    working.result = result;
    working.source = std::move(source);
    working.restsOnAssumption = std::ranges::any_of(
        working.terms, [](const Term& term) { return term.origin == TermOrigin::Assumed; });
    workings_.push_back(std::move(working));
    pending_.clear();
    return *this;
}

void Answer::setLimit(Relation relation, Measure limit) {
    if (workings_.empty()) throw std::logic_error("a sum judges before it has a result");
    workings_.back().relation = relation;
    workings_.back().limit = limit;
}

} // namespace loopwright::sums
