// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/model/choices.h"
#include "forms/look/look.h"

#include <QPainterPath>
#include <QRectF>

#include <string_view>

class QPainter;

namespace loopwright {

/// The shapes that say what a colour only repeats. Verdicts are round or sharp and may be thin; grades are
/// heavy.
enum class Mark : std::uint8_t {
    Holds,
    Close,
    Fails,
    CannotTell,
    DoesNotApply,
    MakeSafe,
    PutRight,
    WorthImproving,
    LookFurther,
};
inline constexpr int markCount = 9;

/// Sides of a mark by where it stands, in pixels of the screen; the report uses them as units of its own
/// scale.
namespace mark_size {
inline constexpr double cell = 11;
inline constexpr double column = 12;
inline constexpr double reasons = 13;
inline constexpr double strip = 14;
inline constexpr double tree = 16;
inline constexpr double pageOne = 46;
} // namespace mark_size

/// The mark's outline on its grid of 16 by 16, to be filled. Its holes are real, so it works on any wash.
const QPainterPath& markPath(Mark mark);

/// Fills the mark into the largest centred square of `place`. Serves cells, plots, diagram and report alike.
void drawMark(QPainter& painter, const QRectF& place, Mark mark, const QColor& colour);

Mark markOf(Verdict verdict);
Mark markOf(Grade grade);

Role inkOf(Verdict verdict);
Role inkOf(Grade grade);

/// The fill behind it; null where there is none, because what holds is quiet.
Role washOf(Verdict verdict);
Role washOf(Grade grade);

/// The key of the phrase that says it: always the accessible text of the mark.
std::string_view wordKey(Verdict verdict);
std::string_view wordKey(Grade grade);

/// Whether figures of this verdict are set in Semibold.
bool isLoud(Verdict verdict);

} // namespace loopwright
