// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/given.h"

#include <algorithm>
#include <stdexcept>

namespace loopwright::sums {

std::span<const GivenFigure> Given::figures(std::size_t input) const {
    const GivenInput& given = inputs_[input];
    if (declared_[input].kind != InputKind::Number || given.figures.size() < 2) return given.figures;
    return std::span(given.figures).subspan(index_, 1);
}

const GivenInput& Given::of(const Input& input) const {
    const auto found = std::ranges::find(declared_, input.key, &Input::key);
    if (found == declared_.end()) throwUndeclared(input.key);
    return inputs_[static_cast<std::size_t>(found - declared_.begin())];
}

void Given::throwUndeclared(std::string_view key) {
    throw std::logic_error("a sum reads an input that it does not declare: " + std::string(key));
}

} // namespace loopwright::sums
