// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/rich_symbol.h"

#include <QFontMetricsF>
#include <QPainter>

#include <cmath>

namespace loopwright {
namespace {

using Level = SymbolRun::Level;

constexpr double smallScale = 0.74; ///< of an em
constexpr double dropBelow = 0.25;  ///< of an em
constexpr double riseAbove = 0.38;  ///< of an em; keeps the foot of a superscript above the x-height's middle
constexpr char16_t minusSign = u'\u2212';

/// Ohm is a unit and the increment sign an operator; neither is a symbol of a quantity.
bool isLetter(QChar c) {
    return c.isLetter() && c != u'Ω' && c != u'∆';
}

class Reader {
  public:
    explicit Reader(QStringView notation)
      : rest_(notation) {}

    std::vector<SymbolRun> read() {
        while (!rest_.isEmpty()) {
            if (rest_.front() == u'_')
                readScript(Level::Below);
            else if (rest_.front() == u'^')
                readScript(Level::Above);
            else if (isLetter(rest_.front()))
                readLetters();
            else {
                add(rest_.front(), Level::Line, false);
                rest_ = rest_.mid(1);
            }
        }
        return std::move(runs_);
    }

  private:
    void add(QStringView text, Level level, bool italic) {
        if (text.isEmpty()) return;
        QString shown = text.toString();
        shown.replace(u'-', minusSign);
        if (!runs_.empty() && runs_.back().level == level && runs_.back().italic == italic)
            runs_.back().text += shown;
        else
            runs_.push_back({shown, level, italic});
    }
    void add(QChar character, Level level, bool italic) { add(QStringView(&character, 1), level, italic); }

    /// One letter alone is a quantity. A longer word ("on", "max"), the base of an exponential and a unit
    /// after a number are not.
    void readLetters() {
        qsizetype length = 1;
        while (length < rest_.size() && isLetter(rest_[length]))
            ++length;
        const QStringView letters = rest_.left(length);
        const QChar next = length < rest_.size() ? rest_[length] : QChar();
        const bool isExponentialBase = letters == QStringLiteral("e") && next == u'^';
        const bool isUnit = next != u'_' && followsNumber();
        add(letters, Level::Line, length == 1 && !isExponentialBase && !isUnit);
        rest_ = rest_.mid(length);
    }

    bool followsNumber() const {
        if (runs_.empty() || runs_.back().level != Level::Line) return false;
        const QString before = runs_.back().text;
        const QString trimmed = before.trimmed();
        return trimmed.size() < before.size() && !trimmed.isEmpty() && trimmed.back().isDigit();
    }

    void readScript(Level level) {
        rest_ = rest_.mid(1);
        if (!rest_.isEmpty() && rest_.front() == u'{') {
            const qsizetype end = rest_.indexOf(u'}');
            add(rest_.mid(1, (end < 0 ? rest_.size() : end) - 1), level, false);
            rest_ = end < 0 ? QStringView() : rest_.mid(end + 1);
            return;
        }
        const qsizetype length = scriptLength(level);
        add(rest_.left(length), level, false);
        rest_ = rest_.mid(length);
    }

    /// Letters and digits, joined by commas or points between them: "s,max", "0.5"; a superscript may begin
    /// with a minus.
    qsizetype scriptLength(Level level) const {
        qsizetype length = level == Level::Above && !rest_.isEmpty() && rest_.front() == u'-' ? 1 : 0;
        while (length < rest_.size()) {
            const QChar c = rest_[length];
            const bool joins =
                (c == u',' || c == u'.') && length + 1 < rest_.size() && rest_[length + 1].isLetterOrNumber();
            if (!c.isLetterOrNumber() && !joins && c != u'∆') break;
            ++length;
        }
        return length;
    }

    QStringView rest_;
    std::vector<SymbolRun> runs_;
};

QFont fontOf(const SymbolRun& run, QFont font, Slant slant) {
    font.setItalic(run.italic && slant == Slant::Quantities);
    if (run.level == Level::Line) return font;
    if (font.pixelSize() > 0)
        font.setPixelSize(qMax(1, qRound(font.pixelSize() * smallScale)));
    else
        font.setPointSizeF(font.pointSizeF() * smallScale);
    return font;
}

QFontMetricsF metricsOf(const QFont& font, QPaintDevice* device) {
    return device ? QFontMetricsF(font, device) : QFontMetricsF(font);
}

/// The size of the font on the device, which is what "em" means.
double emOf(const QFont& font, QPaintDevice* device) {
    constexpr double pointsPerInch = 72;
    if (font.pixelSize() > 0) return font.pixelSize();
    return font.pointSizeF() * device->logicalDpiY() / pointsPerInch;
}

} // namespace

std::vector<SymbolRun> symbolRuns(QStringView notation) {
    return Reader(notation).read();
}

QString richSymbol(QStringView notation) {
    QString html;
    for (const SymbolRun& run : symbolRuns(notation)) {
        QString piece = run.text.toHtmlEscaped();
        if (run.italic) piece = QStringLiteral("<i>%1</i>").arg(piece);
        if (run.level == Level::Below) piece = QStringLiteral("<sub>%1</sub>").arg(piece);
        if (run.level == Level::Above) piece = QStringLiteral("<sup>%1</sup>").arg(piece);
        html += piece;
    }
    return html;
}

QString withScriptSize(QString html, const QFont& font) {
    if (font.pointSizeF() <= 0) return html; // given in pixels, as none of the look's are
    // The least size of which Qt's two thirds, from and to whole points, are the ones that are wanted.
    const double asked = std::ceil(1.5 * qRound(font.pointSizeF() * smallScale)) - 0.5;
    for (const char* tag : {"sub", "sup"})
        html.replace(QStringLiteral("<%1>").arg(QLatin1String(tag)),
                     QStringLiteral("<%1 style=\"font-size:%2pt\">").arg(QLatin1String(tag)).arg(asked));
    return html;
}

double symbolWidth(QStringView notation, const QFont& font, QPaintDevice* device, Slant slant) {
    double width = 0;
    for (const SymbolRun& run : symbolRuns(notation))
        width += metricsOf(fontOf(run, font, slant), device).horizontalAdvance(run.text);
    return width;
}

double drawSymbol(QPainter& painter, const QPointF& baseLine, QStringView notation, const QFont& font,
                  Slant slant) {
    const double em = emOf(font, painter.device());
    QPointF at = baseLine;
    painter.save();
    for (const SymbolRun& run : symbolRuns(notation)) {
        const QFont runFont = fontOf(run, font, slant);
        const double shift = run.level == Level::Below   ? dropBelow * em
                             : run.level == Level::Above ? -riseAbove * em
                                                         : 0;
        painter.setFont(runFont);
        painter.drawText(at + QPointF(0, shift), run.text);
        at.rx() += metricsOf(runFont, painter.device()).horizontalAdvance(run.text);
    }
    painter.restore();
    return at.x() - baseLine.x();
}

} // namespace loopwright
