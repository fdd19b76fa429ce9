// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/sum_commands.h"

#include "app/files/files.h"
#include "app/sums/sums_json.h"
#include "app/sums/sums_text.h"
#include "core/sums/registry.h"

#include <QCoreApplication>
#include <QStringList>

#include <fstream>
#include <iostream>

namespace loopwright {
namespace {

constexpr int indent = 2;

QString sentence(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

std::string printed(const Json& document, int indentation) {
    return document.dump(indentation, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// The default rule set when none is named.
tl::expected<sums::SumContext, QString> contextFor(const CommandSurroundings& surroundings,
                                                   const std::string& ruleSet) {
    const Knowledge& knowledge = surroundings.knowledge;
    QStringList known;
    for (const RuleSet& each : knowledge.ruleSets) {
        if (ruleSet.empty() || each.key == ruleSet) return sums::SumContext{knowledge.tables, each};
        known << text(each.key);
    }
    return tl::unexpected(
        sentence("There is no rule set \"%1\". There is %2.").arg(text(ruleSet), known.join(", ")));
}

tl::expected<sums::Inputs, sums::Refusal> inputsFrom(const sums::Sum& sum,
                                                     const std::vector<std::string>& assignments,
                                                     const sums::SumContext& context) {
    std::vector<sums::RawInput> raw;
    for (const std::string& assignment : assignments) {
        auto read = sums::readAssignment(assignment);
        if (!read) return tl::unexpected(std::move(read.error()));
        raw.push_back(std::move(*read));
    }
    return sums::readInputs(sum, raw, context);
}

int refuseSum(const CommandSurroundings& surroundings, const std::string& name, const sums::Refusal& refusal,
              bool asJson) {
    if (asJson) surroundings.out << printed(sums::refusalJson(name, refusal, surroundings.words), indent);
    return refuse(surroundings, surroundings.words.sentence(refusal.what));
}

} // namespace

int listSumsCommand(const CommandSurroundings& surroundings, const std::string& ruleSet, bool asJson) {
    const auto context = contextFor(surroundings, ruleSet);
    if (!context) return refuse(surroundings, context.error());
    surroundings.out << (asJson ? printed(sums::listJson(*context, surroundings.words), indent)
                                : sums::listText(*context, surroundings.words));
    return exitDone;
}

int sumCommand(const CommandSurroundings& surroundings, const std::string& ruleSet, const std::string& name,
               const std::vector<std::string>& assignments, bool asJson) {
    const auto context = contextFor(surroundings, ruleSet);
    if (!context) return refuse(surroundings, context.error());
    const auto sum = sums::sumNamed(name);
    if (!sum) return refuseSum(surroundings, name, sum.error(), asJson);
    const auto inputs = inputsFrom(**sum, assignments, *context);
    if (!inputs) return refuseSum(surroundings, name, inputs.error(), asJson);
    const auto answers = sums::answer(**sum, *inputs, *context);
    if (!answers) return refuseSum(surroundings, name, answers.error(), asJson);
    surroundings.out << (asJson
                             ? printed(sums::answerJson(**sum, answers, *context, surroundings.words), indent)
                             : sums::answerText(**sum, *answers, *context, surroundings.words));
    return exitDone;
}

int batchCommand(const CommandSurroundings& surroundings, const std::string& ruleSet,
                 const std::filesystem::path& file) {
    const auto context = contextFor(surroundings, ruleSet);
    if (!context) return refuse(surroundings, context.error());
    std::ifstream opened;
    if (file != "-") opened.open(file);
    std::istream& lines = file == "-" ? std::cin : opened;
    if (!lines) return refuse(surroundings, sentence("%1 cannot be read.").arg(shown(file)));
    int code = exitDone;
    for (std::string line; std::getline(lines, line);) {
        const Json answer = sums::batchAnswer(line, *context, surroundings.words);
        if (answer.contains("refused")) code = exitRefused;
        surroundings.out << printed(answer, -1);
    }
    if (lines.bad())
        return refuse(surroundings, sentence("%1 could not be read to its end.").arg(shown(file)));
    return code;
}

} // namespace loopwright
