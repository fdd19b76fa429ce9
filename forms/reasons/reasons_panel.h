// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/role_frame.h"
#include "forms/reasons/reasons_model.h"

#include <QListView>

namespace loopwright {

class RoleLabel;

/// The list of checks. Enter opens a row to its working; the height of rows follows the width.
class ReasonsList final : public QListView {
    Q_OBJECT
  public:
    ReasonsList(const Appearance& appearance, ReasonsModel& model, QWidget* parent = nullptr);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void toggle(const QModelIndex& index);
    const Appearance& appearance_;
    ReasonsModel& model_;
};

/// Why a circuit is judged as it is. Remedies will stand below the list.
class ReasonsPanel final : public RoleFrame {
    Q_OBJECT
  public:
    explicit ReasonsPanel(const Appearance& appearance, QWidget* parent = nullptr);

    /// A subject of no id shows how to get one.
    void show(const SiteViewPtr& view, const Subject& subject);
    ReasonsModel& model() { return *model_; }
    QListView& list() { return *list_; }

  public slots:
    void toggleFold();

  private:
    const Appearance& appearance_;
    ReasonsModel* model_;
    ReasonsList* list_;
    RoleLabel* title_;
    RoleLabel* facts_;
};

} // namespace loopwright
