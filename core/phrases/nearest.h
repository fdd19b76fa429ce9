// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace loopwright {

/// The one of `known` that a person most likely meant by `text`; empty if none is near. Letters' case does
/// not matter.
std::string nearest(std::string_view text, std::span<const std::string> known);

} // namespace loopwright
