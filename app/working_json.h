// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/working/working.h"
#include "forms/words/words.h"

#include <nlohmann/json.hpp>

#include <optional>

/// Parts of the JSON that the program prints, the same in every document.
namespace loopwright {

using Json = nlohmann::ordered_json;

Json numberOrNull(const std::optional<double>& number);
/// "exact", "or-less", "or-more" or "either": on which side of a figure the truth may lie.
std::string_view boundKey(Bound bound);
Json sourceJson(const Source& source);
Json workingJson(const Working& working, const Words& words);

} // namespace loopwright
