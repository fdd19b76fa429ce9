// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/cell_editor.h"

#include "forms/look/paint.h"

#include <QAccessible>
#include <QLabel>
#include <QPainter>

#include <algorithm>

namespace loopwright {

CellEditor::CellEditor(const Appearance& appearance, QWidget* parent)
  : QLineEdit(parent)
  , appearance_(appearance) {
    setFrame(false);
    setFont(appearance.type.screen(ScreenText::Figure));
    setPalette(selectedTextPalette(appearance.look()));
    setTextMargins(appearance.type.scaled(2), 0, appearance.type.scaled(2), 0);
    connect(this, &QLineEdit::textEdited, this, &CellEditor::withdrawRefusal);
}

CellEditor::~CellEditor() {
    delete panel_;
}

void CellEditor::refuse(const QString& sentence) {
    refusal_ = sentence;
    if (!panel_) {
        panel_ = new QLabel(parentWidget());
        panel_->setObjectName(QStringLiteral("refusal"));
        panel_->setFont(appearance_.type.screen(ScreenText::Figure));
        panel_->setFrameStyle(QFrame::Box | QFrame::Plain);
        panel_->setAutoFillBackground(true);
        // Otherwise it takes the roles of the sheet that it lies on, whose colours are others.
        panel_->setBackgroundRole(QPalette::Window);
        panel_->setForegroundRole(QPalette::WindowText);
        QPalette colours = panel_->palette();
        colours.setColor(QPalette::Window, appearance_.look().failsWash);
        colours.setColor(QPalette::WindowText, appearance_.look().fails);
        panel_->setPalette(colours);
        panel_->setMargin(appearance_.type.scaled(4));
    }
    panel_->setText(sentence);
    placePanel();
    panel_->show();
    panel_->raise();
    QAccessibleEvent announcement(panel_.data(), QAccessible::Alert);
    QAccessible::updateAccessibility(&announcement);
    update();
}

void CellEditor::withdrawRefusal() {
    refusal_.clear();
    delete panel_;
    update();
}

/// Under the cell; above it where there is no room below, and never past the sheet's edges.
void CellEditor::placePanel() {
    if (!panel_) return;
    const QRect room = parentWidget()->rect();
    panel_->setWordWrap(false);
    QSize size = panel_->sizeHint();
    if (size.width() > room.width()) {
        panel_->setWordWrap(true);
        size = {room.width(), panel_->heightForWidth(room.width())};
    }
    const int left = std::clamp(x(), 0, std::max(0, room.width() - size.width()));
    const bool fitsBelow = geometry().bottom() + size.height() < room.height();
    panel_->setGeometry({{left, fitsBelow ? geometry().bottom() + 1 : y() - size.height()}, size});
}

void CellEditor::moveEvent(QMoveEvent* event) {
    QLineEdit::moveEvent(event);
    placePanel();
}

void CellEditor::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    QPainter painter(this);
    Look ring = appearance_.look();
    if (isRefused()) ring.focus = ring.fails;
    drawFocusRing(painter, rect(), ring);
}

} // namespace loopwright
