// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/commands.h"

#include <variant>
#include <vector>

namespace loopwright {

/// What the words on the command line ask for.
struct OpenRequest {
    std::filesystem::path workbook; ///< empty: the start page
};
struct DemoRequest {
    std::filesystem::path folder;
};
struct AssessRequest {
    SiteChoice choice;
    bool asJson = false;
};
struct ReportRequest {
    SiteChoice choice;
    std::filesystem::path pdf;
    std::vector<std::string> labels; ///< GRADE=TEXT
};
struct ImportRequest {
    std::filesystem::path siteFile;
    std::filesystem::path workbook;
};
struct ExportRequest {
    SiteChoice choice;
    std::filesystem::path siteFile;
};
struct SumsRequest {
    std::string ruleSet; ///< key; empty: the default
    bool asJson = false;
};
struct SumRequest {
    std::string ruleSet;
    std::string name;
    std::vector<std::string> assignments; ///< "length_m=30"
    std::filesystem::path batch;          ///< instead of a name: a file of sums, one a line
    bool asJson = false;
};
/// Nothing is left to do: help or the version was printed, or the words were not understood.
struct Answered {
    int exitCode = exitDone;
};
using Request = std::variant<OpenRequest, DemoRequest, AssessRequest, ReportRequest, ImportRequest,
                             ExportRequest, SumsRequest, SumRequest, Answered>;

/// Understands the command line; help goes to `out`, what was not understood to `err`.
Request parseCommandLine(int argc, const char* const* argv, std::ostream& out, std::ostream& err);

/// Carries out everything but opening the window.
int carryOut(const Request& request, const CommandSurroundings& surroundings);

/// The workbook that a window is to show after the request; nothing when none is.
std::optional<std::filesystem::path> windowAfter(const Request& request);

} // namespace loopwright
