// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace loopwright {

/// An empty folder that goes, with everything in it, when the test is over.
class TemporaryFolder {
  public:
    TemporaryFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "loopwright-XXXXXX").string();
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
