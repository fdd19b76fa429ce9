// SPDX-License-Identifier: GPL-3.0-or-later
//
// What must be true of every sum, whoever wrote it.
#include "core/phrases/phrases.h"
#include "tests/core/sums/asked.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <set>

namespace loopwright::sums {
namespace {

class EverySum : public testing::TestWithParam<std::string_view> {
  protected:
    const Sum& sum = **sumNamed(GetParam());
    std::vector<RawInput> example = test::exampleOf(sum);

    tl::expected<Inputs, Refusal> with(const std::string& key, const RawValue& value) const {
        std::vector<RawInput> raw;
        for (const RawInput& each : example)
            if (each.key != key) raw.push_back(each);
        raw.push_back({key, value});
        return readInputs(sum, raw, test::context());
    }
};

TEST_P(EverySum, HasItsNames) {
    const std::string key(sum.key);
    EXPECT_TRUE(phrase("sum." + key + ".title")) << key;
    for (const Input& input : sum.inputs)
        EXPECT_TRUE(phrase("sum.input." + std::string(input.key))) << key << " " << input.key;
    for (const Result& result : sum.results) {
        EXPECT_TRUE(phrase("sum.result." + std::string(result.key))) << key << " " << result.key;
        for (const std::string_view word : result.words)
            EXPECT_TRUE(phrase("sum.word." + std::string(word))) << key << " " << word;
    }
}

TEST_P(EverySum, DeclaresEachInputAndResultOnceWithinAUsableRange) {
    std::set<std::string_view> inputs, results;
    for (const Input& input : sum.inputs) {
        EXPECT_TRUE(inputs.insert(input.key).second) << sum.key << " " << input.key;
        const bool isFigure = input.kind == InputKind::Number || input.kind == InputKind::List;
        if (isFigure) {
            EXPECT_LT(input.range.least, input.range.most) << sum.key << " " << input.key;
            EXPECT_FALSE(input.symbol.empty()) << sum.key << " " << input.key;
        }
        if (input.kind == InputKind::Choice && !input.preset.empty()) {
            const auto options = input.options(test::context());
            EXPECT_NE(std::ranges::find(options, input.preset), options.end()) << sum.key << " " << input.key;
        }
    }
    for (const Result& result : sum.results)
        EXPECT_TRUE(results.insert(result.key).second) << sum.key << " " << result.key;
}

TEST_P(EverySum, AnswersItsExampleWithAWorking) {
    const auto answered = test::asked(sum, example);
    ASSERT_TRUE(answered) << sum.key << ": " << answered.error().what.key;
    const Answer& answer = answered->cases.front();
    EXPECT_FALSE(answer.workings().empty()) << sum.key;
    for (const Working& working : answer.workings())
        EXPECT_FALSE(working.formula.empty()) << sum.key;
    EXPECT_FALSE(answer.results().empty()) << sum.key;
    for (const Result& result : sum.results) {
        const ResultValue& value = answer.value(result.key);
        if (std::holds_alternative<double>(value)) {
            EXPECT_EQ(result.kind, ResultKind::Number) << result.key;
        } else if (std::holds_alternative<std::vector<double>>(value)) {
            EXPECT_EQ(result.kind, ResultKind::List) << result.key;
        }
    }
}

TEST_P(EverySum, NamesWhatIsMissing) {
    for (const Input& input : sum.inputs) {
        if (!input.required) continue;
        std::vector<RawInput> raw = example;
        std::erase_if(raw, [&](const RawInput& each) { return each.key == input.key; });
        const auto inputs = readInputs(sum, raw, test::context());
        ASSERT_FALSE(inputs) << sum.key << " without " << input.key;
        EXPECT_EQ(inputs.error().input, input.key) << sum.key;
    }
}

TEST_P(EverySum, RefusesWhatIsNoUsableFigure) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    for (const Input& input : sum.inputs) {
        if (input.kind != InputKind::Number && input.kind != InputKind::List) continue;
        const std::string key(input.key);
        for (const double bad :
             {infinity, -infinity, std::numeric_limits<double>::quiet_NaN(),
              std::numeric_limits<double>::max(), std::numeric_limits<double>::lowest(),
              std::numeric_limits<double>::denorm_min(), std::numeric_limits<double>::min()}) {
            const bool isNextToZero = bad == std::numeric_limits<double>::min();
            EXPECT_EQ(bool(with(key, bad)), isNextToZero && input.range.least < 0)
                << sum.key << " " << key << " = " << bad;
        }
        EXPECT_EQ(bool(with(key, 0.0)), input.range.zero) << sum.key << " " << key;
        for (const char* bad : {"", "abc", ">5", "<5", "LIM: locked", "N/A", "5 (carried)", "nan", "inf",
                                "1e999", "5 bananas", "1,,2", "5 A 6"})
            EXPECT_FALSE(with(key, std::string(bad))) << sum.key << " " << key << "=" << bad;
        EXPECT_FALSE(with(key, true)) << sum.key << " " << key;
        EXPECT_FALSE(with(key, std::vector<RawFigure>{})) << sum.key << " " << key;
    }
}

/// The corners of what is allowed give a finite answer or a refusal, never anything else.
TEST_P(EverySum, IsFiniteAtTheEndsOfEveryRange) {
    for (const Input& input : sum.inputs) {
        if (input.kind != InputKind::Number && input.kind != InputKind::List) continue;
        for (const double base : {input.range.least, input.range.most}) {
            // A hair inside, since a unit may round the end itself outwards.
            const double inside =
                base == input.range.least ? base + std::abs(base) * 1e-9 : base - std::abs(base) * 1e-9;
            const auto inputs = with(std::string(input.key), input.unit.fromBase(inside));
            ASSERT_TRUE(inputs) << sum.key << " " << input.key << " " << inside << " "
                                << inputs.error().what.key;
            const auto answered = answer(sum, *inputs, test::context());
            if (!answered) continue;
            for (const Answer::Filled& filled : answered->cases.front().results())
                if (const auto* number = std::get_if<double>(&filled.value)) {
                    EXPECT_TRUE(std::isfinite(*number)) << sum.key << " " << filled.key;
                }
        }
    }
}

/// Any figure of a range, small and large ones alike often; at times its ends, and 0 where that may be.
double anyFigure(const Range& range, std::mt19937& dice) {
    const double share = std::uniform_real_distribution<double>(0, 1)(dice);
    if (range.zero && share < 0.1) return 0;
    if (range.least <= 0) return range.least + (range.most - range.least) * share;
    return range.least * std::pow(range.most / range.least, share);
}

RawValue anyValue(const Input& input, std::mt19937& dice) {
    const auto figure = [&] { return input.unit.fromBase(anyFigure(input.range, dice)); };
    if (input.kind == InputKind::Flag) return dice() % 2 == 0;
    if (input.kind == InputKind::Choice) {
        const auto options = input.options(test::context());
        return options[dice() % options.size()];
    }
    if (input.kind == InputKind::List) return std::vector<RawFigure>{figure(), figure(), figure()};
    return figure();
}

/// Whatever is allowed is answered by finite figures or refused with a reason that has words.
TEST_P(EverySum, IsNeverAtALoss) {
    std::mt19937 dice(1);
    for (int trial = 0; trial < 500; ++trial) {
        std::vector<RawInput> raw;
        std::string told(sum.key);
        for (const Input& input : sum.inputs) {
            if (!input.required && dice() % 3 == 0) continue;
            raw.push_back({std::string(input.key), anyValue(input, dice)});
            if (const auto* figure = std::get_if<double>(&raw.back().value))
                told += " " + raw.back().key + "=" + std::to_string(*figure);
        }
        const auto answered = test::asked(sum, raw);
        if (!answered) {
            EXPECT_TRUE(phrase(answered.error().what.key)) << answered.error().what.key << ": " << told;
            continue;
        }
        for (const Answer::Filled& filled : answered->cases.front().results())
            if (const auto* number = std::get_if<double>(&filled.value)) {
                EXPECT_TRUE(std::isfinite(*number)) << filled.key << ": " << told;
            }
    }
}

std::vector<std::string_view> allKeys() {
    std::vector<std::string_view> keys;
    for (const Sum& sum : allSums())
        keys.push_back(sum.key);
    return keys;
}

INSTANTIATE_TEST_SUITE_P(Sums, EverySum, testing::ValuesIn(allKeys()), [](const auto& tested) {
    std::string name(tested.param);
    std::erase(name, '-');
    return name;
});

TEST(SumRegistry, KeysAreUnique) {
    const auto keys = allKeys();
    EXPECT_EQ(std::set<std::string_view>(keys.begin(), keys.end()).size(), keys.size());
}

} // namespace
} // namespace loopwright::sums
