// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/read_inputs.h"
#include "core/sums/registry.h"

#include <sstream>
#include <stdexcept>

namespace loopwright::test {

/// What sums look things up in, read once: by the default rule set.
inline const sums::SumContext& context() {
    static const ReferenceTables tables = ReferenceTables::builtIn();
    static const std::vector<RuleSet> ruleSets = builtInRuleSets();
    static const sums::SumContext known{tables, ruleSets.front()};
    return known;
}

/// "length_m=30 size_mm2=2.5", parted at the spaces.
inline std::vector<sums::RawInput> assignments(std::string_view text) {
    std::vector<sums::RawInput> raw;
    std::istringstream words{std::string(text)};
    for (std::string word; words >> word;) {
        auto read = sums::readAssignment(word);
        if (!read) throw std::runtime_error("not an assignment: " + word);
        raw.push_back(std::move(*read));
    }
    return raw;
}

inline std::vector<sums::RawInput> exampleOf(const sums::Sum& sum) {
    return assignments(sum.example);
}

inline tl::expected<sums::Answers, sums::Refusal> asked(const sums::Sum& sum,
                                                        const std::vector<sums::RawInput>& raw) {
    const auto inputs = sums::readInputs(sum, raw, context());
    if (!inputs) return tl::unexpected(inputs.error());
    return sums::answer(sum, *inputs, context());
}

inline tl::expected<sums::Answers, sums::Refusal> asked(std::string_view key, std::string_view text) {
    const auto sum = sums::sumNamed(key);
    if (!sum) return tl::unexpected(sum.error());
    return asked(**sum, assignments(text));
}

} // namespace loopwright::test
