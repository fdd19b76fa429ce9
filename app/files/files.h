// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace loopwright {

/// Reads a whole file. One larger than `limit` bytes is refused before a byte of it is read. The refusal is a
/// sentence.
tl::expected<std::string, QString> readFile(const std::filesystem::path& path, std::size_t limit);

/// Writes `bytes` in place of the file that was there, whole or not at all: when it fails the old file is as
/// it was. What is there and is no file is refused. The refusal is a sentence.
tl::expected<void, QString> writeFile(const std::filesystem::path& path, std::string_view bytes);

/// Whether both paths lead to the same file, so that writing to one would destroy the other.
bool isSameFile(const std::filesystem::path& one, const std::filesystem::path& other);

/// Sizes are told to people in these.
inline constexpr std::size_t bytesPerMegabyte = std::size_t{1024} * 1024;

QString shown(const std::filesystem::path& path);

} // namespace loopwright
