// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/site_file.h"

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>
#include <string>

namespace loopwright::test {

inline const std::filesystem::path demoFolder =
    std::filesystem::path(LOOPWRIGHT_SOURCE_DIR) / "resources" / "demo";

/// Throws when the file cannot be opened.
inline std::string bytesOf(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot open " + path.string());
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

inline nlohmann::json demoDocument() {
    return nlohmann::json::parse(bytesOf(demoFolder / "oakum-row.site.json"));
}

inline nlohmann::json plantedFaults() {
    return nlohmann::json::parse(bytesOf(std::filesystem::path(LOOPWRIGHT_SOURCE_DIR) / "tests" / "core" /
                                         "demo" / "planted_faults.json"));
}

/// The demo site, imported. Throws with its problems when it is refused.
inline SiteImport importedDemo() {
    SequentialIds ids;
    const auto attachment = [](std::string_view path) -> tl::expected<std::string, Message> {
        return bytesOf(demoFolder / path);
    };
    auto imported = importSite(bytesOf(demoFolder / "oakum-row.site.json"), ids, attachment);
    if (imported) return std::move(*imported);
    std::string problems;
    for (const SiteFileProblem& problem : imported.error())
        problems += problem.where + ": " + std::string(problem.what.key) + "\n";
    throw std::runtime_error("the demo site is refused:\n" + problems);
}

} // namespace loopwright::test
