// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/places/visits_model.h"

namespace loopwright {

VisitsModel::VisitsModel(const Appearance& appearance, QObject* parent)
  : QAbstractListModel(parent)
  , appearance_(appearance) {}

void VisitsModel::show(const SiteViewPtr& view) {
    beginResetModel();
    view_ = view;
    endResetModel();
}

int VisitsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !view_ ? 0 : static_cast<int>(view_->installation.visits.size());
}

const Visit& VisitsModel::at(int row) const {
    const auto& visits = view_->installation.visits; // oldest first
    return visits[visits.size() - 1 - static_cast<std::size_t>(row)];
}

Id VisitsModel::visitAt(int row) const {
    return row < 0 || row >= rowCount() ? Id{} : at(row).id;
}

int VisitsModel::rowOf(Id visit) const {
    for (int row = 0; row < rowCount(); ++row)
        if (at(row).id == visit) return row;
    return -1;
}

QVariant VisitsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Visit& visit = at(index.row());
    const bool issued = visit.state == VisitState::Issued;
    const QString state = issued ? tr("issued") : tr("open");
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return text(visit.label);
    case Qt::AccessibleTextRole:
        return text(visit.label) + QStringLiteral(", ") + state;
    case StateRole:
        return state;
    case IconRole:
        return static_cast<int>(issued ? Icon::Issue : Icon::Visit);
    case CurrentRole:
        return visit.id == view_->visit;
    default:
        return {};
    }
}

} // namespace loopwright
