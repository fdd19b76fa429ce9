// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"

#include <QWidget>

namespace loopwright {

/// A surface filled with a role of the look, with a hairline along some of its edges.
class RoleFrame : public QWidget {
    Q_OBJECT
  public:
    RoleFrame(const Appearance& appearance, Role fill, Qt::Edges edges = {}, Role edge = &Look::line,
              QWidget* parent = nullptr);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Appearance& appearance_;
    Role fill_;
    Qt::Edges edges_;
    Role edge_;
};

} // namespace loopwright
