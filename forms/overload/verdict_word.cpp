// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/verdict_word.h"

#include "forms/look/mark.h"

#include <QPainter>

#include <cmath>

namespace loopwright {
namespace {

constexpr double gap = 6;

} // namespace

VerdictWord::VerdictWord(const Appearance& appearance, Verdict verdict, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , verdict_(verdict) {
    set(verdict);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void VerdictWord::set(Verdict verdict) {
    const QString word = appearance_.words.word(wordKey(verdict));
    if (verdict == verdict_ && word == word_) return;
    verdict_ = verdict;
    word_ = word;
    setAccessibleName(word_);
    updateGeometry();
    update();
}

QFont VerdictWord::font() const {
    return appearance_.type.screen(ScreenText::Figure, isLoud(verdict_) ? Weight::Semibold : Weight::Regular);
}

QSize VerdictWord::sizeHint() const {
    const QFontMetricsF metrics(font());
    const double side = appearance_.type.scaled(mark_size::cell);
    return {static_cast<int>(std::ceil(side + gap + metrics.horizontalAdvance(word_))) + 1,
            static_cast<int>(std::ceil(metrics.height()))};
}

void VerdictWord::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QColor colour = appearance_.look().*inkOf(verdict_);
    const double side = appearance_.type.scaled(mark_size::cell);
    drawMark(painter, QRectF(0, (height() - side) / 2, side, side), markOf(verdict_), colour);
    painter.setPen(isLoud(verdict_) ? colour : appearance_.look().ink);
    painter.setFont(font());
    painter.drawText(rect().adjusted(static_cast<int>(side + gap), 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                     word_);
}

} // namespace loopwright
