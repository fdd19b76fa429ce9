// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"

#include <QAbstractItemModel>

#include <memory>

namespace loopwright {

/// A place of the site: what it is, what it is called, and what stands at its right.
struct PlaceNode {
    Subject subject; ///< of Inspection, Instruments and Observations the kind alone, without id
    QString title;
    Icon icon = Icon::Site;
    std::optional<Verdict> worst; ///< of a board's circuits, of the supply, of the inspection
    int count = 0; ///< of circuits or items with that verdict, of instruments, of observations; 0: not shown
    PlaceNode* parent = nullptr;
    std::vector<std::unique_ptr<PlaceNode>> children;
};

/// Site, supply, boards under the boards that feed them; inspection, instruments and observations of the
/// visit.
std::unique_ptr<PlaceNode> placesOf(const SiteView& view);

class PlacesModel final : public QAbstractItemModel {
    Q_OBJECT
  public:
    enum Role {
        WorstRole = Qt::UserRole,
        CountRole,
        IconRole,
        NamesRole, ///< from the whole title without what the icon says to the shortest: the tree is narrow
    };

    explicit PlacesModel(const Appearance& appearance, QObject* parent = nullptr);

    void show(const SiteViewPtr& view);
    Subject subjectAt(const QModelIndex& index) const;
    /// A circuit and what hangs on it stand under their board.
    QModelIndex indexOf(const Subject& subject) const;

    QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    QModelIndex parent(const QModelIndex& index) const override;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  private:
    const PlaceNode* nodeAt(const QModelIndex& index) const;
    QString spoken(const PlaceNode& node) const;
    /// "C, kiln range: kiln room, bakehouse", "C kiln range", "Board C".
    QStringList names(const PlaceNode& node) const;

    const Appearance& appearance_;
    SiteViewPtr view_;
    std::unique_ptr<PlaceNode> root_; ///< above the site
};

} // namespace loopwright
