// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/model/installation.h"

namespace loopwright {

/// Where a subject is, by names: "Board C / F1", "supply 1"; the site's name for the site and for what is
/// about no place.
std::string subjectPath(const Installation& installation, const Subject& subject);
/// The board that a subject belongs to, or nullptr.
const Board* boardOf(const Installation& installation, const Subject& subject);

} // namespace loopwright
