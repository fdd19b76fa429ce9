// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/site_file.h"

namespace loopwright {

/// Oakum Row Works, the invented site of resources/demo, with its pictures. It is built into the program.
/// Throws std::logic_error when it does not hold together, which a test would have said.
SiteImport demoSite(IdSource& ids);

} // namespace loopwright
