// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/change.h"

#include <string>
#include <string_view>

namespace loopwright {

/// What the journal and Undo call a change of one field: "Board C / F1, Loop impedance, Z_s: 0.54 Ω". `shown`
/// is the new value as people read it, with its unit; empty says that the field was cleared.
Message fieldChangeLabel(std::string place, RecordKind kind, std::string_view field, std::string shown);

/// "Board C / F1 added"
Message addedLabel(std::string name);
/// "Board C / F1 removed"
Message removedLabel(std::string name);

} // namespace loopwright
