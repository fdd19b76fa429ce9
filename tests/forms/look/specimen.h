// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/icons.h"
#include "forms/look/look.h"
#include "forms/look/type.h"

#include <QWidget>

namespace loopwright {

/// Every mark, small drawing and text role of a look, painted at the sizes at which they stand on the screen.
class DrawingSpecimen final : public QWidget {
    Q_OBJECT
  public:
    DrawingSpecimen(const Look& look, const Type& type, const Icons& icons, QWidget* parent = nullptr);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double paintMarks(QPainter& painter, double y);
    double paintBars(QPainter& painter, double y);
    double paintTexts(QPainter& painter, double y);
    double paintIcons(QPainter& painter, double y);

    const Look& look_;
    const Type& type_;
    const Icons& icons_;
};

/// Every kind of control in its states, with names by which tests find them.
QWidget* controlSpecimen(const Look& look, const Type& type, const Icons& icons);

} // namespace loopwright
