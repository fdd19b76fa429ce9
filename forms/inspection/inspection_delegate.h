// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/inspection/inspection_model.h"

#include <QStyledItemDelegate>

namespace loopwright {

class CellEditor;

/// How far the texts of a column stand from its left edge.
int textLeft(InspectionColumn column);

/// Draws items, results and remarks, and takes a remark that is typed.
class InspectionDelegate final : public QStyledItemDelegate {
    Q_OBJECT
  public:
    /// Both outlive the delegate.
    InspectionDelegate(const Appearance& appearance, InspectionModel& model, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;

    /// How high the text of an item or a remark stands in a column of that width.
    int heightFor(const QModelIndex& index, int width) const;

  signals:
    /// A remark was stored; the keyboard goes on as the key that ended it says.
    void entered(int key);
    void refused(const QString& sentence) const;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void paintHeading(QPainter& painter, const QRect& row, const QString& text) const;
    void paintResult(QPainter& painter, const QRect& room, const QModelIndex& index) const;

    const Appearance& appearance_;
    InspectionModel& model_;
};

} // namespace loopwright
