// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/ink.h"

#include <span>

class QPainter;

namespace loopwright::report {

/// Draws ink with a painter whose unit is a hundredth of a millimetre and whose origin is the paper's top
/// left corner. The one way onto a page: preview, printer and PDF all come through here.
void paintInks(QPainter& painter, std::span<const Ink> inks, const Look& look);

} // namespace loopwright::report
