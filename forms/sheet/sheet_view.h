// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/sheet/sheet_delegate.h"
#include "forms/sheet/sheet_header.h"
#include "forms/sheet/sheet_model.h"

#include <QTableView>

#include <map>

class QMenu;

namespace loopwright {

/// A board's sheet: circuits down, readings across. Way and Circuit stay where they are when it scrolls.
class SheetView final : public QTableView {
    Q_OBJECT
  public:
    /// Both outlive the view.
    SheetView(const Appearance& appearance, SheetModel& model, QWidget* parent = nullptr);

    /// Whether a group of columns is shown: as the person chose, otherwise the ring readings of a board
    /// with rings and the further readings where there is room.
    bool isShown(SheetGroup group) const;
    void setShown(SheetGroup group, bool shown);
    /// What the person chose, for the settings; groups without a choice are left out.
    std::map<SheetGroup, bool> choices() const { return choices_; }
    void setChoices(std::map<SheetGroup, bool> choices);

    Id currentCircuit() const;
    void setCurrentCircuit(Id circuit);
    /// The next cell that a check misses, from the current one on; false when nothing is missing.
    bool goToNextMissing();

    void scrollTo(const QModelIndex& index, ScrollHint hint = EnsureVisible) override;

    /// The overlay that keeps Way and Circuit in sight; hidden while nothing is scrolled.
    const QTableView& frozen() const { return *frozen_; }

  public slots:
    void addWay();
    void removeWay();
    void confirmAsRead();
    void clearCell();

  signals:
    void currentCellChanged(const QModelIndex& index);
    /// Something could not be stored; the sentence is for the status line.
    void refused(const QString& sentence);
    void groupsChanged();

  protected:
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void contextMenuEvent(QContextMenuEvent* event) override;

  private:
    void setUpFrozen();
    void refresh();
    void layOutRows();
    void layOutColumns();
    void placeFrozen();
    /// As wide as the look has it, or only as wide as heads and figures need.
    enum class Room : std::uint8_t { Usual, Least };
    bool fits(SheetGroup wanted, Room room) const;
    int widthOf(int column, Room room) const;
    int takenBy(Room room) const;
    void offerGroups(const QPoint& globalPosition);
    /// The next cell down (or up) in the same column, round to the next column that can be filled.
    QModelIndex walkDown(const QModelIndex& from, int step) const;
    /// The next cell across, round to the next row.
    QModelIndex walkAcross(const QModelIndex& from, int step) const;
    bool isFillable(const QModelIndex& index) const;
    void goOn(int key, bool withControl);
    void report(const tl::expected<void, QString>& done);

    const Appearance& appearance_;
    SheetModel& model_;
    SheetDelegate* delegate_;
    QTableView* frozen_;
    Id keptCircuit_; // the current circuit while the model is reset
    int keptColumn_ = 0;
    std::map<SheetGroup, bool> choices_;
};

} // namespace loopwright
