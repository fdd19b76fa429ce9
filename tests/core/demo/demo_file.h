// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

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

} // namespace loopwright::test
