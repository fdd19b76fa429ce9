// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

namespace loopwright::report {

/// Head and foot of a page, placed on the paper.
std::vector<Ink> runningHeads(const Composing& composing, PageForm form, const QString& section, int page,
                              int pages);

/// "9 to 11 March 2026", "11 March 2026"; empty when no day is recorded.
QString daysOf(const Visit& visit, const Words& words);
/// "Not issued", or "Issued, without a seal".
QString standingOf(const Visit& visit);

} // namespace loopwright::report
