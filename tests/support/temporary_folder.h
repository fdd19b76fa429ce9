// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace loopwright {

/// Where files are kept in memory, if the system offers that: waiting for the disk would be most of a test
/// that commits thousands of times.
inline std::filesystem::path memoryFolder() {
    const std::filesystem::path memory = "/dev/shm";
    return std::filesystem::is_directory(memory) ? memory : std::filesystem::temp_directory_path();
}

/// An empty folder that goes, with everything in it, when the test is over.
class TemporaryFolder {
  public:
    explicit TemporaryFolder(const std::filesystem::path& parent = std::filesystem::temp_directory_path()) {
        std::string name = (parent / "loopwright-XXXXXX").string();
        if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder could be made");
        path_ = name;
    }
    ~TemporaryFolder() {
        std::error_code gone;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, gone);
        std::filesystem::remove_all(path_, gone);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    std::filesystem::path operator/(std::string_view name) const { return path_ / name; }
    const std::filesystem::path& path() const { return path_; }

  private:
    std::filesystem::path path_;
};

} // namespace loopwright
