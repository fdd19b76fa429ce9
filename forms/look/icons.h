// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"

#include <QIcon>

#include <span>
#include <string_view>
#include <vector>

namespace loopwright {

/// The line drawings of resources/icons, in the order of their file names.
enum class Icon : std::uint8_t {
    Add,
    Board,
    Circuit,
    DeadFirst,
    Device,
    Diagram,
    Due,
    Equipment,
    Fuse,
    GoTo,
    GradeLookFurther,
    GradeMakeSafe,
    GradePutRight,
    GradeWorthImproving,
    HandOver,
    Heat,
    Inspection,
    Instrument,
    Issue,
    Journal,
    Keys,
    Missing,
    Observations,
    Photo,
    Picture,
    Places,
    Reasons,
    Redo,
    Remedy,
    Report,
    Settings,
    Sheet,
    SinceLast,
    Site,
    Sums,
    Supply,
    TakeIn,
    Undo,
    VerdictCannotTell,
    VerdictClose,
    VerdictDoesNotApply,
    VerdictFails,
    VerdictHolds,
    Visit,
    Wiring,
};

/// File names without their ending, in the order of Icon: "hand-over".
std::span<const std::string_view> iconNames();

/// Icons in the colours of one look. Drawn on first use and kept; the owner of the window passes it to what
/// it shows and makes a new one when the look changes.
class Icons {
  public:
    explicit Icons(const Look& look)
      : look_(look) {}

    /// In `ink` where it can be used and in ink-faint where it is off.
    QIcon icon(Icon icon, Role ink = &Look::ink) const;

  private:
    struct Drawn {
        Icon icon;
        Role ink;
        QIcon picture;
    };
    const Look& look_;
    mutable std::vector<Drawn> drawn_; // a cache: icons do not change once drawn
};

/// The program's own icon, which keeps its colours.
QIcon windowIcon();

} // namespace loopwright
