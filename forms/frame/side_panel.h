// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>

class QSplitter;
class QWidget;

namespace loopwright {

/// A panel at the side of the work area: docked in the splitter while there is room, otherwise laid over its
/// edge and shown only while somebody uses it.
class SidePanel final : public QObject {
    Q_OBJECT
  public:
    /// `splitter` holds the panel at its left or right end and fills `host`; all outlive this.
    SidePanel(QWidget& panel, QSplitter& splitter, Qt::Edge edge, int usualWidth, QObject* parent);

    /// Docked or laid over, as `host` has room.
    void setFloating(bool floating);
    bool isFloating() const { return floating_; }
    /// Shows a panel that is laid over, and gives it the keyboard.
    void reveal();
    /// Hides a panel that is laid over; a docked one stays.
    void conceal();
    /// Keeps a panel that is laid over at its edge.
    void place();

  private:
    QWidget& panel_;
    QSplitter& splitter_;
    Qt::Edge edge_;
    int usualWidth_;
    bool floating_ = false;
};

} // namespace loopwright
