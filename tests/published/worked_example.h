// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/published/comparison.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace loopwright::published {

/// A figure that somebody printed, and what its inputs give here.
struct Example {
    const char* what;
    double worked, printed;
    double tolerance; ///< share of the printed figure; set by how it was rounded there
    const char* source;
};

inline void compare(const char* table, const std::vector<Example>& examples) {
    Comparison comparison(table);
    for (const Example& example : examples) {
        const bool equal = std::abs(example.worked - example.printed) <= example.tolerance * example.printed;
        EXPECT_TRUE(equal) << example.what << ": worked out " << example.worked << ", printed "
                           << example.printed << " (" << example.source << ")";
        comparison.count(equal);
    }
}

} // namespace loopwright::published
