// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/fixture.h"

#include <SQLiteCpp/Database.h>

#include <cstring>

namespace loopwright {
namespace {

std::vector<std::byte> bytesOf(std::string_view text) {
    std::vector<std::byte> bytes(text.size());
    std::memcpy(bytes.data(), text.data(), text.size());
    return bytes;
}

// FIPS 180-4, SHA-256 of the one-block message "abc" (NIST's example values, csrc.nist.gov).
constexpr std::string_view digestOfAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

TEST_F(WorkbookTest, PhotoIsKeptUnderItsDigestOnce) {
    Workbook book = create();
    EXPECT_EQ(must(book.putAttachment(bytesOf("abc"), "image/png")), digestOfAbc);
    EXPECT_EQ(must(book.putAttachment(bytesOf("abc"), "image/png")), digestOfAbc);
    EXPECT_EQ(must(open().attachment(digestOfAbc)), (AttachmentBytes{"image/png", bytesOf("abc")}));
    EXPECT_EQ(SQLite::Database(path.string()).execAndGet("SELECT count(*) FROM photo_blob").getInt(), 1);
    EXPECT_TRUE(must(book.journal()).empty()) << "pictures are outside the journal";
}

TEST_F(WorkbookTest, EmptyPhotoIsKeptToo) {
    Workbook book = create();
    EXPECT_TRUE(must(book.attachment(must(book.putAttachment({}, "image/png")))).bytes.empty());
}

TEST_F(WorkbookTest, PhotoThatIsNotKeptIsNamed) {
    const auto outcome = create().attachment(digestOfAbc);
    ASSERT_EQ(refusal(outcome), "workbook.no-such-attachment");
    EXPECT_EQ(outcome.error().arguments, (std::vector<Argument>{path.string(), std::string(digestOfAbc)}));
}

TEST_F(WorkbookTest, PhotoThatNoLongerMatchesItsDigestIsRefused) {
    must(create().putAttachment(bytesOf("abc"), "image/png"));
    SQLite::Database(path.string(), SQLite::OPEN_READWRITE)
        .exec("DROP TRIGGER photo_bytes_never_change; UPDATE photo_blob SET bytes = x'00'");
    EXPECT_EQ(refusal(open().attachment(digestOfAbc)), "workbook.damaged");
}

TEST_F(WorkbookTest, LogGoesWithTheReadingsOfItsCircuitAndComesBackWithThem) {
    const Installation site = workshop(ids);
    must(create().add(site, takenIn));
    Workbook book = open();
    must(book.commit({takenIn, {removeRecord(RecordKind::Circuit, site.circuits[1].id)}}));
    EXPECT_TRUE(must(open().load(site.site.id)).currentLogs.empty());
    must(book.undo());
    EXPECT_EQ(must(open().load(site.site.id)), site);
}

TEST_F(WorkbookTest, LogOfAnIssuedVisitNeverChanges) {
    Installation site = workshop(ids);
    site.visits[0].state = VisitState::Issued;
    must(create().add(site, takenIn));
    const Id log = site.currentLogs[0].id;
    EXPECT_EQ(refusal(open().commit(setting(RecordKind::CurrentLog, log, "channel", "I2"))),
              "workbook.issued");
    EXPECT_EQ(refusal(open().commit({takenIn, {removeRecord(RecordKind::CurrentLog, log)}})),
              "workbook.issued");
}

} // namespace
} // namespace loopwright
