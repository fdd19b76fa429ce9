// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/role_frame.h"
#include "forms/places/places_model.h"
#include "forms/places/visits_model.h"

class QListView;
class QTreeView;

namespace loopwright {

/// Where one is: the site's places above, its visits below, and at the foot what to remember before touching
/// anything.
class PlacesPanel final : public RoleFrame {
    Q_OBJECT
  public:
    explicit PlacesPanel(const Appearance& appearance, QWidget* parent = nullptr);

    /// `current` is marked; a circuit stands under its board.
    void show(const SiteViewPtr& view, const Subject& current);
    QTreeView& tree() { return *tree_; }
    QListView& visits() { return *visits_; }

  signals:
    void placeChosen(const loopwright::Subject& subject);
    void visitChosen(const loopwright::Id& visit);
    /// Enter in the tree: the keyboard goes on to what was chosen.
    void entered();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void fitVisits();
    const Appearance& appearance_;
    PlacesModel* places_;
    VisitsModel* visitsModel_;
    QTreeView* tree_;
    QListView* visits_;
    bool showing_ = false; ///< the selection changes because a view is shown, not because of a person
};

} // namespace loopwright
