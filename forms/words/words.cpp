// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/words.h"

#include "core/phrases/phrases.h"

#include <QCoreApplication>
#include <QDate>
#include <QRegularExpression>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

constexpr char16_t minusSign = u'\u2212';
constexpr char16_t thinSpace = u'\u2009';
constexpr char16_t noBreakSpace = u'\u00A0';
constexpr std::string_view thinSpaceUtf8 = "\u2009";
constexpr qsizetype groupLength = 3;
constexpr int significantDigits = 3;

/// Of the context that the phrase tables are marked with for lupdate.
constexpr char phraseContext[] = "Phrases";

/// The phrase's text in the reader's language, or the key itself.
QString translated(std::string_view key) {
    const std::optional<Phrase> found = phrase(key);
    if (!found) return text(key);
    return QCoreApplication::translate(phraseContext, std::string(found->text).c_str());
}

bool isSingular(const Message& message) {
    const auto count = std::ranges::find_if(message.arguments, [](const Argument& argument) {
        return std::holds_alternative<std::int64_t>(argument);
    });
    return count != message.arguments.end() && std::get<std::int64_t>(*count) == 1;
}

QString filled(const QString& pattern, const QStringList& arguments) {
    QString result;
    qsizetype from = 0;
    static const QRegularExpression place(QStringLiteral("\\{(\\d+)\\}"));
    for (auto places = place.globalMatch(pattern); places.hasNext();) {
        const QRegularExpressionMatch found = places.next();
        result += QStringView(pattern).mid(from, found.capturedStart() - from);
        result += arguments.value(found.capturedView(1).toInt(), found.captured());
        from = found.capturedEnd();
    }
    result += QStringView(pattern).mid(from);
    return result;
}

int magnitudeOf(double value) {
    return value == 0 ? 0 : static_cast<int>(std::floor(std::log10(std::abs(value))));
}

int decimalsFor(double value) {
    return value == 0 ? 0 : std::max(0, significantDigits - 1 - magnitudeOf(value));
}

/// A figure that was worked out, without digits that say more than it knows: 1 304 241 to 1 300 000. People
/// read the thousands of smaller ones as they are.
double withoutNoise(double value) {
    constexpr double wholeUpTo = 1e4;
    if (std::abs(value) < wholeUpTo) return value;
    const double step = std::pow(10, magnitudeOf(value) - significantDigits + 1);
    return std::round(value / step) * step;
}

/// Of plain digits with at most one decimal point: 0.50 to 0.5, 30.0 to 30.
QString withoutTrailingZeros(QString digits, const QString& decimalPoint, QChar zero) {
    if (!digits.contains(decimalPoint)) return digits;
    while (digits.endsWith(zero))
        digits.chop(1);
    if (digits.endsWith(decimalPoint)) digits.chop(decimalPoint.size());
    return digits;
}

void groupThousands(QString& digits, const QString& decimalPoint) {
    const qsizetype point = digits.indexOf(decimalPoint);
    for (qsizetype at = (point < 0 ? digits.size() : point) - groupLength; at > 0; at -= groupLength)
        digits.insert(at, thinSpace);
}

} // namespace

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

std::string utf8(const QString& text) {
    return text.toStdString();
}

QString Words::sentence(const Message& message) const {
    QStringList arguments;
    for (const Argument& argument : message.arguments) {
        if (const auto* name = std::get_if<std::string>(&argument))
            arguments << text(*name);
        else if (const auto* count = std::get_if<std::int64_t>(&argument))
            arguments << number(*count);
        else if (const auto* measured = std::get_if<Measure>(&argument))
            arguments << measure(*measured);
        else
            arguments << word(std::get<Word>(argument).key);
    }
    if (isSingular(message)) {
        const std::string singular = std::string(message.key) + ".one";
        if (phrase(singular)) return filled(translated(singular), arguments);
    }
    return filled(translated(message.key), arguments);
}

QString Words::word(std::string_view phraseKey) const {
    return translated(phraseKey);
}

QString Words::measure(const Measure& measure) const {
    const QString sign = measure.bound == Bound::OrMore   ? QStringLiteral(">")
                         : measure.bound == Bound::OrLess ? QStringLiteral("<")
                                                          : QString();
    const QString figure = sign + number(measure.value, measure.decimals);
    return measure.unit.symbol.empty() ? figure : figure + noBreakSpace + text(measure.unit.symbol);
}

QString Words::number(double value, int decimals) const {
    if (std::isnan(value)) return QStringLiteral("?");
    if (std::isinf(value)) return (value < 0 ? QString(minusSign) : QString()) + QChar(u'\u221E');
    QLocale plain = locale_;
    plain.setNumberOptions(QLocale::OmitGroupSeparator);
    const QString zero = plain.zeroDigit();
    QString digits = decimals < 0 ? plain.toString(withoutNoise(std::abs(value)), 'f', decimalsFor(value))
                                  : plain.toString(std::abs(value), 'f', decimals);
    if (decimals < 0) digits = withoutTrailingZeros(digits, plain.decimalPoint(), zero.back());
    const bool isZero = digits == zero || std::ranges::all_of(digits, [&](QChar digit) {
                            return !digit.isDigit() || digit.digitValue() == 0;
                        });
    groupThousands(digits, plain.decimalPoint());
    return value < 0 && !isZero ? minusSign + digits : digits;
}

QString Words::number(std::int64_t value) const {
    QLocale plain = locale_;
    plain.setNumberOptions(QLocale::OmitGroupSeparator);
    QString digits = plain.toString(static_cast<qlonglong>(value));
    const bool negative = value < 0;
    if (negative) digits.remove(plain.negativeSign());
    groupThousands(digits, plain.decimalPoint());
    return negative ? minusSign + digits : digits;
}

QString Words::figure(const EntryText& entry) const {
    switch (entry.state) {
    case EntryState::Missing:
        return {};
    case EntryState::Value:
        return number(entry.value, entry.decimals);
    case EntryState::Above:
        return u'>' + number(entry.value, entry.decimals);
    case EntryState::Below:
        return u'<' + number(entry.value, entry.decimals);
    case EntryState::Limited:
    case EntryState::NotApplicable:
        break;
    }
    return text(formatFigure(entry));
}

QString Words::date(const Date& date) const {
    if (!date.ok()) return {};
    // The long pattern is the locale's own order; the weekday is noise in a record.
    static const QRegularExpression weekday(QStringLiteral("(^dddd?[,.]?\\s*)|([,]?\\s*dddd?$)"));
    const QString pattern = locale_.dateFormat(QLocale::LongFormat).remove(weekday);
    return locale_.toString(QDate(static_cast<int>(date.year()),
                                  static_cast<int>(static_cast<unsigned>(date.month())),
                                  static_cast<int>(static_cast<unsigned>(date.day()))),
                            pattern);
}

NumberFormat Words::numberFormat() const {
    // Never the locale's own group sign: where that is a point, "0.32" from the number pad would become 32.
    return {locale_.decimalPoint() == QStringLiteral(",") ? ',' : '.', thinSpaceUtf8};
}

} // namespace loopwright
