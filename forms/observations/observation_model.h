// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"

#include <QAbstractListModel>

namespace loopwright {

class Words;

/// The observations of the view's visit about one board and its circuits, or about the whole site: most
/// urgent first.
class ObservationModel final : public QAbstractListModel {
    Q_OBJECT

  public:
    enum Role { GradeRole = Qt::UserRole, PlaceRole, PhotoCountRole, IdRole };

    ObservationModel(const Words& words, QObject* parent);

    /// `board` none: every observation of the visit.
    void show(const SiteViewPtr& view, Id board);
    Id observation(const QModelIndex& index) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

  private:
    struct Row {
        Id id;
        Grade grade;
        QString sentence;
        QString place;
        int photos;
        friend bool operator==(const Row&, const Row&) = default;
    };
    QString placeOf(const Installation& installation, const Observation& observation, Id board) const;

    const Words& words_;
    std::vector<Row> rows_;
};

} // namespace loopwright
