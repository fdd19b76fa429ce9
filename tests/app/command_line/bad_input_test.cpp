// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/command_line/spoken.h"
#include "tests/support/temporary_folder.h"

#include <gmock/gmock.h>

#include <chrono>
#include <sys/resource.h>
#include <unistd.h>

namespace loopwright {
namespace {

namespace fs = std::filesystem;
using test::Outcome;
using test::spoken;
using testing::HasSubstr;

/// A workbook with a small site, and what it holds.
class BadInput : public testing::Test {
  protected:
    void SetUp() override {
        test::writeBytes(folder / "hut.site.json", R"({"loopwright": "site", "version": 1, "name": "Hut",
            "boards": [{"name": "Board", "circuits": [{"way": "1", "wiring": {"lineSize_mm2": 2.5}}]}]})");
        const Outcome made = spoken({"import", (folder / "hut.site.json").string(), workbook});
        ASSERT_EQ(made.code, 0) << made.err;
        before = contents();
    }
    void TearDown() override { EXPECT_EQ(contents(), before) << "the workbook was changed"; }

    std::string contents() const {
        const Outcome exported = spoken({"export", workbook, (folder / "contents.site.json").string()});
        EXPECT_EQ(exported.code, 0) << exported.err;
        return test::bytesOf(folder / "contents.site.json");
    }

    /// Every command that reads such a file refuses it with a sentence that mentions each of `parts`.
    void expectRefused(const fs::path& file, const std::vector<std::string>& parts) {
        for (const std::vector<std::string>& arguments :
             {std::vector<std::string>{"import", file.string(), workbook},
              {"assess", file.string()},
              {"report", file.string(), "--pdf", (folder / "out.pdf").string()}}) {
            const Outcome outcome = spoken(arguments);
            EXPECT_EQ(outcome.code, 1) << arguments.front();
            EXPECT_EQ(outcome.out, "") << arguments.front();
            EXPECT_TRUE(outcome.err.ends_with('\n')) << arguments.front();
            for (const std::string& part : parts)
                EXPECT_THAT(outcome.err, HasSubstr(part)) << arguments.front();
        }
        EXPECT_FALSE(fs::exists(folder / "out.pdf"));
    }

    fs::path given(std::string_view text) {
        const fs::path file = folder / "given.site.json";
        test::writeBytes(file, text);
        return file;
    }

    TemporaryFolder folder;
    std::string workbook = (folder / "hut.loopwright").string();
    std::string before;
};

std::string hutWith(std::string_view lineSize) {
    return R"({"loopwright": "site", "version": 1, "boards": [{"name": "B", "circuits": [{"way": "1", "wiring": {"lineSize_mm2": )" +
           std::string(lineSize) + "}}]}]}";
}

TEST_F(BadInput, MalformedTextSaysWhere) {
    expectRefused(given("{\n  \"loopwright\" \"site\"\n}"), {"given.site.json", "line 2, column 16"});
    expectRefused(given(""), {"given.site.json"});
    expectRefused(given("just a letter"), {"given.site.json"});
    expectRefused(given(std::string("\0\1\2\3", 4)), {"given.site.json"});
}

TEST_F(BadInput, ViolationsSayWhereAndWhat) {
    const std::string place = "boards, 1st, circuits, 1st, wiring, lineSize_mm2";
    expectRefused(given(hutWith("-2.5")), {place, "-2.5", "below zero"});
    expectRefused(given(hutWith("\"NaN\"")), {place, "NaN"});
    expectRefused(given(hutWith("NaN")), {"line 1", "NaN"});
    expectRefused(given(hutWith("true")), {place, "true or false"});
    expectRefused(given(R"({"loopwright": "site", "version": 1, "bords": []})"), {"bords", "boards"});
    expectRefused(
        given(R"({"loopwright": "site", "version": 1, "supplies": [{"fuse": {"family": "60898-E"}}]})"),
        {"supplies, 1st, fuse, family", "60898-E", "60898-D"});
}

TEST_F(BadInput, ARealFileCutAnywhereIsRefused) {
    const std::string whole = test::bytesOf(test::demoSiteFile);
    for (const char* attachments : {"photos", "logs"})
        fs::copy(test::demoFolder / attachments, folder / attachments);
    for (std::size_t length = 0; length + 2 < whole.size(); length += 1000) {
        const Outcome outcome = spoken({"import", given(whole.substr(0, length)).string(), workbook});
        EXPECT_EQ(outcome.code, 1) << length;
        EXPECT_NE(outcome.err, "") << length;
        EXPECT_EQ(outcome.out, "") << length;
    }
}

TEST_F(BadInput, AGigabyteIsRefusedBeforeItIsRead) {
    const fs::path file = folder / "huge.site.json";
    test::writeBytes(file, "{");
    fs::resize_file(file, std::uintmax_t{1} << 30); // sparse: takes no room
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    const long mostBefore = usage.ru_maxrss;
    const auto start = std::chrono::steady_clock::now();
    expectRefused(file, {"huge.site.json", "256"});
    EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(5));
    getrusage(RUSAGE_SELF, &usage);
    EXPECT_LT(usage.ru_maxrss - mostBefore, 64 * 1024) << "kilobytes";
}

TEST_F(BadInput, WhatIsNoFileIsSaid) {
    expectRefused(folder / "absent.site.json", {"absent.site.json"});
    fs::create_directory(folder / "a folder");
    expectRefused(folder / "a folder", {"a folder"});
}

TEST_F(BadInput, AFileThatOnlyLooksLikeAWorkbookIsRefused) {
    std::string bytes = "SQLite format 3";
    bytes.resize(8192, '\0');
    test::writeBytes(folder / "false.loopwright", bytes);
    expectRefused(folder / "false.loopwright", {"false.loopwright"});
    const Outcome into = spoken({"import", test::demoSiteFile, (folder / "false.loopwright").string()});
    EXPECT_EQ(into.code, 1);
    EXPECT_THAT(into.err, HasSubstr("false.loopwright"));
    EXPECT_EQ(test::bytesOf(folder / "false.loopwright"), bytes);
    const Outcome text = spoken({"import", test::demoSiteFile, (folder / "hut.site.json").string()});
    EXPECT_EQ(text.code, 1);
    EXPECT_THAT(text.err, HasSubstr("hut.site.json"));
}

TEST_F(BadInput, ASiteThatIsThereAlreadyIsNotAddedAgain) {
    const Outcome outcome = spoken({"import", (folder / "contents.site.json").string(), workbook});
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("already"));
}

TEST_F(BadInput, NothingIsWrittenOverWhatIsRead) {
    const Outcome exported = spoken({"export", workbook, workbook});
    EXPECT_EQ(exported.code, 1);
    EXPECT_THAT(exported.err, HasSubstr("hut.loopwright"));
    test::writeBytes(
        folder / "visited.site.json",
        R"({"loopwright": "site", "version": 1, "name": "Hut", "visits": [{"label": "first"}]})");
    const std::string file = (folder / "visited.site.json").string();
    const std::string bytes = test::bytesOf(file);
    EXPECT_EQ(spoken({"report", file, "--pdf", file}).code, 1);
    EXPECT_EQ(test::bytesOf(file), bytes);
}

TEST_F(BadInput, AMissingFolderIsSaidAndNotMade) {
    const fs::path gone = folder / "gone";
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"export", workbook, (gone / "out.site.json").string()},
          {"report", test::demoSiteFile, "--pdf", (gone / "out.pdf").string()},
          {"import", test::demoSiteFile, (gone / "new.loopwright").string()}}) {
        const Outcome outcome = spoken(arguments);
        EXPECT_EQ(outcome.code, 1) << arguments.front();
        EXPECT_THAT(outcome.err, HasSubstr("gone")) << arguments.front();
    }
    EXPECT_FALSE(fs::exists(gone));
}

TEST_F(BadInput, ARefusedImportMakesNoWorkbook) {
    const fs::path fresh = folder / "fresh.loopwright";
    EXPECT_EQ(spoken({"import", given(hutWith("-1")).string(), fresh.string()}).code, 1);
    for (const auto& entry : fs::directory_iterator(folder.path()))
        EXPECT_THAT(entry.path().filename().string(), testing::Not(HasSubstr("fresh")));
}

TEST_F(BadInput, WhatIsNeitherWorkbookNorSiteFileIsSaidToBeSo) {
    std::string noise;
    for (unsigned state = 7; noise.size() < 5000; state = state * 1103515245U + 12345U)
        noise += static_cast<char>(state >> 16U);
    for (const std::string& bytes :
         {noise, std::string("%PDF-1.4\n%\xE2\xE3\xCF\xD3\n"), std::string("\0\1\2\3", 4),
          std::string("SQLite"), std::string("just a letter")})
        expectRefused(given(bytes), {"given.site.json is neither a workbook nor a site file"});
    expectRefused(given("\xFF\xFE{\0"), {"UTF-8"});
}

TEST_F(BadInput, AWorkbookIsNotTakenForASiteFile) {
    const Outcome outcome = spoken({"import", workbook, (folder / "other.loopwright").string()});
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr(workbook + " is a workbook"));
    EXPECT_FALSE(fs::exists(folder / "other.loopwright"));
}

TEST_F(BadInput, WhatIsNoFileIsNotReplaced) {
    const fs::path there = folder / "a folder";
    fs::create_directory(there);
    for (const std::string& target : {there.string(), std::string("/dev/null")}) {
        for (const std::vector<std::string>& arguments :
             {std::vector<std::string>{"export", workbook, target},
              {"report", test::demoSiteFile, "--pdf", target}}) {
            const Outcome outcome = spoken(arguments);
            EXPECT_EQ(outcome.code, 1) << arguments.front();
            EXPECT_THAT(outcome.err, HasSubstr(target + " is not a file")) << arguments.front();
        }
        EXPECT_FALSE(fs::is_regular_file(target)) << target;
    }
    EXPECT_TRUE(fs::is_empty(there));
}

} // namespace
} // namespace loopwright
