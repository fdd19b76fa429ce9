// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/role_frame.h"
#include "forms/frame/site_view.h"

namespace loopwright {

class InspectionModel;
class InspectionView;
class ResultKeys;
class RoleLabel;

/// What one visit looked at without an instrument: how it stands above, the items below.
class InspectionPage final : public RoleFrame {
    Q_OBJECT
  public:
    /// `appearance` and `ids` outlive the page.
    InspectionPage(const Appearance& appearance, IdSource& ids, ChangeDoor door, QWidget* parent = nullptr);

    void show(const SiteViewPtr& view);
    InspectionView& list() { return *list_; }
    /// What the page says above its list: "2026, periodic · 77 of 77 items looked at".
    QString facts() const;
    void tellItem();

  signals:
    void refused(const QString& sentence);
    void described(const QString& item); ///< where the rules speak of the current item
    void left();                         ///< Esc

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    const Appearance& appearance_;
    InspectionModel* model_;
    InspectionView* list_;
    ResultKeys* keys_;
    RoleLabel* facts_;
    RoleLabel* hint_;
};

} // namespace loopwright
