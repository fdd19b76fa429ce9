// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/sheet/rows.h"

#include <QAbstractTableModel>

namespace loopwright {

/// The circuits of one board with their readings in one visit, as rows and columns. Every edit goes through
/// the door and comes back as a new SiteView; the model keeps nothing that the view does not say.
class SheetModel final : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Role {
        CellRole = Qt::UserRole, ///< SheetCell
        HeadingRole,             ///< QString of a section's heading; absent elsewhere
        SpareRole,               ///< bool
        ClosesWayRole,           ///< bool
    };

    /// `appearance` and `ids` outlive the model.
    SheetModel(const Appearance& appearance, IdSource& ids, ChangeDoor door, QObject* parent = nullptr);

    /// Shows a board; a null view or an unknown board shows nothing.
    void show(SiteViewPtr view, Id board);
    Id board() const { return board_; }
    bool hasRings() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

    /// What a person typed into a cell. The refusal is the sentence for the place where it was typed; then
    /// nothing has changed.
    tl::expected<void, QString> enter(const QModelIndex& index, const QString& typed);
    tl::expected<void, QString> clear(const QModelIndex& index);
    /// Makes a carried figure one that was read again in this visit.
    tl::expected<void, QString> confirmAsRead(const QModelIndex& index);
    /// Adds a way with the next number at the end of the board; returns its circuit.
    tl::expected<Id, QString> addWay();
    tl::expected<void, QString> removeWay(Id circuit);

    /// None for a heading and outside the table.
    Id circuitAt(int row) const;
    /// -1 when the board does not have it.
    int rowOf(Id circuit) const;
    bool isHeading(int row) const;
    /// The worst that the cells of a group say; DoesNotApply when they say nothing.
    Verdict worstIn(SheetGroup group) const;
    /// "F1 load: 41.7 A, computed": what the status line says about a cell, in notation.
    QString describe(const QModelIndex& index) const;

  private:
    const SheetCell& cellAt(const QModelIndex& index) const;
    std::optional<RowFacts> factsAt(int row) const;
    tl::expected<void, QString> ask(const Change& change);
    tl::expected<void, QString> store(const RowFacts& facts, const SheetColumn& column,
                                      const CellEntry& entry, const QString& shown);

    const Appearance& appearance_;
    IdSource& ids_;
    ChangeDoor door_;
    SiteViewPtr view_;
    Id board_;
    std::vector<SheetRow> rows_;
};

} // namespace loopwright
