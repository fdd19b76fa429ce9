// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"

namespace loopwright::sums {

/// Every sum, in the order in which they are listed.
std::span<const Sum> allSums();
/// The sum of that key; the refusal names the nearest one.
tl::expected<const Sum*, Refusal> sumNamed(std::string_view key);

/// One function a family, each in its own file.
std::vector<Sum> loadSums();
std::vector<Sum> loopSums();
std::vector<Sum> longestRunSums();
std::vector<Sum> faultSums();
std::vector<Sum> supplySums();
std::vector<Sum> streetMainSums();
std::vector<Sum> deviceSums();
std::vector<Sum> releaseSums();
std::vector<Sum> selectivitySums();
std::vector<Sum> adiabaticSums();
std::vector<Sum> capacitySums();
std::vector<Sum> dropSums();
std::vector<Sum> ringSums();
std::vector<Sum> residualSums();
std::vector<Sum> insulationSums();
std::vector<Sum> demandSums();
std::vector<Sum> motorSums();
std::vector<Sum> thermalSums();

} // namespace loopwright::sums
