// SPDX-License-Identifier: GPL-3.0-or-later
//
// Worked examples that others published, answered by the sums, each to the rounding of its source. What they
// are, where they come from and which sum answers which: tests/published/data/worked_examples/README.md.
#include "core/sums/read_inputs.h"
#include "core/sums/registry.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <set>

namespace loopwright::published {
namespace {

using nlohmann::json;
namespace fs = std::filesystem;

const fs::path folder = fs::path(LOOPWRIGHT_SOURCE_DIR) / "tests/published/data/worked_examples";

json readJson(const fs::path& path) {
    std::ifstream file(path);
    return json::parse(file);
}

std::map<std::string, json> readExamples() {
    std::map<std::string, json> examples;
    std::ifstream file(folder / "worked_examples.jsonl");
    for (std::string line; std::getline(file, line);) {
        const json example = json::parse(line);
        examples[example.at("id")] = example;
    }
    return examples;
}

/// By example, the steps that answer it.
std::map<std::string, json> readSteps() {
    std::map<std::string, json> steps;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().filename().string().starts_with("topic_")) {
            const json topic = readJson(entry.path());
            for (const auto& [id, list] : topic.items())
                steps[id] = list;
        }
    return steps;
}

/// "±0.4 % — whole numbers" as a share.
double toleranceOf(const json& example) {
    const std::string text = example.at("tolerance");
    return std::stod(text.substr(std::string("±").size())) / 100;
}

const json& reach(const json& inputs, const std::string& path) {
    const std::size_t point = path.find('.');
    if (point == path.npos) return inputs.at(path);
    return inputs.at(path.substr(0, point)).at(path.substr(point + 1));
}

json eachTimes(const json& value, double factor) {
    if (value.is_number()) return value.get<double>() * factor;
    json list = json::array();
    for (const json& each : value)
        list.push_back(eachTimes(each, factor));
    return list;
}

json withUnit(const json& value, const std::string& unit) {
    if (value.is_number()) return value.dump() + " " + unit;
    json list = json::array();
    for (const json& each : value)
        list.push_back(withUnit(each, unit));
    return list;
}

/// One example on its way through the sums.
class Walk {
  public:
    Walk(const json& example, const sums::SumContext& context)
      : example_(example)
      , context_(context) {}

    void step(const json& step) {
        const auto sum = sums::sumNamed(step.at("sum").get<std::string>());
        if (!sum) return complain("there is no sum " + step.at("sum").get<std::string>());
        std::vector<sums::RawInput> raw;
        for (const auto& [key, expression] : step.at("inputs").items())
            raw.push_back({key, rawValue(valueOf(expression))});
        const auto inputs = sums::readInputs(**sum, raw, context_);
        if (!inputs) return complain(inputs.error());
        const auto answers = sums::answer(**sum, *inputs, context_);
        if (!answers) return complain(answers.error());
        results_.push_back(resultsOf(**sum, *answers));
        for (const auto& [key, expression] : step.at("compare").items())
            compare(key, expression);
    }

    /// Every published figure was compared, and agreed.
    bool agrees() const { return agrees_ && compared_.size() == example_.at("published").size(); }

  private:
    void complain(const std::string& what) {
        agrees_ = false;
        ADD_FAILURE() << example_.at("id") << " " << example_.at("title") << "\n"
                      << what << "\n"
                      << example_.dump();
    }
    void complain(const sums::Refusal& refusal) {
        complain("refused, " + std::string(refusal.what.key) + ": " + refusal.input);
    }

    json valueOf(const json& expression) const {
        if (expression.is_string()) return reach(example_.at("inputs"), expression);
        if (expression.is_array()) {
            json list = json::array();
            for (const json& each : expression)
                list.push_back(valueOf(each));
            return list;
        }
        if (!expression.is_object()) return expression;
        if (expression.contains("word")) return expression.at("word");
        const json value = expression.contains("result")
                               ? results_.at(expression.at("step").get<std::size_t>() - 1)
                                     .at(expression.at("result").get<std::string>())
                               : valueOf(expression.at("of"));
        if (expression.contains("unit")) return withUnit(value, expression.at("unit"));
        return expression.contains("times") ? eachTimes(value, valueOf(expression.at("times"))) : value;
    }

    static sums::RawValue rawValue(const json& value) {
        if (value.is_boolean()) return value.get<bool>();
        if (value.is_string()) return value.get<std::string>();
        if (value.is_number()) return value.get<double>();
        std::vector<sums::RawFigure> list;
        for (const json& each : value)
            list.push_back(each.is_string() ? sums::RawFigure(each.get<std::string>())
                                            : sums::RawFigure(each.get<double>()));
        return list;
    }

    static json plain(const sums::ResultValue& value) {
        if (const auto* number = std::get_if<double>(&value)) return *number;
        if (const auto* list = std::get_if<std::vector<double>>(&value)) return *list;
        if (const auto* word = std::get_if<std::string_view>(&value)) return *word;
        return nullptr;
    }

    static json resultsOf(const sums::Sum& sum, const sums::Answers& answers) {
        json results;
        for (const sums::Result& result : sum.results) {
            json values = json::array();
            for (const sums::Answer& each : answers.cases)
                values.push_back(plain(each.value(result.key)));
            results[std::string(result.key)] = answers.several ? values : values.front();
        }
        return results;
    }

    void compare(const std::string& key, const json& expression) {
        compared_.insert(key);
        json printed = example_.at("published").at(key);
        json ours = results_.back().at(expression.is_string() ? expression : expression.at("result"));
        if (expression.is_object() && expression.contains("item"))
            ours = json(ours.at(expression.at("item").get<std::size_t>() - 1));
        if (expression.is_object() && expression.contains("times"))
            ours = eachTimes(ours, expression.at("times"));
        if (printed.is_array() && printed.size() == 1) printed = json(printed.front());
        if (ours.is_array() != printed.is_array() || (ours.is_array() && ours.size() != printed.size()))
            return complain(key + ": we answer " + ours.dump() + ", printed is " + printed.dump());
        for (std::size_t i = 0; i < (printed.is_array() ? printed.size() : 1); ++i)
            compareOne(key, printed.is_array() ? ours[i] : ours, printed.is_array() ? printed[i] : printed);
    }

    void compareOne(const std::string& key, const json& ours, const json& printed) {
        static const json words = readJson(folder / "words.json");
        const bool agree =
            printed.is_string()
                ? ours == words.at(printed.get<std::string>())
                : ours.is_number() && std::abs(ours.get<double>() - printed.get<double>()) <=
                                          toleranceOf(example_) * std::abs(printed.get<double>());
        if (!agree)
            complain(key + ": we answer " + ours.dump() + ", printed is " + printed.dump() + ", " +
                     example_.at("tolerance").get<std::string>() + "\n" +
                     example_.at("source").get<std::string>());
    }

    const json& example_;
    const sums::SumContext& context_;
    std::vector<json> results_;
    std::set<std::string> compared_;
    bool agrees_ = true;
};

TEST(WorkedExamples, EveryOneIsAnsweredByTheSumsToTheRoundingOfItsSource) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    const std::vector<RuleSet> ruleSets = builtInRuleSets();
    const sums::SumContext context{tables, ruleSets.front()};
    const auto examples = readExamples();
    const auto steps = readSteps();
    for (const auto& [id, list] : steps)
        EXPECT_TRUE(examples.contains(id)) << id << " is no example";
    int agreeing = 0;
    std::set<std::string> unanswered;
    for (const auto& [id, example] : examples) {
        const auto asked = steps.find(id);
        if (asked == steps.end()) {
            unanswered.insert(id);
            continue;
        }
        Walk walk(example, context);
        for (const json& step : asked->second)
            walk.step(step);
        EXPECT_TRUE(walk.agrees()) << id << ": not every published figure agrees or is compared";
        agreeing += walk.agrees();
    }
    std::printf("worked examples: %d of %zu\n", agreeing, examples.size());
    EXPECT_EQ(examples.size(), 69U);
    EXPECT_THAT(unanswered, testing::IsEmpty()) << "no sum is asked for these";
}

} // namespace
} // namespace loopwright::published
