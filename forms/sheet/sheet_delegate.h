// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"

#include <QStyledItemDelegate>

namespace loopwright {

class CellEditor;
class SheetModel;

/// Draws what a cell says and takes what is typed into it.
class SheetDelegate final : public QStyledItemDelegate {
    Q_OBJECT
  public:
    /// Both outlive the delegate.
    SheetDelegate(const Appearance& appearance, SheetModel& model, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;

    /// How much room a cell's text needs with its mark or sign.
    int neededWidth(const QModelIndex& index) const;

  signals:
    /// The editor has stored its text; the keyboard goes on as the key that ended it says.
    void entered(int key, bool withControl);
    /// A text was given up because it could not be stored and the keyboard had gone elsewhere.
    void refused(const QString& sentence) const;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void endEditing(CellEditor& editor, int key, bool withControl);

    const Appearance& appearance_;
    SheetModel& model_;
};

} // namespace loopwright
