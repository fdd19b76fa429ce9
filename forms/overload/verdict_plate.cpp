// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/verdict_plate.h"

#include "forms/frame/labels.h"
#include "forms/look/mark.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <QPainter>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int bar = 4, markSide = 18, indent = 38;

} // namespace

VerdictPlate::VerdictPlate(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , name_(new RoleLabel(appearance, ScreenText::PanelTitle, &Look::ink))
  , sentence_(new RoleLabel(appearance, ScreenText::Body, &Look::ink)) {
    sentence_->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(appearance.type.scaled(indent), 2, 0, 2);
    column->setSpacing(3);
    column->addWidget(name_);
    column->addWidget(sentence_);
}

void VerdictPlate::show(const Finding& finding) {
    verdict_ = finding.verdict;
    name_->setNotation(QStringLiteral("%1: %2").arg(checkName(finding, appearance_.words),
                                                    appearance_.words.word(wordKey(verdict_))));
    sentence_->setNotation(findingText(finding, appearance_.words));
    update();
}

QString VerdictPlate::said() const {
    return plainNotation(name_->notation() + QStringLiteral(". ") + sentence_->notation());
}

void VerdictPlate::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor colour = appearance_.look().*inkOf(verdict_);
    painter.fillRect(QRect(0, 0, bar, height()), colour);
    const double side = appearance_.type.scaled(markSide);
    drawMark(painter, QRectF(bar + 7, name_->y() + (name_->height() - side) / 2.0, side, side),
             markOf(verdict_), colour);
}

} // namespace loopwright
