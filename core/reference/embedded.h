// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

namespace loopwright {

/// The bytes of a file of resources/ that is built into the program, by its path there
/// ("reference/max_zs.csv"). Throws std::out_of_range naming the path when there is none.
std::string_view embeddedFile(std::string_view path);
/// Paths of all built-in files that start with `prefix`, sorted.
std::vector<std::string_view> embeddedFiles(std::string_view prefix);

} // namespace loopwright
