// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/knowledge.h"
#include "app/window/questions.h"
#include "core/model/clock.h"
#include "db/workbook.h"
#include "forms/frame/appearance.h"

class QSettings;

namespace loopwright {

/// What the window is given from outside. All of it outlives the window.
struct WindowSurroundings {
    Appearance& appearance;
    const Knowledge& knowledge;
    const Clock& clock;
    IdSource& ids;
    Author author;
    Questions& questions;
    QSettings& settings;
};

} // namespace loopwright
