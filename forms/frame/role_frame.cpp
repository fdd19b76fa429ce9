// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/role_frame.h"

#include <QPainter>

namespace loopwright {

RoleFrame::RoleFrame(const Appearance& appearance, Role fill, Qt::Edges edges, Role edge, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , fill_(fill)
  , edges_(edges)
  , edge_(edge) {
    setAttribute(Qt::WA_OpaquePaintEvent);
}

void RoleFrame::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), appearance_.look().*fill_);
    const QColor ink = appearance_.look().*edge_;
    if (edges_ & Qt::TopEdge) painter.fillRect(0, 0, width(), 1, ink);
    if (edges_ & Qt::BottomEdge) painter.fillRect(0, height() - 1, width(), 1, ink);
    if (edges_ & Qt::LeftEdge) painter.fillRect(0, 0, 1, height(), ink);
    if (edges_ & Qt::RightEdge) painter.fillRect(width() - 1, 0, 1, height(), ink);
}

} // namespace loopwright
