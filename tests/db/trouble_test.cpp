// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <csignal>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace loopwright {
namespace {

/// What must not cost a reading: other writers, a full disk, a disk that fails, a program that is killed.
class TroubleTest : public WorkbookTest {
  protected:
    TroubleTest() { must(create().add(before, takenIn)); }
    Change reading(std::string text) {
        return setting(RecordKind::CircuitReading, before.circuitReadings[0].id, "loopImpedance_ohm",
                       std::move(text));
    }
    Change longNote() {
        return setting(RecordKind::Site, before.site.id, "notes", std::string(1 << 20, 'n'));
    }
    std::string stored(Workbook& book) {
        const auto text = fieldText(must(book.load(before.site.id)), RecordKind::CircuitReading,
                                    before.circuitReadings[0].id, "loopImpedance_ohm");
        return text.value_or("no such reading");
    }
    void expectUntouched() {
        Workbook book = open();
        EXPECT_EQ(must(book.load(before.site.id)), before);
        EXPECT_EQ(must(book.journal()).size(), 1u);
        must(book.commit(reading("0.54")));
        EXPECT_EQ(stored(book), "0.54") << "the workbook must work again when the trouble is over";
    }

    const Installation before = workshop(ids);
};

TEST_F(TroubleTest, OtherWriterIsSaidAndWaitedOut) {
    Workbook book = open();
    SQLite::Database other(path.string(), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE");
    EXPECT_EQ(refusal(book.commit(reading("0.54"))), "workbook.busy");
    EXPECT_EQ(refusal(book.undo()), "workbook.busy");
    EXPECT_EQ(must(book.load(before.site.id)), before) << "reading goes on while another program writes";
    other.exec("COMMIT");
    must(book.commit(reading("0.54")));
    EXPECT_EQ(stored(book), "0.54");
}

TEST_F(TroubleTest, FullDiskLeavesTheWorkbookAsItWas) {
    {
        Surroundings full = surroundings();
        full.mostPages = 1; // SQLite takes this as: no more pages than there are
        Workbook book = must(Workbook::open(path, full));
        EXPECT_EQ(refusal(book.commit(longNote())), "workbook.disk-full");
        EXPECT_EQ(refusal(book.putAttachment(std::vector<std::byte>(1 << 20), "image/png")),
                  "workbook.disk-full");
        EXPECT_EQ(must(book.load(before.site.id)), before);
    }
    expectUntouched();
}

TEST_F(TroubleTest, FullDiskLeavesNoHalfMadeWorkbook) {
    Surroundings full = surroundings();
    full.mostPages = 3;
    EXPECT_EQ(refusal(Workbook::create(folder / "new.loopwright", full)), "workbook.disk-full");
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1)
        << "only the first workbook";
}

/// While it lives, no file of this process can grow: every write past the end fails as a failing disk's
/// would.
class NoFileGrows {
  public:
    NoFileGrows()
      : before_(std::signal(SIGXFSZ, SIG_IGN)) {
        getrlimit(RLIMIT_FSIZE, &limit_);
        const rlimit none{0, limit_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &none);
    }
    ~NoFileGrows() {
        setrlimit(RLIMIT_FSIZE, &limit_);
        std::signal(SIGXFSZ, before_);
    }
    NoFileGrows(const NoFileGrows&) = delete;
    NoFileGrows& operator=(const NoFileGrows&) = delete;

  private:
    rlimit limit_{};
    void (*before_)(int);
};

TEST_F(TroubleTest, FailingDiskLeavesTheWorkbookAsItWas) {
    {
        Workbook book = open();
        must(book.load(before.site.id)); // so that the files beside it are there
        const NoFileGrows failing;
        EXPECT_EQ(refusal(book.commit(longNote())), "workbook.input-output");
        EXPECT_EQ(must(book.load(before.site.id)), before);
    }
    expectUntouched();
}

TEST_F(TroubleTest, ReadingIsThereAfterTheProgramIsKilled) {
    const pid_t writer = fork();
    ASSERT_GE(writer, 0);
    if (writer == 0) {
        journalIds = SequentialIds(2'000'000);
        Workbook book = open("killed");
        if (book.commit(reading("0.54"))) std::raise(SIGKILL);
        _exit(1);
    }
    int status = 0;
    ASSERT_EQ(waitpid(writer, &status, 0), writer);
    ASSERT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL)
        << "the writer did not get as far as its commit";
    Workbook book = open();
    EXPECT_EQ(stored(book), "0.54");
    EXPECT_EQ(must(book.journal()).back().who, "killed");
    must(book.undo());
    EXPECT_EQ(must(book.load(before.site.id)), before);
}

} // namespace
} // namespace loopwright
