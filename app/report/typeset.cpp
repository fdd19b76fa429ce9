// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/typeset.h"

#include "forms/look/rich_symbol.h"
#include "forms/words/notation.h"

#include <QRegularExpression>
#include <QTextLayout>

#include <algorithm>
#include <cmath>

namespace loopwright::report {
namespace {

constexpr double pointsPerInch = 72;
constexpr double millimetresPerInch = 25.4;
/// Spaced letters are not joined into ligatures, which a reader who searches the PDF for "office" would not
/// find. Too little to be seen, enough for Qt to count.
constexpr double ligatureBreak = 0.02;

/// Line height as a multiple of the size: titles are set closer than text that runs over lines.
double leadingOf(PageText role) {
    switch (role) {
    case PageText::Title:
    case PageText::Answer:
    case PageText::WorkingTitle:
    case PageText::Subject:
        return 1.3;
    default:
        return 1.42;
    }
}

/// A part of a line that is drawn in one way.
struct Piece {
    QString text;
    bool isSymbol = false;
};

std::vector<Piece> piecesOf(const QString& text, Notation notation) {
    if (notation == Notation::Plain || !text.contains(u'_')) return {{text, false}};
    std::vector<Piece> pieces;
    qsizetype from = 0;
    for (auto found = symbolPattern().globalMatch(text); found.hasNext();) {
        const QRegularExpressionMatch match = found.next();
        if (match.capturedStart() > from)
            pieces.push_back({text.mid(from, match.capturedStart() - from), false});
        pieces.push_back({match.captured(), true});
        from = match.capturedEnd();
    }
    if (from < text.size()) pieces.push_back({text.mid(from), false});
    return pieces;
}

/// A figure keeps its unit on its line and a day its month and year, also where somebody typed ordinary
/// spaces between them.
QString keptTogether(QString text) {
    static const QRegularExpression figureAndUnit(
        QStringLiteral("(?<=\\d) (?=(?:[kMm]?[ΩAVW]|kWh|ms|s|min|h|mm²|mm|m|°C|%)(?![\\p{L}\\d]))"));
    static const QRegularExpression date(
        QStringLiteral("(?<!\\d)(\\d{1,2}\\.?) (\\p{L}+\\.?) (\\d{4})(?!\\d)"));
    text.replace(date, QStringLiteral("\\1\u00A0\\2\u00A0\\3"));
    return text.replace(figureAndUnit, QStringLiteral("\u00A0"));
}

} // namespace

QFont fontOf(const TextStyle& style) {
    static const Type type; // which fonts exist does not change while the program runs
    QFont font = type.page(style.role, style.weight);
    font.setPixelSize(static_cast<int>(
        std::lround(font.pointSizeF() * style.scale * millimetresPerInch * mm / pointsPerInch)));
    font.setItalic(style.isItalic);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setLetterSpacing(QFont::AbsoluteSpacing, ligatureBreak);
    return font;
}

double baseLineOf(const QFontMetricsF& metrics, double lineHeight) {
    return (lineHeight - metrics.ascent() - metrics.descent()) / 2 + metrics.ascent();
}

const QFontMetricsF& Typesetter::metrics(const TextStyle& style) const {
    const QFont font = fontOf(style);
    const Key key{style.role, style.weight, style.isItalic, font.pixelSize()};
    const auto found = metrics_.find(key);
    return found != metrics_.end() ? found->second : metrics_.emplace(key, QFontMetricsF(font)).first->second;
}

double Typesetter::width(const QString& text, const TextStyle& style) const {
    return metrics(style).horizontalAdvance(text);
}

double Typesetter::symbolWidth(const QString& notation, const TextStyle& style) const {
    return loopwright::symbolWidth(notation, fontOf(style));
}

double Typesetter::lineHeight(const TextStyle& style) const {
    return fontOf(style).pixelSize() * leadingOf(style.role);
}

double Typesetter::richWidth(const QString& text, const TextStyle& style) const {
    double sum = 0;
    for (const Piece& piece : piecesOf(text, Notation::Symbols))
        sum += piece.isSymbol ? symbolWidth(piece.text, style) : width(piece.text, style);
    return sum;
}

QStringList Typesetter::lines(const QString& text, const TextStyle& style, double width) const {
    QStringList result;
    for (const QString& part : keptTogether(text).split(u'\n')) {
        if (part.trimmed().isEmpty()) continue;
        QTextLayout layout(part.trimmed(), fontOf(style));
        QTextOption option;
        option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
        layout.setTextOption(option);
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(width);
            result << layout.text().mid(line.textStart(), line.textLength()).trimmed();
        }
        layout.endLayout();
    }
    return result;
}

Box Typesetter::line(const QString& text, const TextStyle& style, double width, Align align,
                     Notation notation) const {
    const double height = lineHeight(style);
    Box box{width, height, {}};
    const std::vector<Piece> pieces = piecesOf(text, notation);
    if (pieces.size() == 1) {
        const QRectF place(0, 0, width, height);
        if (pieces.front().isSymbol)
            box.add(SymbolInk{place, text, style, align});
        else
            box.add(TextInk{place, text, style, align});
        return box;
    }
    const double used = richWidth(text, style);
    double at = align == Align::Right ? width - used : align == Align::Centre ? (width - used) / 2 : 0;
    for (const Piece& piece : pieces) {
        const double advance =
            piece.isSymbol ? symbolWidth(piece.text, style) : this->width(piece.text, style);
        const QRectF place(at, 0, advance, height);
        if (piece.isSymbol)
            box.add(SymbolInk{place, piece.text, style, Align::Left});
        else
            box.add(TextInk{place, piece.text, style, Align::Left});
        at += advance;
    }
    return box;
}

Stack Typesetter::paragraph(const QString& text, const TextStyle& style, double width, Align align,
                            Notation notation) const {
    // A subscript is narrower than the letters of its notation, so lines that were broken with it fit without
    // it.
    Stack stack;
    for (const QString& each : lines(text, style, width))
        stack.push_back(line(each, style, width, align, notation));
    return stack;
}

Stack Typesetter::fitted(const QString& text, const TextStyle& style, double width, Align align,
                         Notation notation, double smallest) const {
    if (text.isEmpty()) return {};
    const auto widthIn = [&](const TextStyle& tried) {
        return notation == Notation::Symbols ? richWidth(text, tried) : this->width(text, tried);
    };
    const double natural = widthIn(style);
    if (natural <= width) return {line(text, style, width, align, notation)};
    TextStyle smaller = style;
    // Sizes are whole hundredths of a millimetre; a little less than the quotient survives the rounding.
    smaller.scale = style.scale * std::max(smallest, 0.99 * width / natural);
    if (widthIn(smaller) <= width) return {line(text, smaller, width, align, notation)};
    smaller.scale = style.scale * smallest;
    return paragraph(text, smaller, width, align, notation);
}

Box Typesetter::shortened(const QString& text, const TextStyle& style, double width, Align align) const {
    return line(metrics(style).elidedText(text, Qt::ElideRight, width), style, width, align);
}

} // namespace loopwright::report
