// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/log_picture.h"
#include "core/overload/pictures.h"
#include "forms/frame/appearance.h"

#include <qcustomplot.h>

#include <variant>

namespace loopwright {

/// A picture of an overload on the screen. It says in words what it shows where the pointer is.
class PlotView final : public QCustomPlot {
    Q_OBJECT
  public:
    explicit PlotView(const Appearance& appearance, QWidget* parent = nullptr);

    void show(overload::TimeCurrentPicture picture);
    void show(overload::HeatPicture picture);
    void show(overload::LogPicture picture);
    /// Draws nothing until the next show().
    void empty();
    /// Draws again in the look that is in force now.
    void refresh();

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  signals:
    void pointedAt(const QString& reading); ///< empty where there is nothing to read

  protected:
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    const Appearance& appearance_;
    std::variant<std::monostate, overload::TimeCurrentPicture, overload::HeatPicture, overload::LogPicture>
        picture_;
};

} // namespace loopwright
