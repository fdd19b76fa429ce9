// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"

#include <QAbstractListModel>

namespace loopwright {

/// The visits of a site, the newest first.
class VisitsModel final : public QAbstractListModel {
    Q_OBJECT
  public:
    enum Role { StateRole = Qt::UserRole, IconRole, CurrentRole };

    explicit VisitsModel(const Appearance& appearance, QObject* parent = nullptr);
    void show(const SiteViewPtr& view);
    Id visitAt(int row) const;
    int rowOf(Id visit) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  private:
    const Visit& at(int row) const;
    const Appearance& appearance_;
    SiteViewPtr view_;
};

} // namespace loopwright
