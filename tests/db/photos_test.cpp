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
    EXPECT_EQ(must(book.putPhoto(bytesOf("abc"), "image/png")), digestOfAbc);
    EXPECT_EQ(must(book.putPhoto(bytesOf("abc"), "image/png")), digestOfAbc);
    EXPECT_EQ(must(open().photo(digestOfAbc)), (PhotoBytes{"image/png", bytesOf("abc")}));
    EXPECT_EQ(SQLite::Database(path.string()).execAndGet("SELECT count(*) FROM photo_blob").getInt(), 1);
    EXPECT_TRUE(must(book.journal()).empty()) << "pictures are outside the journal";
}

TEST_F(WorkbookTest, EmptyPhotoIsKeptToo) {
    Workbook book = create();
    EXPECT_TRUE(must(book.photo(must(book.putPhoto({}, "image/png")))).bytes.empty());
}

TEST_F(WorkbookTest, PhotoThatIsNotKeptIsNamed) {
    const auto outcome = create().photo(digestOfAbc);
    ASSERT_EQ(refusal(outcome), "workbook.no-such-photo");
    EXPECT_EQ(outcome.error().arguments, (std::vector<Argument>{path.string(), std::string(digestOfAbc)}));
}

TEST_F(WorkbookTest, PhotoThatNoLongerMatchesItsDigestIsRefused) {
    must(create().putPhoto(bytesOf("abc"), "image/png"));
    SQLite::Database(path.string(), SQLite::OPEN_READWRITE)
        .exec("DROP TRIGGER photo_bytes_never_change; UPDATE photo_blob SET bytes = x'00'");
    EXPECT_EQ(refusal(open().photo(digestOfAbc)), "workbook.damaged");
}

} // namespace
} // namespace loopwright
