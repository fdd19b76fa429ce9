// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"

#include <QStyledItemDelegate>

namespace loopwright {

/// A row of Places or of the visits: icon, name, and at the right its mark and number, or its state. A name
/// that is too long ends in an ellipsis; its tool tip says it whole.
class PlaceDelegate final : public QStyledItemDelegate {
    Q_OBJECT
  public:
    PlaceDelegate(const Appearance& appearance, QObject* parent);
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

  private:
    /// Draws what stands at the right end of a row and returns how much room it took.
    int paintRight(QPainter& painter, const QRect& row, const QModelIndex& index) const;
    const Appearance& appearance_;
};

} // namespace loopwright
