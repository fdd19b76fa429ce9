// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/schema.h"
#include "tests/db/fixture.h"
#include "tests/support/without_privileges.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <fstream>
#include <sys/stat.h>

namespace loopwright {
namespace {

namespace fs = std::filesystem;

/// Files that are not what they should be.
class OpenTest : public WorkbookTest {
  protected:
    tl::expected<Workbook, Message> tried() { return Workbook::open(path, surroundings()); }
    void write(std::string_view text) { std::ofstream(path) << text; }
    /// A workbook with one site, closed.
    Installation closedWorkbook() {
        Installation made = workshop(ids);
        must(create().add(made, takenIn));
        return made;
    }
};

TEST_F(OpenTest, MissingFileIsNamed) {
    const auto outcome = tried();
    ASSERT_EQ(refusal(outcome), "workbook.no-such-file");
    EXPECT_EQ(outcome.error(), (Message{"workbook.no-such-file", {path.string()}}));
    EXPECT_FALSE(fs::exists(path)) << "opening must not make a file";
}

TEST_F(OpenTest, TextIsNotAWorkbook) {
    write("Zs of the kiln: 0.54\n");
    EXPECT_EQ(refusal(tried()), "workbook.not-a-workbook");
    write(std::string(8192, 'x'));
    EXPECT_EQ(refusal(tried()), "workbook.not-a-workbook");
}

TEST_F(OpenTest, EmptyFileIsNotAWorkbookAndStaysEmpty) {
    write("");
    EXPECT_EQ(refusal(tried()), "workbook.not-a-workbook");
    EXPECT_EQ(fs::file_size(path), 0u);
}

TEST_F(OpenTest, FolderIsNotAWorkbook) {
    fs::create_directory(path);
    EXPECT_EQ(refusal(tried()), "workbook.not-a-workbook");
}

TEST_F(OpenTest, OtherDatabaseIsNotAWorkbookAndIsLeftAlone) {
    SQLite::Database(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
        .exec("PRAGMA application_id = 7; CREATE TABLE site (id); INSERT INTO site VALUES (1)");
    const auto size = fs::file_size(path);
    EXPECT_EQ(refusal(tried()), "workbook.not-a-workbook");
    EXPECT_EQ(fs::file_size(path), size);
    EXPECT_EQ(SQLite::Database(path.string()).execAndGet("PRAGMA journal_mode").getString(), "delete");
}

TEST_F(OpenTest, TruncatedWorkbookIsRefused) {
    closedWorkbook();
    const auto whole = fs::file_size(path);
    for (const std::uintmax_t size : {whole - 4096, whole / 2, std::uintmax_t{4096}, std::uintmax_t{2000}}) {
        fs::resize_file(path, size);
        EXPECT_EQ(refusal(tried()), "workbook.damaged") << size << " of " << whole << " bytes";
    }
    fs::resize_file(path, 50);
    EXPECT_EQ(refusal(tried()), "workbook.not-a-workbook");
}

TEST_F(OpenTest, WorkbookWithOverwrittenPagesIsRefusedWhenItIsRead) {
    const Installation added = closedWorkbook();
    const auto pages = fs::file_size(path) / 4096;
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    for (std::uintmax_t page = 1; page < pages; ++page) {
        file.seekp(static_cast<std::streamoff>(page * 4096));
        file << std::string(64, '\x5A');
    }
    file.close();
    auto opened = tried();
    if (!opened)
        EXPECT_EQ(refusal(opened), "workbook.damaged");
    else
        EXPECT_EQ(refusal(opened->load(added.site.id)), "workbook.damaged");
}

TEST_F(OpenTest, NewerWorkbookIsRefusedAndSaysWhichVersion) {
    closedWorkbook();
    const int newer = latestSchemaVersion() + 1;
    SQLite::Database(path.string(), SQLite::OPEN_READWRITE)
        .exec("PRAGMA user_version = " + std::to_string(newer));
    const auto outcome = tried();
    ASSERT_EQ(refusal(outcome), "workbook.newer");
    EXPECT_EQ(outcome.error().arguments, (std::vector<Argument>{path.string(), std::int64_t{newer},
                                                                std::int64_t{latestSchemaVersion()}}));
}

TEST_F(OpenTest, FileThatMayOnlyBeReadIsRefused) {
    closedWorkbook();
    fs::permissions(path, fs::perms::owner_read);
    const WithoutPrivileges bound;
    EXPECT_EQ(refusal(tried()), "workbook.read-only");
}

TEST_F(OpenTest, FolderThatMayOnlyBeReadIsRefused) {
    closedWorkbook();
    fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
    const WithoutPrivileges bound;
    EXPECT_EQ(refusal(tried()), "workbook.folder-read-only");
    EXPECT_EQ(refusal(Workbook::create(folder / "new.loopwright", surroundings())), "workbook.cannot-open");
}

TEST_F(OpenTest, WorkbookThatAnotherProgramKeepsToItselfIsRefused) {
    closedWorkbook();
    SQLite::Database other(path.string(), SQLite::OPEN_READWRITE);
    other.exec("PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; COMMIT");
    EXPECT_EQ(refusal(tried()), "workbook.busy");
}

TEST_F(OpenTest, NothingIsWrittenOverWhenAWorkbookIsMade) {
    write("a letter");
    EXPECT_EQ(refusal(Workbook::create(path, surroundings())), "workbook.already-there");
    EXPECT_EQ(fs::file_size(path), 8u);
    EXPECT_EQ(refusal(Workbook::create(folder / "no such folder" / "book", surroundings())),
              "workbook.cannot-open");
}

TEST_F(OpenTest, NameThatLooksLikeAUriIsAName) {
    const fs::path here = fs::current_path();
    fs::current_path(folder.path());
    must(Workbook::create("file:book?mode=memory", surroundings()));
    EXPECT_TRUE(fs::exists(folder / "file:book?mode=memory"));
    fs::current_path(here);
}

TEST_F(OpenTest, ClosedWorkbookIsOneFile) {
    closedWorkbook();
    const auto files = std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator());
    EXPECT_EQ(files, 1) << "a closed workbook can be copied as one file";
}

} // namespace
} // namespace loopwright
