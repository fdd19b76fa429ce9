// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/id.h"

#include <cstring>

namespace loopwright {
namespace {

constexpr std::size_t textLength = 36;
constexpr bool dashAt(std::size_t position) {
    return position == 8 || position == 13 || position == 18 || position == 23;
}

int hexDigit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

/// Sets the version and variant bits of RFC 4122.
Id withVersion(std::array<std::uint8_t, 16> bytes, std::uint8_t version) {
    bytes[6] = static_cast<std::uint8_t>((bytes[6] & 0x0F) | (version << 4));
    bytes[8] = static_cast<std::uint8_t>((bytes[8] & 0x3F) | 0x80);
    return Id(bytes);
}

} // namespace

std::optional<Id> Id::parse(std::string_view text) {
    if (text.size() != textLength) return std::nullopt;
    std::array<std::uint8_t, 16> bytes{};
    std::size_t digit = 0;
    for (std::size_t i = 0; i < textLength; ++i) {
        if (dashAt(i)) {
            if (text[i] != '-') return std::nullopt;
            continue;
        }
        const int value = hexDigit(text[i]);
        if (value < 0) return std::nullopt;
        bytes[digit / 2] = static_cast<std::uint8_t>(bytes[digit / 2] << 4 | value);
        ++digit;
    }
    return Id(bytes);
}

std::string Id::text() const {
    static constexpr char digits[] = "0123456789abcdef";
    std::string text;
    text.reserve(textLength);
    for (const std::uint8_t byte : bytes_) {
        if (dashAt(text.size())) text += '-';
        text += digits[byte >> 4];
        text += digits[byte & 0x0F];
    }
    return text;
}

Id RandomIds::next() {
    std::array<std::uint8_t, 16> bytes{};
    for (std::size_t i = 0; i < bytes.size(); i += 4) {
        const std::uint32_t word = device_();
        std::memcpy(&bytes[i], &word, sizeof word);
    }
    return withVersion(bytes, 4);
}

Id SequentialIds::next() {
    std::array<std::uint8_t, 16> bytes{};
    std::uint64_t value = next_++;
    for (std::size_t i = bytes.size(); value > 0; value >>= 8)
        bytes[--i] = static_cast<std::uint8_t>(value);
    return withVersion(bytes, 8); // RFC 9562: version 8 is free for our own sequences
}

} // namespace loopwright

std::size_t std::hash<loopwright::Id>::operator()(const loopwright::Id& id) const noexcept {
    return std::hash<std::string_view>{}(
        {reinterpret_cast<const char*>(id.bytes().data()), id.bytes().size()});
}
