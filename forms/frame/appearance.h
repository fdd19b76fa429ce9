// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/icons.h"
#include "forms/look/look.h"
#include "forms/look/type.h"
#include "forms/words/words.h"

#include <optional>

namespace loopwright {

/// What every form draws and speaks with. The window owns it, changes it in place when another look is asked
/// for, and repaints; forms keep a reference to it and ask it anew each time they draw.
class Appearance {
  public:
    explicit Appearance(const QLocale& locale, double textFactor = 1)
      : type(textFactor)
      , words(locale) {
        use(lightLook());
    }

    void use(const Look& other) {
        look_ = &other;
        icons_.emplace(other);
    }
    const Look& look() const { return *look_; }
    QIcon icon(Icon icon, Role ink = &Look::ink) const { return icons_->icon(icon, ink); }

    const Type type;
    const Words words;

  private:
    const Look* look_ = nullptr;
    std::optional<Icons> icons_;
};

} // namespace loopwright
