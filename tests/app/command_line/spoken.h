// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/command_line.h"
#include "tests/core/demo/demo_file.h"

#include <sstream>
#include <string>
#include <vector>

namespace loopwright::test {

/// What a command left at the terminal.
struct Outcome {
    int code = -1;
    std::string out, err;
};

/// Carries out a command line, without the program's name, as the program does; windows are not opened.
inline Outcome spoken(const std::vector<std::string>& arguments) {
    std::vector<const char*> words{"loopwright"};
    for (const std::string& argument : arguments)
        words.push_back(argument.c_str());
    std::ostringstream out, err;
    const Words english(QLocale::c());
    static const Knowledge knowledge;
    const FixedClock clock(std::chrono::sys_days(std::chrono::year(2026) / 3 / 12));
    RandomIds ids;
    const Request request = parseCommandLine(static_cast<int>(words.size()), words.data(), out, err);
    const int code = carryOut(request, {out, err, english, knowledge, clock, ids, "tester"});
    return {code, out.str(), err.str()};
}

inline void writeBytes(const std::filesystem::path& path, std::string_view bytes) {
    std::ofstream file(path, std::ios::binary);
    file << bytes;
    if (!file.flush()) throw std::runtime_error("cannot write " + path.string());
}

inline const std::string demoSiteFile = (demoFolder / "oakum-row.site.json").string();

} // namespace loopwright::test
