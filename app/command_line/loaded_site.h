// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/surroundings.h"
#include "core/assess/assessment.h"
#include "core/sitefile/site_file.h"

#include <filesystem>
#include <tl/expected.hpp>

namespace loopwright {

/// A site and one of its visits, wherever they came from, with what was found out.
struct LoadedSite {
    Installation installation;
    AttachmentSource attachments;
    const RuleSet* rules = nullptr; ///< of the knowledge
    Assessment assessment;
};

/// Reads a site from a workbook or from a site file; which of them it is shows in its content, not in its
/// name. From a workbook with several sites the one called `site` (or having that id) is taken, the only one
/// when it is empty.
tl::expected<std::pair<Installation, AttachmentSource>, QString>
readSite(const CommandSurroundings& surroundings, const std::filesystem::path& file, const std::string& site);

/// The same, judged: the visit called `visit` (or having that id), the newest when it is empty.
tl::expected<LoadedSite, QString> loadSite(const CommandSurroundings& surroundings,
                                           const std::filesystem::path& file, const std::string& site,
                                           const std::string& visit);

/// Reads a site file with the pictures beside it. The refusal lists every problem, one a line.
tl::expected<SiteImport, QString> readSiteFile(const CommandSurroundings& surroundings,
                                               const std::filesystem::path& file);

bool looksLikeWorkbook(const std::filesystem::path& file);

} // namespace loopwright
