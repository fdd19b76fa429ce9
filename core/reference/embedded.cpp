// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/embedded.h"

#include <algorithm>
#include <stdexcept>
#include <string>

extern "C" {
extern const loopwright::EmbeddedFile loopwright_embedded_files[];
extern const loopwright::EmbeddedFile loopwright_embedded_files_end[];
}

namespace loopwright {
namespace {

std::span<const EmbeddedFile> resources() {
    return {loopwright_embedded_files, loopwright_embedded_files_end};
}

} // namespace

std::string_view embeddedFile(std::span<const EmbeddedFile> files, std::string_view path) {
    for (const EmbeddedFile& file : files)
        if (path == file.name) return {file.begin, file.end};
    throw std::out_of_range("No file is built in as " + std::string(path));
}

std::string_view embeddedFile(std::string_view path) {
    return embeddedFile(resources(), path);
}

std::vector<std::string_view> embeddedFiles(std::string_view prefix) {
    std::vector<std::string_view> names;
    for (const EmbeddedFile& file : resources())
        if (std::string_view(file.name).starts_with(prefix)) names.emplace_back(file.name);
    std::ranges::sort(names);
    return names;
}

} // namespace loopwright
