// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/registry.h"

#include "core/phrases/nearest.h"

#include <algorithm>

namespace loopwright::sums {

std::span<const Sum> allSums() {
    static const std::vector<Sum> all = [] {
        std::vector<Sum> joined;
        for (auto family : {loadSums, loopSums, longestRunSums, faultSums, supplySums, streetMainSums,
                            deviceSums, releaseSums, selectivitySums, adiabaticSums, capacitySums, dropSums,
                            ringSums, residualSums, insulationSums, demandSums, motorSums, thermalSums}) {
            std::vector<Sum> sums = family();
            std::ranges::move(sums, std::back_inserter(joined));
        }
        return joined;
    }();
    return all;
}

tl::expected<const Sum*, Refusal> sumNamed(std::string_view key) {
    const auto found = std::ranges::find(allSums(), key, &Sum::key);
    if (found != allSums().end()) return &*found;
    std::vector<std::string> known;
    for (const Sum& sum : allSums())
        known.emplace_back(sum.key);
    std::string near = nearest(key, known);
    if (near.empty()) return tl::unexpected(Refusal{{}, {"sum.unknown-sum", {std::string(key)}}});
    return tl::unexpected(Refusal{{}, {"sum.unknown-sum-near", {std::string(key), std::move(near)}}});
}

} // namespace loopwright::sums
