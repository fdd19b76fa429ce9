// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/site_file.h"

#include <nlohmann/json.hpp>

namespace loopwright::sitefile {

/// Reads text as JSON within limits of size, depth and number of values, so that no file can exhaust the
/// machine. The refusal says in which line and column the text stops being JSON, or which key stands twice.
tl::expected<nlohmann::json, SiteFileProblem> parseDocument(std::string_view text);

/// The first byte that is not part of well-formed UTF-8 (RFC 3629), or nothing.
std::optional<std::size_t> firstBadUtf8(std::string_view text);

} // namespace loopwright::sitefile
