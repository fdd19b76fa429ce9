// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/labels.h"

#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/look/rich_symbol.h"
#include "forms/words/notation.h"

#include <QEvent>
#include <QPainter>

#include <array>
#include <cmath>

namespace loopwright {
namespace {

constexpr int markGap = 4;
constexpr int partGap = 12;

QFont numberFont(const Appearance& appearance) {
    return appearance.type.screen(ScreenText::Figure, Weight::Semibold);
}

} // namespace

RoleLabel::RoleLabel(const Appearance& appearance, ScreenText text, Role ink, Weight weight, QWidget* parent)
  : QLabel(parent)
  , appearance_(appearance)
  , ink_(ink) {
    setFont(appearance.type.screen(text, weight));
    setTextFormat(Qt::RichText);
    adopt();
}

void RoleLabel::setNotation(const QString& notation) {
    take(notation, richNotation(notation));
}

void RoleLabel::setFormula(const QString& notation) {
    take(notation, richSymbol(notation));
}

void RoleLabel::take(const QString& notation, const QString& html) {
    notation_ = notation;
    setText(withScriptSize(html, font()));
    setAccessibleName(plainNotation(notation));
}

/// A change of look reaches widgets as a change of the application's palette.
void RoleLabel::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::PaletteChange &&
        palette().color(QPalette::WindowText) != appearance_.look().*ink_)
        adopt();
}

void RoleLabel::adopt() {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, appearance_.look().*ink_);
    setPalette(colours);
}

KeyCap::KeyCap(const Appearance& appearance, const QString& keys, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , keys_(keys) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize KeyCap::sizeHint() const {
    return keyCapSize(keys_, appearance_.type.screen(ScreenText::Note)).toSize() + QSize(1, 1);
}

void KeyCap::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    drawKeyCap(painter, rect(), keys_, appearance_.type.screen(ScreenText::Note), appearance_.look());
}

TallyLine::TallyLine(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void TallyLine::setTally(const Tally& tally) {
    tally_ = tally;
    QStringList said;
    for (const auto& [verdict, word] : parts())
        said << appearance_.words.number(std::int64_t{tally_.of(verdict)}) + u' ' + word;
    setAccessibleName(said.join(QStringLiteral(", ")));
    updateGeometry();
    update();
}

std::vector<std::pair<Verdict, QString>> TallyLine::parts() const {
    const std::array all{
        std::pair(Verdict::Fails, tally_.of(Verdict::Fails) == 1 ? tr("fails") : tr("fail")),
        std::pair(Verdict::Close, tr("close")), std::pair(Verdict::CannotTell, tr("can’t tell")),
        std::pair(Verdict::Holds, tally_.of(Verdict::Holds) == 1 ? tr("holds") : tr("hold"))};
    std::vector<std::pair<Verdict, QString>> found;
    for (const auto& part : all)
        if (tally_.of(part.first) > 0) found.push_back(part);
    return found;
}

QSize TallyLine::sizeHint() const {
    const QFontMetrics words(appearance_.type.screen(ScreenText::Figure));
    const QFontMetrics numbers(numberFont(appearance_));
    int width = 0;
    for (const auto& [verdict, word] : parts())
        width += appearance_.type.scaled(mark_size::column) + markGap +
                 numbers.horizontalAdvance(appearance_.words.number(std::int64_t{tally_.of(verdict)})) +
                 markGap + words.horizontalAdvance(word) + partGap;
    return {width, words.height()};
}

void TallyLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QFont words = appearance_.type.screen(ScreenText::Figure);
    const QFont numbers = numberFont(appearance_);
    int left = 0;
    for (const auto& [verdict, word] : parts()) {
        const QColor ink = appearance_.look().*inkOf(verdict);
        const int side = appearance_.type.scaled(mark_size::column);
        drawMark(painter, QRect(left, (height() - side) / 2, side, side), markOf(verdict), ink);
        left += side + markGap;
        painter.setPen(ink);
        for (const auto& [font, text] :
             {std::pair(numbers, appearance_.words.number(std::int64_t{tally_.of(verdict)})),
              std::pair(words, word)}) {
            painter.setFont(font);
            painter.drawText(QRect(left, 0, width() - left, height()), Qt::AlignVCenter | Qt::AlignLeft,
                             text);
            left += QFontMetrics(font).horizontalAdvance(text) + markGap;
        }
        left += partGap - markGap;
    }
}

} // namespace loopwright
