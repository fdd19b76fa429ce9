// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"
#include "core/units/entry.h"

#include <variant>

namespace loopwright::sums {

/// One figure as it came in: what somebody typed, perhaps with a unit ("8.5 kW"), or a number of a file.
using RawFigure = std::variant<std::string, double>;
/// What came in for one input.
using RawValue = std::variant<std::string, double, bool, std::vector<RawFigure>>;

struct RawInput {
    std::string key;
    RawValue value;
};

/// Splits "length_m=30" into its key and its text.
tl::expected<RawInput, Refusal> readAssignment(std::string_view text);

/// What stands for every input of the sum, defaults included. In a text several figures are parted by `;`,
/// and by `,` too unless that is the decimal sign of `format`. Refused, and never part of an answer: a key
/// that the sum does not have, one that is given twice or missing, what is no figure or carries a qualifier
/// (">999"), what is not finite, and what lies outside its range.
tl::expected<Inputs, Refusal> readInputs(const Sum& sum, std::span<const RawInput> raw,
                                         const SumContext& context, const NumberFormat& format = {});

} // namespace loopwright::sums
