// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/surroundings.h"

#include <filesystem>
#include <span>
#include <string>

/// One function a command. Each gives an exit code and leaves files as they were when it cannot do what was
/// asked.
namespace loopwright {

struct SiteChoice {
    std::filesystem::path file; ///< workbook or site file
    std::string site;           ///< name or id; empty: the only one
    std::string visit;          ///< label or id; empty: the newest
};

int assessCommand(const CommandSurroundings& surroundings, const SiteChoice& choice, bool asJson);
/// `labels` are GRADE=TEXT, what an office calls a grade. Needs a QGuiApplication for its fonts.
int reportCommand(const CommandSurroundings& surroundings, const SiteChoice& choice,
                  const std::filesystem::path& pdf, std::span<const std::string> labels);
/// Adds the site of a site file to a workbook, which is made when it is not there.
int importCommand(const CommandSurroundings& surroundings, const std::filesystem::path& siteFile,
                  const std::filesystem::path& workbook);
int exportCommand(const CommandSurroundings& surroundings, const SiteChoice& choice,
                  const std::filesystem::path& siteFile);

/// What `demo` has left in its folder.
struct DemoFiles {
    std::filesystem::path workbook;
    std::filesystem::path report;
};
DemoFiles demoFiles(const std::filesystem::path& folder);
/// Writes the demo workbook and its report, and prints what was found. Needs a QGuiApplication.
int demoCommand(const CommandSurroundings& surroundings, const std::filesystem::path& folder);

} // namespace loopwright
