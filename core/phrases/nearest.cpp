// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/nearest.h"

#include <algorithm>
#include <cctype>
#include <numeric>
#include <vector>

namespace loopwright {
namespace {

/// Longer texts are not compared: nobody mistypes them, and the comparison takes the product of both lengths.
constexpr std::size_t longest = 100;

char lower(char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

/// How many letters must be put in, taken out or changed to make `a` from `b` (Levenshtein's distance).
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0]++;
        for (std::size_t k = 1; k <= b.size(); ++k) {
            const std::size_t changed = diagonal + (lower(a[i - 1]) == lower(b[k - 1]) ? 0 : 1);
            diagonal = row[k];
            row[k] = std::min({row[k] + 1, row[k - 1] + 1, changed});
        }
    }
    return row.back();
}

} // namespace

std::string nearest(std::string_view text, std::span<const std::string> known) {
    if (text.size() > longest) return {};
    const std::string* best = nullptr;
    std::size_t least = std::max<std::size_t>(2, text.size() / 3);
    for (const std::string& candidate : known) {
        if (candidate.size() > longest || candidate.empty()) continue;
        const std::size_t steps = distance(text, candidate);
        if (steps > least || (best && steps == least) || steps >= std::max(text.size(), candidate.size()))
            continue;
        best = &candidate;
        least = steps;
    }
    return best ? *best : std::string();
}

} // namespace loopwright
