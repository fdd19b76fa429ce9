// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/observations/observation_model.h"

#include "forms/look/mark.h"
#include "forms/words/words.h"

#include <algorithm>

namespace loopwright {

ObservationModel::ObservationModel(const Words& words, QObject* parent)
  : QAbstractListModel(parent)
  , words_(words) {}

QString ObservationModel::placeOf(const Installation& installation, const Observation& observation,
                                  Id board) const {
    if (const Circuit* circuit = find(installation.circuits, observation.circuit)) {
        const bool onThisBoard = circuit->board == board;
        return onThisBoard && !circuit->way.empty() ? tr("way %1").arg(text(circuit->way))
                                                    : text(pathOf(installation, *circuit));
    }
    const Board* named = find(installation.boards, observation.board);
    const QString place = text(observation.place);
    if (!named) return place.isEmpty() ? tr("site") : place;
    if (place.isEmpty()) return text(named->name);
    return named->id == board ? place : text(named->name) + QStringLiteral(", ") + place;
}

void ObservationModel::show(const SiteViewPtr& view, Id board) {
    std::vector<Row> rows;
    if (view) {
        const Installation& site = view->installation;
        for (const Observation& observation : site.observations) {
            if (observation.visit != view->visit) continue;
            const Circuit* circuit = find(site.circuits, observation.circuit);
            const Id place = circuit ? circuit->board : observation.board;
            if (!board.isNone() && place != board) continue;
            const auto photos = std::ranges::count(site.photos, observation.id, &Photo::observation);
            rows.push_back({observation.id, observation.grade, text(observation.text).simplified(),
                            placeOf(site, observation, board), static_cast<int>(photos)});
        }
        std::ranges::stable_sort(rows, {}, &Row::grade);
    }
    if (rows == rows_) return;
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

Id ObservationModel::observation(const QModelIndex& index) const {
    return index.isValid() ? rows_[static_cast<std::size_t>(index.row())].id : Id();
}

int ObservationModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant ObservationModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return row.sentence;
    case Qt::AccessibleTextRole:
        return words_.word(wordKey(row.grade)) + ", " + row.sentence + ", " + row.place;
    case GradeRole:
        return static_cast<int>(row.grade);
    case PlaceRole:
        return row.place;
    case PhotoCountRole:
        return row.photos;
    case IdRole:
        return text(row.id.text());
    default:
        return {};
    }
}

} // namespace loopwright
