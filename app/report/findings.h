// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

namespace loopwright::report {

/// What the check is called: "Load and device".
QString checkName(const Finding& finding, const Words& words);
/// What was found, as a sentence; the check's name and the verdict where the check wrote none.
QString findingSaid(const Finding& finding, const Words& words);
/// "41.7 A; at most 30 A"; empty without both.
QString resultAgainstLimit(const Finding& finding, const Words& words);
/// "≤ 30 A", "≥ 1 MΩ".
QString limitText(Relation relation, const Measure& limit, const Words& words);

} // namespace loopwright::report
