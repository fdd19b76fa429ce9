// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"

#include <QStyledItemDelegate>
#include <QWidget>

class QLabel;
class QListView;
class QPushButton;

namespace loopwright {

class Appearance;
class ObservationModel;

/// Paints an observation on one line: mark and grade, sentence, place, number of photos.
class ObservationDelegate final : public QStyledItemDelegate {
    Q_OBJECT

  public:
    ObservationDelegate(const Appearance& appearance, QObject* parent);
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  private:
    const Appearance& appearance_;
};

/// What was observed on the board in view, below its sheet.
class ObservationStrip final : public QWidget {
    Q_OBJECT

  public:
    ObservationStrip(const Appearance& appearance, QWidget* parent = nullptr);

    /// `board` none: the observations of the whole site.
    void show(const SiteViewPtr& view, Id board);

  signals:
    void openWanted(loopwright::Id observation);
    void noteWanted(); ///< a new observation, about what is in view

  private:
    const Appearance& appearance_;
    ObservationModel* model_;
    QListView* list_;
    QLabel* title_;
    QLabel* count_;
    QLabel* empty_;
    QPushButton* note_;
};

} // namespace loopwright
