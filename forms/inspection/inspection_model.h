// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"
#include "forms/inspection/inspection_rows.h"

#include <QAbstractTableModel>

namespace loopwright {

enum class InspectionColumn : std::uint8_t { Item, Outcome, Remark };
inline constexpr int inspectionColumnCount = 3;

/// The items of one visit's inspection as rows. Every edit goes through the door and comes back as a new
/// SiteView.
class InspectionModel final : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Role {
        HeadingRole = Qt::UserRole, ///< whether the row is the heading of a group
        ResultRole,                 ///< int of an InspectionResult
    };

    /// `appearance` and `ids` outlive the model.
    InspectionModel(const Appearance& appearance, IdSource& ids, ChangeDoor door, QObject* parent = nullptr);

    /// Shows the view's visit; nothing without a view or a visit.
    void show(const SiteViewPtr& view);
    /// nullptr while none is shown.
    const Visit* visit() const;
    /// Why nothing here can change: the visit is issued. Empty while it can.
    QString sealed() const;
    const ResultCounts& counts() const { return counts_; }
    const InspectionRow& rowAt(int row) const { return rows_[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    /// The refusal is the sentence for the person; then nothing has changed. What is chosen or typed again
    /// changes nothing.
    tl::expected<void, QString> choose(int row, InspectionResult result);
    tl::expected<void, QString> enterRemark(int row, const QString& typed);

    /// The next row with this result after `row`, round to the first; -1 when there is none.
    int nextWith(InspectionResult result, int row) const;

  private:
    tl::expected<void, QString> set(const InspectionRow& row, std::string_view field, std::string stored,
                                    const QString& shown);
    QString spoken(const InspectionRow& row, InspectionColumn column) const;

    const Appearance& appearance_;
    IdSource& ids_;
    ChangeDoor door_;
    SiteViewPtr view_;
    std::vector<InspectionRow> rows_;
    ResultCounts counts_;
};

} // namespace loopwright
