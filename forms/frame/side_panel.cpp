// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/side_panel.h"

#include <QApplication>
#include <QSplitter>

#include <algorithm>

namespace loopwright {

SidePanel::SidePanel(QWidget& panel, QSplitter& splitter, Qt::Edge edge, int usualWidth, QObject* parent)
  : QObject(parent)
  , panel_(panel)
  , splitter_(splitter)
  , edge_(edge)
  , usualWidth_(usualWidth) {
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (floating_ && now && !panel_.isAncestorOf(now)) conceal();
    });
}

void SidePanel::setFloating(bool floating) {
    if (floating == floating_) return place();
    floating_ = floating;
    if (floating) {
        // A panel that was never laid out has no width worth keeping.
        if (panel_.isVisible()) usualWidth_ = std::max(panel_.width(), panel_.minimumWidth());
        panel_.setParent(splitter_.parentWidget());
        panel_.hide();
    } else {
        // The widest part, which is the middle, makes room; the others keep their widths.
        QList<int> sizes = splitter_.sizes();
        *std::max_element(sizes.begin(), sizes.end()) -= usualWidth_ + splitter_.handleWidth();
        const int at = edge_ == Qt::LeftEdge ? 0 : splitter_.count();
        sizes.insert(at, usualWidth_);
        splitter_.insertWidget(at, &panel_);
        panel_.show();
        splitter_.setSizes(sizes);
    }
    place();
}

void SidePanel::reveal() {
    if (floating_) {
        place();
        panel_.show();
        panel_.raise();
    }
    panel_.setFocus();
}

void SidePanel::conceal() {
    if (floating_) panel_.hide();
}

void SidePanel::place() {
    if (!floating_) return;
    const QRect room = splitter_.geometry();
    const int width = std::min(usualWidth_, room.width());
    const int left = edge_ == Qt::LeftEdge ? room.left() : room.right() + 1 - width;
    panel_.setGeometry(left, room.top(), width, room.height());
}

} // namespace loopwright
