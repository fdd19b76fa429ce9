// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/sheet/columns.h"

#include <QHeaderView>

#include <functional>

namespace loopwright {

/// The two head rows: groups above, columns below. Groups that are hidden stand as "+ Ring" at the right end
/// of the group of readings, with a mark where something in them needs a person.
class SheetHeader final : public QHeaderView {
    Q_OBJECT
  public:
    using WorstInGroup = std::function<Verdict(SheetGroup)>;
    SheetHeader(const Appearance& appearance, WorstInGroup worst, QWidget* parent);

    void setHiddenGroups(std::vector<SheetGroup> groups);
    QSize sizeHint() const override;
    /// How wide a column must be for its head.
    int neededWidth(int column) const;

  signals:
    void groupWanted(SheetGroup group);            ///< a hidden group was clicked
    void menuWanted(const QPoint& globalPosition); ///< which groups are shown is to be chosen

  protected:
    void paintSection(QPainter* painter, const QRect& rect, int column) const override;
    void mousePressEvent(QMouseEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;

  private:
    struct Offer {
        SheetGroup group;
        QRect place;
        QString text;
        Verdict worst;
    };
    QRect groupRect(SheetGroup group) const;
    std::vector<Offer> offers() const;
    void paintGroup(QPainter& painter, const SheetColumn& column) const;

    const Appearance& appearance_;
    WorstInGroup worst_;
    std::vector<SheetGroup> hidden_;
};

} // namespace loopwright
