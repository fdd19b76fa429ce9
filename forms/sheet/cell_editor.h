// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"

#include <QLineEdit>
#include <QPointer>

class QLabel;

namespace loopwright {

/// The line in which a cell is typed. A refused text stays in it with the reason in a one-line panel under
/// the cell, until the text is changed or given up.
class CellEditor final : public QLineEdit {
    Q_OBJECT
  public:
    CellEditor(const Appearance& appearance, QWidget* parent);
    ~CellEditor() override;

    void refuse(const QString& sentence);
    bool isRefused() const { return !refusal_.isEmpty(); }
    QString refusal() const { return refusal_; }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void moveEvent(QMoveEvent* event) override;

  private:
    void withdrawRefusal();
    void placePanel();

    const Appearance& appearance_;
    QString refusal_;
    QPointer<QLabel> panel_; // a sibling, so that it may stand outside the cell
};

} // namespace loopwright
