// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/sum_words.h"

#include <QCoreApplication>

#include <cmath>

namespace loopwright::sums {
namespace {

QString sentence(const char* source) {
    return QCoreApplication::translate("Sums", source);
}

QString named(const Words& words, const char* what, std::string_view key) {
    return words.word(std::string("sum.") + what + "." + std::string(key));
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

} // namespace

QString sumTitle(const Sum& sum, const Words& words) {
    return words.word("sum." + std::string(sum.key) + ".title");
}

QString inputName(const Input& input, const Words& words) {
    return named(words, "input", input.key);
}

QString resultName(const Result& result, const Words& words) {
    return named(words, "result", result.key);
}

QString optionName(const Input& input, const std::string& option, const Words& words) {
    return input.optionWords.empty() ? text(option) : words.word(std::string(input.optionWords) + option);
}

QString wordName(std::string_view word, const Words& words) {
    return named(words, "word", word);
}

QString rangeText(const Input& input, const Words& words) {
    const auto end = [&](double base) { return endText(input.unit.fromBase(base), words); };
    QString range = sentence("%1 to %2").arg(end(input.range.least), end(input.range.most));
    if (!input.unit.symbol.empty()) range += QChar(QChar::Nbsp) + text(input.unit.symbol);
    return input.range.zero && input.range.least > 0 ? range + sentence(", or 0") : range;
}

QString presetText(const Input& input, const SumContext& context, const Words& words) {
    if (input.standard)
        return words.measure({input.unit.fromBase(input.standard(context).value), input.unit, -1});
    return text(input.preset);
}

} // namespace loopwright::sums
