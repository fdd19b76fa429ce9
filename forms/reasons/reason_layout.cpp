// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/reasons/reason_layout.h"

#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/look/rich_symbol.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QPainter>
#include <QTextDocument>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

constexpr double side = 14;
constexpr double sentenceLeft = 36;
constexpr double rowHeight = 30;
constexpr double sentenceTop = 7;
constexpr double marginRoom = 56; ///< right of the bar, the side included
constexpr double gap = 8;
constexpr double columnGap = 10;
constexpr double lineGap = 2;
constexpr double accentBar = 3;

/// A paragraph with subscripts, as wide as it may be.
void setUp(QTextDocument& document, const QString& text, const QFont& font, double width) {
    document.setDocumentMargin(0);
    document.setDefaultFont(font);
    document.setHtml(withScriptSize(richNotation(text), font));
    document.setTextWidth(width);
}

} // namespace

ReasonLayout::ReasonLayout(const Appearance& appearance, const Finding& finding, bool open, double width)
  : appearance_(appearance)
  , finding_(finding)
  , open_(open)
  , width_(width) {
    placeSentence();
    if (open_) placeWorking();
}

QFont ReasonLayout::font(Weight weight) const {
    return appearance_.type.screen(ScreenText::Figure, weight);
}

double ReasonLayout::textHeight(const QString& text, double width, Weight weight) const {
    QTextDocument document;
    setUp(document, text, font(weight), width);
    return document.size().height();
}

void ReasonLayout::placeSentence() {
    const QString sentence = findingText(finding_, appearance_.words);
    const Weight weight = open_ ? Weight::Semibold : Weight::Regular;
    const double bar = finding_.margin ? marginRoom + marginBarSize.width() + gap : side;
    const double room = width_ - sentenceLeft - bar;
    const double height = textHeight(sentence, room, weight);
    pieces_.push_back(
        {Piece::Kind::Sentence, {sentenceLeft, sentenceTop, room, height}, sentence, &Look::ink, weight});
    height_ = std::max(appearance_.type.scaled(rowHeight) * 1.0, std::ceil(height + 2 * sentenceTop));
}

std::vector<ReasonLayout::Line> ReasonLayout::workingLines() const {
    std::vector<Line> lines;
    for (const WorkingLine& term : termLines(*finding_.working, appearance_.words))
        lines.push_back({term.symbol, term.value, term.from});
    if (const auto result = resultLine(*finding_.working, appearance_.words)) {
        const Role ink = inkOf(finding_.verdict);
        lines.push_back({result->symbol, result->value, result->from, ink, ink, Weight::Semibold});
    }
    return lines;
}

void ReasonLayout::placeWorking() {
    if (!finding_.working->formula.empty()) placeFormula(text(finding_.working->formula));
    const auto lines = workingLines();
    double symbolRoom = 0, valueRoom = 0;
    for (const Line& line : lines) {
        symbolRoom = std::max(symbolRoom, symbolWidth(line.symbol, font(line.weight)) + columnGap);
        valueRoom =
            std::max(valueRoom, QFontMetricsF(font(line.weight)).horizontalAdvance(line.value) + columnGap);
    }
    for (const Line& line : lines)
        placeLine(line, symbolRoom, valueRoom);
    for (const MissingInput& missing : finding_.missing)
        placeParagraph(QCoreApplication::translate("Reasons", "Missing: %1")
                           .arg(missingText(missing, appearance_.words)),
                       &Look::cannotTell);
    if (const QString source = sourceLine(*finding_.working); !source.isEmpty())
        placeParagraph(source, &Look::inkSoft);
    height_ = std::ceil(height_ + gap);
}

/// Broken at spaces where it is too wide for one line.
void ReasonLayout::placeFormula(const QString& formula) {
    const double room = width_ - 2 * side;
    const double height = textHeight(QStringLiteral("X"), room);
    QString line;
    const auto put = [&] {
        pieces_.push_back({Piece::Kind::Symbol, {side, height_, room, height}, line, &Look::ink});
        height_ += height + lineGap;
    };
    for (const QString& word : formula.split(u' ')) {
        const QString longer = line.isEmpty() ? word : line + u' ' + word;
        if (!line.isEmpty() && symbolWidth(longer, font()) > room) {
            put();
            line = word;
        } else {
            line = longer;
        }
    }
    put();
    height_ += gap / 2;
}

void ReasonLayout::placeLine(const Line& line, double symbolRoom, double valueRoom) {
    const double fromLeft = side + symbolRoom + valueRoom;
    const double fromRoom = width_ - fromLeft - side;
    const double height = textHeight(QStringLiteral("X"), width_, line.weight);
    const double fromHeight = line.from.isEmpty() ? height : textHeight(line.from, fromRoom, line.weight);
    pieces_.push_back(
        {Piece::Kind::Symbol, {side, height_, symbolRoom, height}, line.symbol, line.ink, line.weight});
    pieces_.push_back({Piece::Kind::Plain,
                       {side + symbolRoom, height_, valueRoom, height},
                       line.value,
                       line.ink,
                       line.weight});
    pieces_.push_back({Piece::Kind::Sentence,
                       {fromLeft, height_, fromRoom, fromHeight},
                       line.from,
                       line.fromInk,
                       line.weight});
    height_ += std::max(height, fromHeight) + lineGap;
}

void ReasonLayout::placeParagraph(const QString& text, Role ink) {
    const double room = width_ - 2 * side;
    const double height = textHeight(text, room);
    pieces_.push_back({Piece::Kind::Sentence, {side, height_, room, height}, text, ink});
    height_ += height + lineGap;
}

void ReasonLayout::draw(QPainter& painter, const QPointF& at) const {
    const Look& look = appearance_.look();
    painter.save();
    painter.translate(at);
    if (open_) {
        painter.fillRect(QRectF(0, 0, width_, height_), look.sheet);
        painter.fillRect(QRectF(0, 0, accentBar, height_), look.*inkOf(finding_.verdict));
    }
    painter.fillRect(QRectF(0, height_ - 1, width_, 1), look.line);
    drawHead(painter);
    for (const Piece& piece : pieces_)
        drawPiece(painter, piece);
    painter.restore();
}

/// Mark, bar and margin, level with the first line of the sentence.
void ReasonLayout::drawHead(QPainter& painter) const {
    const Look& look = appearance_.look();
    const QColor ink = look.*inkOf(finding_.verdict);
    const double middle = appearance_.type.scaled(rowHeight) / 2.0;
    const double mark = appearance_.type.scaled(mark_size::reasons);
    drawMark(painter, {side, middle - mark / 2, mark, mark}, markOf(finding_.verdict), ink);
    if (!finding_.margin) return;
    const QRectF bar(width_ - marginRoom - marginBarSize.width(), middle - marginBarSize.height() / 2,
                     marginBarSize.width(), marginBarSize.height());
    drawMarginBar(painter, bar, finding_.margin, ink, look);
    painter.setPen(ink);
    painter.setFont(font());
    painter.drawText(QRectF(width_ - marginRoom, 0, marginRoom - side, 2 * middle),
                     Qt::AlignRight | Qt::AlignVCenter, marginText(finding_, appearance_.words));
}

void ReasonLayout::drawPiece(QPainter& painter, const Piece& piece) const {
    const QFont pieceFont = font(piece.weight);
    const QColor ink = appearance_.look().*piece.ink;
    painter.setFont(pieceFont);
    painter.setPen(ink);
    switch (piece.kind) {
    case Piece::Kind::Plain:
        painter.drawText(piece.place, Qt::AlignLeft | Qt::AlignTop | Qt::TextDontClip, piece.text);
        return;
    case Piece::Kind::Symbol:
        drawSymbol(painter, piece.place.topLeft() + QPointF(0, QFontMetricsF(pieceFont).ascent()), piece.text,
                   pieceFont);
        return;
    case Piece::Kind::Sentence:
        break;
    }
    QTextDocument document;
    setUp(document, piece.text, pieceFont, piece.place.width());
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, ink);
    painter.save();
    painter.translate(piece.place.topLeft());
    document.documentLayout()->draw(&painter, context);
    painter.restore();
}

} // namespace loopwright
