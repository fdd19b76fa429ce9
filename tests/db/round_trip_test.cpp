// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/fixture.h"
#include "tests/support/arbitrary_installation.h"

#include <SQLiteCpp/Database.h>
#include <rapidcheck.h>

namespace loopwright {
namespace {

TEST_F(WorkbookTest, NewWorkbookHasNothing) {
    Workbook book = create();
    EXPECT_TRUE(must(book.sites()).empty());
    EXPECT_TRUE(must(book.journal()).empty());
    EXPECT_FALSE(must(book.undoable()));
    EXPECT_FALSE(must(book.undo()));
    EXPECT_FALSE(must(book.redo()));
}

TEST_F(WorkbookTest, SiteComesBackAsItWasAdded) {
    const Installation added = workshop(ids);
    forEachRowKind([&](auto blank) {
        EXPECT_FALSE((added.*RecordTraits<decltype(blank)>::rows).empty()) << "the sample lacks this kind";
    });
    const JournalEntry entry = must(create().add(added, takenIn));
    Workbook book = open();
    EXPECT_EQ(must(book.sites()), (std::vector<SiteEntry>{{added.site.id, "Net loft"}}));
    EXPECT_EQ(must(book.load(added.site.id)), added);
    EXPECT_EQ(must(book.journal()), std::vector{entry});
}

TEST_F(WorkbookTest, SitesAreKeptApart) {
    Workbook book = create();
    const Installation first = workshop(ids);
    const Installation second = workshop(ids);
    must(book.add(first, takenIn));
    must(book.add(second, takenIn));
    EXPECT_EQ(must(book.load(first.site.id)), first);
    EXPECT_EQ(must(book.load(second.site.id)), second);
    EXPECT_EQ(refusal(book.load(ids.next())), "workbook.no-such-site");
}

TEST_F(WorkbookTest, SameSiteTwiceIsRefused) {
    Workbook book = create();
    const Installation added = workshop(ids);
    must(book.add(added, takenIn));
    EXPECT_EQ(refusal(book.add(added, takenIn)), "workbook.id-taken");
    EXPECT_EQ(must(book.journal()).size(), 1u);
}

TEST_F(WorkbookTest, RecordWithoutOwnerIsRefused) {
    Workbook book = create();
    Installation added = workshop(ids);
    added.circuits[0].board = Id{};
    EXPECT_EQ(refusal(book.add(added, takenIn)), "workbook.owner-missing");
    EXPECT_TRUE(must(book.sites()).empty());
}

TEST_F(WorkbookTest, ValueThatCannotBeReadIsNamed) {
    const Installation added = workshop(ids);
    must(create().add(added, takenIn));
    SQLite::Database(path.string(), SQLite::OPEN_READWRITE)
        .exec("UPDATE circuit SET wiring_lineSize_mm2 = 'thick'");
    const auto loaded = open().load(added.site.id);
    ASSERT_EQ(refusal(loaded), "workbook.unreadable-value");
    EXPECT_EQ(shown(loaded.error()),
              "workbook.unreadable-value [record.circuit] [field.circuit.wiring.lineSize_mm2] [thick]");
}

TEST_F(WorkbookProperty, AnythingTheCatalogueAllowsComesBack) {
    Workbook book = create();
    EXPECT_TRUE(rc::check([&] {
        const Installation added = arbitrary::installation(ids);
        must(book.add(added, takenIn));
        RC_ASSERT(must(book.load(added.site.id)) == added);
    }));
}

} // namespace
} // namespace loopwright
