// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string>

namespace loopwright {

/// SHA-256 (FIPS 180-4) as 64 hexadecimal digits in lower case: the name of a picture's bytes.
std::string digestOf(std::span<const std::byte> bytes);

} // namespace loopwright
