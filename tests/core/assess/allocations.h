// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>

namespace loopwright::test {

/// How often this thread has allocated. Only in test programs that allocations.cpp is part of.
std::size_t allocations();

} // namespace loopwright::test
