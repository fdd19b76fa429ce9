// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sums/sums_text.h"

#include "core/sums/registry.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>
#include <QTextStream>

#include <cmath>

namespace loopwright::sums {
namespace {

constexpr int keyWidth = 28;
constexpr int symbolWidth = 10;
constexpr int valueWidth = 16;

QString sentence(const char* source) {
    return QCoreApplication::translate("Sums", source);
}

QString nameOf(const Words& words, const char* what, std::string_view key) {
    return plainNotation(words.word(std::string("sum.") + what + "." + std::string(key)));
}

/// Ends of a range: as people write them, or with an exponent where that would be a row of zeros.
QString endText(double value, const Words& words) {
    constexpr double smallest = 1e-3, largest = 1e5;
    const double size = std::abs(value);
    return value == 0 || (size >= smallest && size <= largest)
               ? words.number(value, -1)
               : QString::number(value, 'g', 6)
                     .replace(QStringLiteral("e+0"), QStringLiteral("e"))
                     .replace(QStringLiteral("e-0"), QStringLiteral("e-"))
                     .replace(QStringLiteral("e+"), QStringLiteral("e"));
}

QString rangeText(const Input& input, const Words& words) {
    const auto end = [&](double base) { return endText(input.unit.fromBase(base), words); };
    QString range = sentence("%1 to %2").arg(end(input.range.least), end(input.range.most));
    if (!input.unit.symbol.empty()) range += QChar(QChar::Nbsp) + text(input.unit.symbol);
    return input.range.zero && input.range.least > 0 ? range + sentence(", or 0") : range;
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
    if (input.standard)
        return sentence("; %1 when left out")
            .arg(words.measure({input.unit.fromBase(input.standard(context).value), input.unit, -1}));
    if (!input.preset.empty()) return sentence("; %1 when left out").arg(text(input.preset));
    return sentence("; may be left out");
}

void writeSum(QTextStream& out, const Sum& sum, const SumContext& context, const Words& words) {
    out << text(sum.key) << ": " << words.word("sum." + std::string(sum.key) + ".title") << '\n';
    for (const Input& input : sum.inputs)
        out << "  " << text(input.key).leftJustified(keyWidth) << ' ' << nameOf(words, "input", input.key)
            << ": " << allowedText(input, context, words) << absenceText(input, context, words) << '\n';
    for (const Result& result : sum.results)
        out << "  = " << text(result.key).leftJustified(keyWidth - 2) << ' '
            << nameOf(words, "result", result.key) << '\n';
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
            out << "> " << nameOf(words, "result", result.key) << ": " << nameOf(words, "word", *word)
                << '\n';
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
    out << words.word("sum." + std::string(sum.key) + ".title") << '\n';
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
