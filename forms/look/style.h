// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"
#include "forms/look/type.h"

class QAbstractButton;
class QApplication;
class QLineEdit;

namespace loopwright {

/// Gives the whole program the flat controls of a look: paper surfaces, hairlines, a corner radius of 3 on
/// buttons and fields, the focus ring inside the edge, nothing that moves or casts a shadow. Call again to
/// change the look.
void applyLook(QApplication& application, const Look& look, const Type& type);

/// What a button is for decides how it is drawn.
enum class ButtonKind : std::uint8_t {
    Plain,
    Primary,     ///< filled with the accent: at most one in a window. Give it an icon drawn in accentInk
    Quiet,       ///< no edge until the pointer is on it: command bars
    SwitchFirst, ///< buttons of a view switch, joined into one frame; the checked one is filled with ink
    SwitchMiddle,
    SwitchLast,
};
void setButtonKind(QAbstractButton& button, ButtonKind kind);

/// Marks a field whose text was refused: a 2 px edge in the colour of "fails" until it is set to false.
void setRefused(QLineEdit& field, bool refused);

} // namespace loopwright
