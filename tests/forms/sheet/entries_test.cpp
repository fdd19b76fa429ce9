// SPDX-License-Identifier: GPL-3.0-or-later
#include "../bench.h"
#include "forms/sheet/rows.h"
#include "forms/sheet/sheet_model.h"

#include <gmock/gmock.h>

using namespace loopwright;

namespace {

class EntryTest : public testing::Test {
  protected:
    EntryTest() {
        model.show(bench.view(), bench.board);
        bench.changed = [this](SiteViewPtr view) { model.show(view, bench.board); };
    }
    tl::expected<void, QString> enter(const char* way, SheetColumnId column, const char* typed) {
        return model.enter(index(way, column), QString::fromUtf8(typed));
    }
    QModelIndex index(const char* way, SheetColumnId column) const {
        return model.index(model.rowOf(bench.circuit(way)), indexOf(column));
    }
    std::string shown(const char* way, SheetColumnId column) const {
        return index(way, column).data().toString().toStdString();
    }
    std::string described(const char* way, SheetColumnId column) const {
        return model.describe(index(way, column)).toStdString();
    }
    const Circuit& circuit(const char* way) const {
        return *find(bench.installation.circuits, bench.circuit(way));
    }

    Bench bench;
    SheetModel model{bench.appearance, bench.ids, bench.door()};
};

TEST_F(EntryTest, ACellIsDescribedAsALineOfTextAndSpokenInParts) {
    EXPECT_EQ(described("4", SheetColumnId::Load), "4 load: 14.8\u00A0A, typed");
    EXPECT_EQ(described("4", SheetColumnId::Loop), "4 loop impedance, Z_s: 0.51\u00A0Ω");
    EXPECT_EQ(described("4", SheetColumnId::Continuity), "4 R_1+R_2: 0.26\u00A0Ω");
    EXPECT_EQ(described("4", SheetColumnId::Device), "4 device: B32·30");
    EXPECT_EQ(described("4", SheetColumnId::Sizes), "4 wiring: 2.5 / 1.5\u00A0mm²");
    EXPECT_EQ(described("4", SheetColumnId::Circuit), "Way 4: Ring, print shop");
    EXPECT_EQ(described("14", SheetColumnId::Loop), "14 loop impedance, Z_s: missing");
    EXPECT_EQ(index("4", SheetColumnId::Loop).data(Qt::AccessibleTextRole).toString().toStdString(),
              "Way 4, Loop impedance, Zs, Ω, 0.51");
    ASSERT_TRUE(enter("4", SheetColumnId::Loop, "LIM: locked"));
    EXPECT_EQ(shown("4", SheetColumnId::Loop), "LIM");
    EXPECT_EQ(described("4", SheetColumnId::Loop), "4 loop impedance, Z_s: LIM: locked");
}

TEST_F(EntryTest, ADeviceIsTypedAsTheTradeWritesIt) {
    ASSERT_TRUE(enter("1", SheetColumnId::Device, "C16/30"));
    EXPECT_EQ(circuit("1").device.family, "60898-C");
    EXPECT_DOUBLE_EQ(in(circuit("1").device.ratedCurrent.value, units::ampere), 16);
    EXPECT_TRUE(circuit("1").residual.fitted);
    EXPECT_DOUBLE_EQ(in(circuit("1").residual.residualCurrent.value, units::milliampere), 30);
    EXPECT_EQ(shown("1", SheetColumnId::Device), "C16·30");
    EXPECT_EQ(bench.changes.size(), 1U) << "one action of a person is one entry of the journal";
}

TEST_F(EntryTest, AFamilyThatIsNotNamedStays) {
    ASSERT_TRUE(enter("F1", SheetColumnId::Device, "20"));
    EXPECT_EQ(circuit("F1").device.family, "1361");
    EXPECT_EQ(shown("F1", SheetColumnId::Device), "1361 20\u00A0A");
}

TEST_F(EntryTest, AnRcboStaysOneWhenItsRatingIsTypedAnew) {
    ASSERT_TRUE(enter("4", SheetColumnId::Device, "B40·30"));
    EXPECT_EQ(circuit("4").device.family, "61009-B");
    ASSERT_TRUE(enter("4", SheetColumnId::Device, "b40"));
    EXPECT_FALSE(circuit("4").residual.fitted) << "what is not written is not there";
}

TEST_F(EntryTest, NamesThatAreNumbersArePartedFromTheRating) {
    ASSERT_TRUE(enter("1", SheetColumnId::Device, "1361 15"));
    EXPECT_EQ(circuit("1").device.family, "1361");
    ASSERT_TRUE(enter("1", SheetColumnId::Device, "88-3 32 A"));
    EXPECT_EQ(circuit("1").device.family, "88-3");
    EXPECT_DOUBLE_EQ(in(circuit("1").device.ratedCurrent.value, units::ampere), 32);
}

TEST_F(EntryTest, WhatIsNoDeviceIsRefusedAndNothingChanges) {
    for (const char* typed : {"Q32", "B-5", "B32·x", "fuse", "B32·-30", "B0"}) {
        const auto done = enter("1", SheetColumnId::Device, typed);
        ASSERT_FALSE(done) << typed;
        EXPECT_FALSE(done.error().isEmpty()) << typed;
    }
    EXPECT_TRUE(bench.changes.empty());
}

TEST_F(EntryTest, SizesAreTypedAsAPair) {
    ASSERT_TRUE(enter("1", SheetColumnId::Sizes, "2.5/1.5"));
    EXPECT_EQ(shown("1", SheetColumnId::Sizes), "2.5 / 1.5");
    ASSERT_TRUE(enter("1", SheetColumnId::Sizes, "4"));
    EXPECT_EQ(shown("1", SheetColumnId::Sizes), "4 / 1.5") << "the protective conductor stays";
    ASSERT_TRUE(enter("1", SheetColumnId::Sizes, "10 / N/A"));
    EXPECT_EQ(shown("1", SheetColumnId::Sizes), "10 / N/A");
    ASSERT_TRUE(enter("1", SheetColumnId::Sizes, ""));
    EXPECT_TRUE(circuit("1").wiring.lineSize.isMissing());
    EXPECT_TRUE(circuit("1").wiring.protectiveSize.isMissing());
    for (const char* typed : {"0 / 1.5", "-4", "4 / abc", "4 V"})
        EXPECT_FALSE(enter("1", SheetColumnId::Sizes, typed)) << typed;
}

TEST_F(EntryTest, OutcomesAreTypedAsSignsOrWords) {
    ASSERT_TRUE(enter("1", SheetColumnId::Polarity, "-"));
    EXPECT_EQ(bench.reading("1")->polarity, TestOutcome::Wrong);
    ASSERT_TRUE(enter("1", SheetColumnId::Polarity, "lim"));
    EXPECT_EQ(bench.reading("1")->polarity, TestOutcome::Limited);
    ASSERT_TRUE(enter("1", SheetColumnId::Polarity, ""));
    EXPECT_EQ(bench.reading("1")->polarity, TestOutcome::NotDone);
    EXPECT_FALSE(enter("1", SheetColumnId::Polarity, "yes please"));
}

TEST_F(EntryTest, AReasonInsteadOfAFigureIsKept) {
    ASSERT_TRUE(enter("1", SheetColumnId::Loop, "LIM: locked"));
    EXPECT_EQ(bench.reading("1")->loopImpedance.reason, "locked");
    EXPECT_EQ(shown("1", SheetColumnId::Loop), "LIM");
}

TEST_F(EntryTest, ATypedLoadIsOneThatWasRead) {
    EXPECT_EQ(shown("F1", SheetColumnId::Load), "41.7");
    ASSERT_TRUE(enter("F1", SheetColumnId::Load, "36.2"));
    EXPECT_DOUBLE_EQ(in(bench.reading("F1")->measuredLoad.value, units::ampere), 36.2);
    EXPECT_EQ(shown("F1", SheetColumnId::Load), "36.2");
}

TEST(SheetRows, ASectionStandsUnderItsHeadingOnce) {
    const Bench bench;
    const auto rows = sheetRows(*bench.view(), bench.board, bench.appearance.words);
    ASSERT_EQ(rows.size(), 9U);
    EXPECT_TRUE(rows[6].isHeading());
    EXPECT_EQ(rows[6].heading, "Old fuse ways, beside the board, on the same bar");
    EXPECT_FALSE(rows[7].isHeading());
    EXPECT_TRUE(rows[8].isSpare);
}

TEST(SheetRows, PhasesOfAWayAreClosedByALine) {
    Bench bench;
    bench.installation.circuits[0].way = "1 L1";
    bench.installation.circuits[1].way = "1 L2";
    bench.installation.circuits[2].way = "2 L1";
    bench.refresh();
    const auto rows = sheetRows(*bench.view(), bench.board, bench.appearance.words);
    EXPECT_FALSE(rows[0].closesWay);
    EXPECT_TRUE(rows[1].closesWay);
}

TEST(SheetColumns, EveryFieldIsInTheCatalogue) {
    for (const SheetColumn& column : sheetColumns())
        for (const ColumnField& field : column.fields)
            EXPECT_NE(fieldInfo(field.kind, field.key), nullptr) << column.head << ": " << field.key;
}

} // namespace
