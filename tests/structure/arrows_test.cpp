// SPDX-License-Identifier: GPL-3.0-or-later
// CMake enforces the arrows by what each target links; this reads the includes as well, so that a leak is
// named by file and line before a linker complains of something else.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

struct Rule {
    std::string room;
    std::vector<std::string> forbidden; ///< patterns of what an include may not name
};

const std::vector<Rule> rules{
    {"core", {"<Q[A-Za-z/]", "<sqlite3", "<SQLiteCpp", "\"(db|forms|app)/"}},
    {"core/units", {"\"core/(model|reference|working|physics|sums|checks|assess|sitefile)/"}},
    {"core/model", {"\"core/(reference|physics|sums|checks|assess|sitefile)/"}},
    {"core/physics", {"\"core/(model|reference|sums|checks|assess|sitefile)/"}},
    {"core/reference", {"\"core/(sums|overload|checks|assess|remedy|sitefile)/"}},
    {"core/overload", {"\"core/(model|sums|checks|assess|remedy|sitefile)/"}},
    {"core/working", {"\"core/(model|physics|sums|checks|assess|sitefile)/"}},
    {"core/sums", {"\"core/(checks|assess|sitefile)/"}},
    {"core/checks", {"\"core/(assess|remedy|sitefile)/"}},
    {"core/assess", {"\"core/(remedy|sitefile)/"}},
    {"core/remedy", {"\"core/(sums|sitefile)/"}},
    {"db", {"<Q[A-Za-z/]", "\"(forms|app)/"}},
    {"forms", {"<sqlite3", "<SQLiteCpp", "<QSql", "\"(db|app)/"}},
};

bool isSource(const fs::path& path) {
    return path.extension() == ".cpp" || path.extension() == ".h";
}

TEST(Arrows, NoRoomIncludesWhatItMayNotKnow) {
    const fs::path root = LOOPWRIGHT_SOURCE_DIR;
    int filesRead = 0;
    for (const Rule& rule : rules) {
        for (const auto& entry : fs::recursive_directory_iterator(root / rule.room)) {
            if (!isSource(entry.path())) continue;
            ++filesRead;
            std::ifstream file(entry.path());
            std::string line;
            for (int number = 1; std::getline(file, line); ++number) {
                if (!line.starts_with("#include")) continue;
                for (const std::string& pattern : rule.forbidden)
                    EXPECT_FALSE(std::regex_search(line, std::regex(pattern)))
                        << fs::relative(entry.path(), root).string() << ":" << number << ": " << line;
            }
        }
    }
    EXPECT_GT(filesRead, 50) << "the rooms were not found under " << root;
}

TEST(Arrows, EverySourceNamesItsLicence) {
    const fs::path root = LOOPWRIGHT_SOURCE_DIR;
    for (const char* room : {"core", "db", "forms", "app", "tests"})
        for (const auto& entry : fs::recursive_directory_iterator(root / room)) {
            if (!isSource(entry.path()) || entry.file_size() == 0) continue;
            std::ifstream file(entry.path());
            std::string line;
            std::getline(file, line);
            EXPECT_EQ(line, "// SPDX-License-Identifier: GPL-3.0-or-later")
                << fs::relative(entry.path(), root).string();
        }
}

} // namespace
