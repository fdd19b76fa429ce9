// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/surroundings.h"

#include <filesystem>
#include <vector>

/// Commands that answer sums. They read no workbook.
namespace loopwright {

int listSumsCommand(const CommandSurroundings& surroundings, const std::string& ruleSet, bool asJson);
/// `assignments` are texts such as "length_m=30".
int sumCommand(const CommandSurroundings& surroundings, const std::string& ruleSet, const std::string& name,
               const std::vector<std::string>& assignments, bool asJson);
/// Answers each line of a file, "-" being what comes in, by one line of JSON, whatever the line holds.
/// Refused at the end where a line was.
int batchCommand(const CommandSurroundings& surroundings, const std::string& ruleSet,
                 const std::filesystem::path& file);

} // namespace loopwright
