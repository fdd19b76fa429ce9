// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"
#include "forms/places/search.h"

#include <QLineEdit>
#include <QListView>

namespace loopwright {

/// The matches of a search.
class MatchesModel final : public QAbstractListModel {
    Q_OBJECT
  public:
    enum Role { WhereRole = Qt::UserRole, IconRole };

    using QAbstractListModel::QAbstractListModel;
    void show(std::vector<Match> matches);
    Subject subjectAt(int row) const;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  private:
    std::vector<Match> matches_;
};

/// The field that finds anything by words. The matches stand below it; Down and Up choose, Enter goes there,
/// Esc gives the keyboard back.
class GoToField final : public QLineEdit {
    Q_OBJECT
  public:
    explicit GoToField(const Appearance& appearance, QWidget* parent = nullptr);

    void setView(SiteViewPtr view) { view_ = std::move(view); }
    /// The list of matches; a child of the window, so that it may stand over other parts.
    QListView* matches() const { return list_; }

  signals:
    void chosen(const loopwright::Subject& subject);
    void givenUp();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    QSize sizeHint() const override;

  private:
    void search(const QString& query);
    void choose(const QModelIndex& index);
    void shut();
    void makeList();

    const Appearance& appearance_;
    SiteViewPtr view_;
    MatchesModel* model_;
    QListView* list_ = nullptr;
};

} // namespace loopwright
