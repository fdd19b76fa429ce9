// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"

namespace loopwright {

/// Whether rows of this kind hold what a visit read about something (supply, board, circuit).
bool isReading(RecordKind kind);

/// The row in which the view's visit keeps its readings of `subject`; none while nothing has been read.
Id readingRow(const SiteView& view, RecordKind kind, Id subject);

/// Sets fields of what the visit read about `subject`, and makes the row with the first of them.
Edit setReading(const SiteView& view, RecordKind kind, Id subject, std::vector<Edit::Value> values,
                IdSource& ids);

} // namespace loopwright
