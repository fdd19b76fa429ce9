// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/labels.h"
#include "forms/frame/role_frame.h"
#include "forms/frame/site_view.h"

namespace loopwright {

/// Above the middle: what is shown, one line of facts about it, and how its circuits stand.
class PlaceHead final : public RoleFrame {
    Q_OBJECT
  public:
    explicit PlaceHead(const Appearance& appearance, QWidget* parent = nullptr);
    void show(const SiteViewPtr& view, const Subject& subject);

  private:
    const Appearance& appearance_;
    RoleLabel* title_;
    RoleLabel* facts_;
    TallyLine* tally_;
};

} // namespace loopwright
