// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace loopwright::csv {

std::string_view Row::text(std::string_view column) const {
    const auto at =
        std::ranges::find(columns_, column, [](const char* name) { return std::string_view(name); });
    if (at == columns_.end()) complain(column, "was not asked for");
    return cells_[static_cast<std::size_t>(at - columns_.begin())];
}

std::optional<double> Row::optionalNumber(std::string_view column) const {
    const std::string_view cell = text(column);
    if (cell.empty()) return std::nullopt;
    double value = 0;
    const auto [end, failure] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (failure != std::errc{} || end != cell.data() + cell.size() || !std::isfinite(value))
        complain(column, fmt::format("'{}' is not a number", cell));
    return value;
}

double Row::number(std::string_view column) const {
    const std::optional<double> value = optionalNumber(column);
    if (!value) complain(column, "the number is missing");
    return *value;
}

std::vector<std::string> Row::list(std::string_view column) const {
    std::vector<std::string> parts;
    std::string_view rest = text(column);
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find(';'), rest.size());
        parts.emplace_back(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return parts;
}

void Row::complain(std::string_view column, std::string_view what) const {
    throw std::runtime_error(fmt::format("{}, line {}, column {}: {}", file_, line_, column, what));
}

Source sourceOf(const Row& row, std::string_view weight, std::string title) {
    constexpr std::string_view recalled = "from memory: ";
    const auto tellsOfMemory = [](std::string_view text) {
        return text.find("memory") != text.npos || text.find("remembered") != text.npos;
    };
    const std::string_view detail = row.text("source");
    if (detail.empty()) row.complain("source", "every figure needs one");
    Source source;
    source.detail = detail;
    source.confidence = row.text(weight);
    source.fromMemory = tellsOfMemory(detail) || tellsOfMemory(source.confidence);
    std::string_view first = detail.substr(0, detail.find(';'));
    if (first.starts_with(recalled)) first.remove_prefix(recalled.size());
    source.title = title.empty() ? std::string(first) : std::move(title);
    return source;
}

} // namespace loopwright::csv
