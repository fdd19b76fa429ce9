// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"

#include <gmock/gmock.h>

namespace loopwright::csv {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

constexpr std::array columns{"In_A", "names", "source", "confidence"};

/// A row of an invented table, as the reader hands it over.
struct Cells {
    std::array<const char*, 4> cells;
    Row row() const { return Row("invented.csv", 7, columns, cells); }
};

template <class Action>
std::string complaint(Action action) {
    try {
        action();
        return "no complaint";
    } catch (const std::runtime_error& failure) {
        return failure.what();
    }
}

TEST(CsvRow, GivesCellsByName) {
    const Cells cells{{"2.5", "a;b / c", "x", ""}};
    EXPECT_EQ(cells.row().text("In_A"), "2.5");
    EXPECT_EQ(cells.row().number("In_A"), 2.5);
    EXPECT_THAT(cells.row().list("names"), ElementsAre("a", "b / c"));
    EXPECT_THAT(cells.row().list("confidence"), ElementsAre());
    EXPECT_EQ(cells.row().optionalNumber("confidence"), std::nullopt);
}

TEST(CsvRow, ComplaintsNameFileLineAndColumn) {
    for (const char* bad : {"2,5", "2.5 A", "nan", "inf", "1e999", "-", "0x10"}) {
        const Cells cells{{bad, "", "", ""}};
        EXPECT_EQ(complaint([&] { cells.row().number("In_A"); }),
                  std::string("invented.csv, line 7, column In_A: '") + bad + "' is not a number");
    }
    const Cells empty{{"", "", "", ""}};
    EXPECT_THAT(complaint([&] { empty.row().number("In_A"); }), HasSubstr("line 7, column In_A"));
    EXPECT_THAT(complaint([&] { empty.row().text("no such"); }), HasSubstr("column no such"));
    EXPECT_THAT(complaint([&] { sourceOf(empty.row(), "confidence"); }), HasSubstr("column source"));
}

TEST(CsvSource, KeepsTheDocumentApartFromWhereItWasSeen) {
    const Cells seen{{"1", "", "IEC 60228:2004 Table 1; seen: a catalogue, page 204", "seen"}};
    const Source source = sourceOf(seen.row(), "confidence");
    EXPECT_EQ(source.title, "IEC 60228:2004 Table 1");
    EXPECT_EQ(source.detail, "IEC 60228:2004 Table 1; seen: a catalogue, page 204");
    EXPECT_EQ(source.confidence, "seen");
    EXPECT_FALSE(source.fromMemory);
    EXPECT_EQ(sourceOf(seen.row(), "confidence", "IEC 60228, table 1").title, "IEC 60228, table 1");
}

TEST(CsvSource, MemoryIsFoundWhereverItIsSaid) {
    const Cells inSource{{"1", "", "from memory: BS 1362:1973", "high"}};
    EXPECT_TRUE(sourceOf(inSource.row(), "confidence").fromMemory);
    EXPECT_EQ(sourceOf(inSource.row(), "confidence").title, "BS 1362:1973");
    const Cells inside{{"1", "", "IEC 60898-1 Table 7; upper times from memory", "high"}};
    EXPECT_TRUE(sourceOf(inside.row(), "confidence").fromMemory);
    const Cells inWeight{{"1", "", "IEC 60898-1 Table 7", "medium (memory)"}};
    EXPECT_TRUE(sourceOf(inWeight.row(), "confidence").fromMemory);
}

TEST(CsvRead, QuotedCellsKeepTheirCommas) {
    int quoted = 0;
    read("inspection_items.csv", std::array{"key", "text"}, [&](const Row& row) {
        EXPECT_FALSE(row.text("text").starts_with('"')) << row.text("key");
        quoted += row.text("text").find(',') != std::string_view::npos;
    });
    EXPECT_GT(quoted, 20);
}

TEST(CsvRead, AColumnThatTheFileDoesNotHaveIsNamed) {
    EXPECT_THAT(complaint([] { read("max_zs.csv", std::array{"In_mA"}, [](const Row&) {}); }),
                HasSubstr("In_mA"));
}

} // namespace
} // namespace loopwright::csv
