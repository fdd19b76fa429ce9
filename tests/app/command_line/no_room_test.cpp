// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/command_line/spoken.h"
#include "tests/support/full_disk.h"
#include "tests/support/temporary_folder.h"
#include "tests/support/without_privileges.h"

#include <gmock/gmock.h>

/// Commands that cannot write where they are asked to: each says where and why, and leaves nothing behind.
namespace loopwright {
namespace {

namespace fs = std::filesystem;
using test::Outcome;
using test::spoken;
using testing::AllOf;
using testing::AnyOf;
using testing::HasSubstr;
using Arguments = std::vector<std::string>;

std::vector<std::string> namesIn(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

class NoRoom : public testing::Test {
  protected:
    void SetUp() override {
        const Outcome made = spoken({"import", test::demoSiteFile, workbook});
        ASSERT_EQ(made.code, 0) << made.err;
        fs::create_directory(target);
        test::writeBytes(target / "kept.site.json", "the one before");
        test::writeBytes(target / "kept.pdf", "the one before");
    }

    /// Every command that writes, told to write to the target: over what is there, and anew.
    std::vector<Arguments> writing() const {
        std::vector<Arguments> all{{"import", test::demoSiteFile, (target / "new.loopwright").string()},
                                   {"demo", "--folder", (target / "demo").string()},
                                   {"demo", "--folder", target.string()}};
        for (const char* name : {"kept", "new"}) {
            all.push_back({"export", test::demoSiteFile, (target / name).string() + ".site.json"});
            all.push_back({"report", test::demoSiteFile, "--pdf", (target / name).string() + ".pdf"});
        }
        return all;
    }

    void expectRefused(const Outcome& outcome, const Arguments& arguments, const auto& says) const {
        EXPECT_EQ(outcome.code, 1) << testing::PrintToString(arguments);
        EXPECT_EQ(outcome.out, "") << testing::PrintToString(arguments);
        EXPECT_THAT(outcome.err, AllOf(HasSubstr(target.string()), says))
            << testing::PrintToString(arguments);
        EXPECT_THAT(namesIn(target), testing::ElementsAre("kept.pdf", "kept.site.json"))
            << testing::PrintToString(arguments);
        for (const char* name : {"kept.pdf", "kept.site.json"})
            EXPECT_EQ(test::bytesOf(target / name), "the one before") << testing::PrintToString(arguments);
    }

    TemporaryFolder folder;
    fs::path target = folder / "target";
    std::string workbook = (folder / "w.loopwright").string();
};

TEST_F(NoRoom, AFullDiskIsSaid) {
    for (const Arguments& arguments : writing()) {
        Outcome outcome;
        {
            const FullDisk full(8000);
            outcome = spoken(arguments);
        }
        expectRefused(outcome, arguments, testing::Not(HasSubstr("Unknown")));
    }
}

TEST_F(NoRoom, AFullDiskLeavesTheWorkbookThatIsAddedTo) {
    const std::string hut = (folder / "hut.site.json").string();
    test::writeBytes(hut, R"({"loopwright": "site", "version": 1, "name": "Hut"})");
    const std::string before = spoken({"assess", workbook, "--json"}).out;
    Outcome outcome;
    {
        const FullDisk full(8000);
        outcome = spoken({"import", hut, workbook});
    }
    EXPECT_EQ(outcome.code, 1);
    EXPECT_THAT(outcome.err, HasSubstr(workbook));
    EXPECT_EQ(spoken({"assess", workbook, "--json"}).out, before) << "it must still hold the one site";
}

TEST_F(NoRoom, AReadOnlyFolderIsSaid) {
    fs::permissions(target, fs::perms::owner_read | fs::perms::owner_exec);
    for (const Arguments& arguments : writing()) {
        Outcome outcome;
        {
            const WithoutPrivileges bound;
            outcome = spoken(arguments);
        }
        expectRefused(outcome, arguments, AnyOf(HasSubstr("Permission denied"), HasSubstr("may write")));
    }
}

TEST_F(NoRoom, AReadOnlyWorkbookIsSaidAndStaysAsItWas) {
    const std::string bytes = test::bytesOf(workbook);
    const std::string hut = (folder / "hut.site.json").string();
    test::writeBytes(hut, R"({"loopwright": "site", "version": 1, "name": "Hut"})");
    for (const fs::path& sealed : {fs::path(workbook), folder.path()}) {
        fs::permissions(workbook, fs::perms::owner_read);
        if (sealed == folder.path()) fs::permissions(sealed, fs::perms::owner_read | fs::perms::owner_exec);
        Outcome outcome;
        {
            const WithoutPrivileges bound;
            outcome = spoken({"import", hut, workbook});
        }
        EXPECT_EQ(outcome.code, 1) << sealed;
        EXPECT_THAT(outcome.err, AllOf(HasSubstr(workbook), HasSubstr("may be read but not written")));
        EXPECT_EQ(test::bytesOf(workbook), bytes) << sealed;
    }
    fs::permissions(folder.path(), fs::perms::owner_all);
}

} // namespace
} // namespace loopwright
