// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/key_cap.h"

#include "forms/look/paint.h"

#include <QPainter>

namespace loopwright {

KeyCap::KeyCap(const QString& key, const Look& look, const Type& type, QWidget* parent)
  : QWidget(parent)
  , key_(key)
  , look_(look)
  , font_(type.screen(ScreenText::Note)) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize KeyCap::sizeHint() const {
    return keyCapSize(key_, font_).toSize();
}

void KeyCap::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    drawKeyCap(painter, rect(), key_, font_, look_);
}

} // namespace loopwright
