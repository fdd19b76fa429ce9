// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>

#include <span>

namespace loopwright {

/// Every colour the program uses, by role. Nothing else names a colour. Three instances: two for the screen,
/// one for paper. A colour never says anything alone: wherever a verdict's colour is, its mark is drawn as
/// well.
struct Look {
    QColor window; ///< frame, start page
    QColor sheet;  ///< grid, fields, plots
    QColor panel;  ///< tree, reasons, strip
    QColor header; ///< grid heads, title, status line

    QColor ink;
    QColor inkSoft;  ///< second text
    QColor inkFaint; ///< hints, and what is off

    QColor line;       ///< hairlines; decoration only
    QColor lineStrong; ///< edges of controls and groups

    QColor accent;     ///< copper: the main action, load, heat
    QColor accentInk;  ///< text on accent
    QColor accentWash; ///< periods in which equipment is on

    QColor selection; ///< current row, current place; on paper the sheet itself
    QColor focus;     ///< the ring inside the edge; on paper the ink

    QColor holds;
    QColor close;
    QColor closeWash;
    QColor fails;
    QColor failsWash;
    QColor cannotTell;
    QColor cannotTellWash;
    QColor doesNotApply;

    QColor makeSafe;
    QColor putRight;
    QColor lookFurther;
    QColor worthImproving;
};

/// A colour asked for by what it is for; a null role means "none", so that a wash can be absent.
using Role = QColor Look::*;

const Look& lightLook();
const Look& darkLook();
const Look& printLook();

/// The palette of a look. A text editor needs selectedTextPalette() on top, because Highlight is the current
/// row's fill.
QPalette palette(const Look& look);
/// The same with selected text as accentInk on accent.
QPalette selectedTextPalette(const Look& look);

/// Something drawn on a surface, whose contrast must be kept.
struct RolePair {
    Role drawn;
    Role surface;
};
std::span<const RolePair> screenTextPairs(); ///< every text on every surface it may stand on
std::span<const RolePair> printTextPairs();
std::span<const RolePair> edgePairs(); ///< what is seen but not read: focus ring, edges of controls

/// Contrast ratio of two colours, 1 to 21 (WCAG 2.1, "contrast ratio" and "relative luminance").
double contrast(const QColor& first, const QColor& second);

} // namespace loopwright
