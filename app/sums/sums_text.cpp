// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sums/sums_text.h"

#include "core/sums/registry.h"
#include "forms/words/notation.h"
#include "forms/words/sum_words.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>
#include <QTextStream>

namespace loopwright::sums {
namespace {

constexpr int keyWidth = 28;
constexpr int symbolWidth = 10;
constexpr int valueWidth = 16;

QString sentence(const char* source) {
    return QCoreApplication::translate("Sums", source);
}

QString optionsText(const Input& input, const SumContext& context) {
    QStringList options;
    for (const std::string& option : input.options(context))
        options << text(option);
    return options.join(sentence(" or "));
}

QString allowedText(const Input& input, const SumContext& context, const Words& words) {
    switch (input.kind) {
    case InputKind::Number:
        return rangeText(input, words);
    case InputKind::List:
        return sentence("several, each %1").arg(rangeText(input, words));
    case InputKind::Choice:
        return optionsText(input, context);
    case InputKind::Flag:
        break;
    }
    return sentence("yes or no");
}

QString absenceText(const Input& input, const SumContext& context, const Words& words) {
    if (input.required) return {};
    const QString preset = presetText(input, context, words);
    return preset.isEmpty() ? sentence("; may be left out") : sentence("; %1 when left out").arg(preset);
}

void writeSum(QTextStream& out, const Sum& sum, const SumContext& context, const Words& words) {
    out << text(sum.key) << ": " << sumTitle(sum, words) << '\n';
    for (const Input& input : sum.inputs)
        out << "  " << text(input.key).leftJustified(keyWidth) << ' '
            << plainNotation(inputName(input, words)) << ": " << allowedText(input, context, words)
            << absenceText(input, context, words) << '\n';
    for (const Result& result : sum.results)
        out << "  = " << text(result.key).leftJustified(keyWidth - 2) << ' '
            << plainNotation(resultName(result, words)) << '\n';
    out << "  loopwright sum " << text(sum.key) << ' ' << text(sum.example) << "\n\n";
}

void writeLine(QTextStream& out, const char* mark, const WorkingLine& line) {
    out << mark
        << (plainNotation(line.symbol).leftJustified(symbolWidth) + ' ' +
            line.value.leftJustified(valueWidth) + ' ' + line.from)
               .trimmed()
        << '\n';
}

void writeWorking(QTextStream& out, const Working& working, const Words& words) {
    for (const WorkingLine& line : termLines(working, words))
        writeLine(out, "  ", line);
    const QString source = sourceLine(working);
    out << "  " << plainNotation(text(working.formula)) << (source.isEmpty() ? QString() : "    " + source)
        << '\n';
    if (const auto line = resultLine(working, words)) writeLine(out, "> ", *line);
}

void writeWords(QTextStream& out, const Sum& sum, const Answer& answer, const Words& words) {
    for (const Result& result : sum.results)
        if (const auto* word = std::get_if<std::string_view>(&answer.value(result.key)))
            out << "> " << plainNotation(resultName(result, words)) << ": " << wordName(*word, words) << '\n';
}

} // namespace

std::string listText(const SumContext& context, const Words& words) {
    QString page;
    QTextStream out(&page);
    for (const Sum& sum : allSums())
        writeSum(out, sum, context, words);
    out << sentence(
               "A figure may carry its unit: \"9.6 kW\". Several, parted by commas, are answered one by one.")
        << '\n';
    return utf8(page);
}

std::string answerText(const Sum& sum, const Answers& answers, const SumContext& context,
                       const Words& words) {
    QString page;
    QTextStream out(&page);
    out << sumTitle(sum, words) << '\n';
    for (const Answer& each : answers.cases) {
        out << '\n';
        for (const Working& working : each.workings())
            writeWorking(out, working, words);
        writeWords(out, sum, each, words);
    }
    out << '\n'
        << sentence("By %1, %2. This does not replace competence; local codes and licensed practice decide.")
               .arg(text(context.rules.key), text(context.rules.revision))
        << '\n';
    return utf8(page);
}

} // namespace loopwright::sums
