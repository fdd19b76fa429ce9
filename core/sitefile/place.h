// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace loopwright::sitefile {

/// A value's place in the file, as a chain of steps on the stack of whoever reads it. A step outlives the
/// steps below it.
class Place {
  public:
    Place() = default;
    Place at(std::string_view key) const { return Place(this, key, std::nullopt); }
    Place at(std::size_t index) const { return Place(this, {}, index); }
    /// As a person counts: "boards, 3rd, circuits, 2nd, wiring, lineSize_mm2".
    std::string text() const;

  private:
    Place(const Place* parent, std::string_view key, std::optional<std::size_t> index)
      : parent_(parent)
      , key_(key)
      , index_(index) {}

    const Place* parent_ = nullptr;
    std::string_view key_;
    std::optional<std::size_t> index_;
};

/// "1st", "2nd", "3rd", "4th", ..., "11th", "21st", counting from 1.
std::string ordinal(std::size_t number);

} // namespace loopwright::sitefile
