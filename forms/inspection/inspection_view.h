// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/inspection/inspection_delegate.h"
#include "forms/inspection/inspection_model.h"

#include <QTableView>

#include <array>

namespace loopwright {

/// A key of the keyboard and the result that it gives to the current item.
struct ResultKey {
    char key;
    InspectionResult result;
};
/// Figures, because they are where one hand finds them on every keyboard; in the order in which they are
/// offered.
inline constexpr std::array resultKeys{
    ResultKey{'1', InspectionResult::InOrder}, ResultKey{'2', InspectionResult::Observed},
    ResultKey{'3', InspectionResult::Limited}, ResultKey{'4', InspectionResult::NotApplicable},
    ResultKey{'0', InspectionResult::NotLooked}};

/// The list of items. One key gives the current item its result and goes on to the next; a letter begins a
/// remark.
class InspectionView final : public QTableView {
    Q_OBJECT
  public:
    InspectionView(const Appearance& appearance, InspectionModel& model, QWidget* parent = nullptr);

    /// Gives the current item a result and goes on to the next.
    void choose(InspectionResult result);
    /// Goes to the next item nobody has looked at; false when there is none.
    bool goToNextOpen();

  signals:
    void currentItemChanged(const QModelIndex& index);
    /// Something could not be stored; the sentence is for the status line.
    void refused(const QString& sentence);

  protected:
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

  private:
    void refresh();
    void layOut();
    /// The item `step` items further in the same column, or the same one at the end.
    QModelIndex itemAfter(const QModelIndex& from, int step) const;
    void goTo(int row, InspectionColumn column);
    void goOn(int key);

    const Appearance& appearance_;
    InspectionModel& model_;
    InspectionDelegate* delegate_;
};

} // namespace loopwright
