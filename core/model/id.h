// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <functional>
#include <optional>
#include <random>
#include <string>
#include <string_view>

namespace loopwright {

/// A UUID (RFC 4122). The all-zero id is "none": it names no record and is what an absent reference holds.
class Id {
  public:
    constexpr Id() = default;
    constexpr explicit Id(const std::array<std::uint8_t, 16>& bytes)
      : bytes_(bytes) {}
    /// Nothing unless `text` is 32 hexadecimal digits with the usual four dashes.
    static std::optional<Id> parse(std::string_view text);
    std::string text() const; ///< lower case, with dashes
    constexpr bool isNone() const { return *this == Id{}; }
    constexpr const std::array<std::uint8_t, 16>& bytes() const { return bytes_; }
    friend constexpr auto operator<=>(const Id&, const Id&) = default;

  private:
    std::array<std::uint8_t, 16> bytes_{};
};

/// Makes ids. Passed in where records are made, so that tests can fix them.
class IdSource {
  public:
    virtual ~IdSource() = default;
    virtual Id next() = 0;
};

/// Random version 4 ids.
class RandomIds final : public IdSource {
  public:
    Id next() override;

  private:
    std::random_device device_;
};

/// A repeatable sequence, for tests and for the demo site.
class SequentialIds final : public IdSource {
  public:
    explicit SequentialIds(std::uint64_t first = 1)
      : next_(first) {}
    Id next() override;

  private:
    std::uint64_t next_;
};

} // namespace loopwright

template <>
struct std::hash<loopwright::Id> {
    std::size_t operator()(const loopwright::Id& id) const noexcept;
};
