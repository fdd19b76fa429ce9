// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/role_frame.h"
#include "forms/frame/site_view.h"

#include <QStyledItemDelegate>

class QListView;
class QToolButton;

namespace loopwright {

class ObservationModel;
class RoleLabel;

/// Where the parts of an observation stand on its line. The place takes what it needs, up to a limit, and the
/// sentence all that is left.
struct ObservationLine {
    QRect mark, grade, sentence, place, photos;
};
ObservationLine observationLine(const Appearance& appearance, const QRect& row, const QString& place);

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
class ObservationStrip final : public RoleFrame {
    Q_OBJECT

  public:
    ObservationStrip(const Appearance& appearance, QWidget* parent = nullptr);

    /// `board` none: the observations of the whole site.
    void show(const SiteViewPtr& view, Id board);
    /// Where there is little room only the head stays, with the number of observations.
    void setFolded(bool folded);
    bool isFolded() const { return folded_; }
    QListView& list() { return *list_; }

  signals:
    void openWanted(loopwright::Id observation);
    void noteWanted(); ///< a new observation, about what is in view

  protected:
    void changeEvent(QEvent* event) override;

  private:
    void showParts();
    const Appearance& appearance_;
    ObservationModel* model_;
    QListView* list_;
    RoleLabel* title_;
    RoleLabel* count_;
    RoleLabel* empty_;
    QToolButton* note_;
    bool folded_ = false;
};

} // namespace loopwright
