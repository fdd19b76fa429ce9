// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace loopwright {

/// A file that is built into the program, as core/embed.cmake lays it out. A room that embeds files of its
/// own declares its table's two symbols and looks them up with the functions below.
struct EmbeddedFile {
    const char* name;
    const char* begin;
    const char* end;
};

/// The bytes of a file of `files` by its name there. Throws std::out_of_range naming the path when there is
/// none.
std::string_view embeddedFile(std::span<const EmbeddedFile> files, std::string_view path);

/// The bytes of a file of resources/ that is built into the program, by its path there
/// ("reference/max_zs.csv"). Throws std::out_of_range naming the path when there is none.
std::string_view embeddedFile(std::string_view path);
/// Paths of all built-in files of resources/ that start with `prefix`, sorted.
std::vector<std::string_view> embeddedFiles(std::string_view prefix);

} // namespace loopwright
