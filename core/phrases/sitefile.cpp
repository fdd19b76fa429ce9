// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

namespace loopwright::phrase_tables {

std::span<const Phrase> siteFile() { return {}; }

} // namespace loopwright::phrase_tables
