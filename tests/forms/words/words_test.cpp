// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/words.h"

#include <gtest/gtest.h>

#include <limits>

namespace loopwright {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::year;

const Words english{QLocale(QLocale::English, QLocale::UnitedKingdom)};
const Words plain{QLocale::c()};
const Words german{QLocale(QLocale::German, QLocale::Germany)};
const Words french{QLocale(QLocale::French, QLocale::France)};

struct NumberCase {
    double value;
    int decimals;
    const char* plain;
    const char* german;
};
std::ostream& operator<<(std::ostream& out, const NumberCase& row) {
    return out << row.value << " to " << row.decimals << " decimals";
}

class Numbers : public testing::TestWithParam<NumberCase> {};

TEST_P(Numbers, FollowTheLocale) {
    const auto& [value, decimals, inPlain, inGerman] = GetParam();
    EXPECT_EQ(utf8(plain.number(value, decimals)), inPlain);
    EXPECT_EQ(utf8(english.number(value, decimals)), inPlain);
    EXPECT_EQ(utf8(german.number(value, decimals)), inGerman);
    EXPECT_EQ(utf8(french.number(value, decimals)), inGerman);
}

INSTANTIATE_TEST_SUITE_P(
    Words, Numbers,
    testing::Values(NumberCase{0.3, 2, "0.30", "0,30"}, NumberCase{41.739, 1, "41.7", "41,7"},
                    NumberCase{1039, 0, "1\u2009039", "1\u2009039"},
                    NumberCase{1234567.5, 1, "1\u2009234\u2009567.5", "1\u2009234\u2009567,5"},
                    NumberCase{999, 0, "999", "999"}, NumberCase{-0.39, 2, "\u22120.39", "\u22120,39"},
                    NumberCase{-1039, 0, "\u22121\u2009039", "\u22121\u2009039"},
                    NumberCase{-0.001, 2, "0.00", "0,00"}, NumberCase{0, 0, "0", "0"},
                    NumberCase{0.123456, 4, "0.1235", "0,1235"}));

INSTANTIATE_TEST_SUITE_P(
    ThreeSignificant, Numbers,
    testing::Values(NumberCase{41.7391, -1, "41.7", "41,7"}, NumberCase{30, -1, "30", "30"},
                    NumberCase{0.9, -1, "0.9", "0,9"}, NumberCase{0.5, -1, "0.5", "0,5"},
                    NumberCase{0.05436, -1, "0.0544", "0,0544"}, NumberCase{9.996, -1, "10", "10"},
                    NumberCase{99.96, -1, "100", "100"}, NumberCase{1234.5, -1, "1\u2009235", "1\u2009235"},
                    NumberCase{-23.04, -1, "\u221223", "\u221223"}, NumberCase{0, -1, "0", "0"},
                    NumberCase{100, -1, "100", "100"}, NumberCase{1.005, -1, "1", "1"}));

TEST(Numbers, ThatAreNoneDoNotPassForOne) {
    EXPECT_EQ(utf8(plain.number(std::numeric_limits<double>::quiet_NaN(), 2)), "?");
    EXPECT_EQ(utf8(plain.number(std::numeric_limits<double>::infinity(), 2)), "∞");
    EXPECT_EQ(utf8(plain.number(-std::numeric_limits<double>::infinity(), 2)), "−∞");
}

TEST(Numbers, WholeOnesAreGrouped) {
    EXPECT_EQ(utf8(german.number(std::int64_t{-12345})), "\u221212\u2009345");
    EXPECT_EQ(utf8(plain.number(std::int64_t{318})), "318");
    EXPECT_EQ(utf8(plain.number(std::numeric_limits<std::int64_t>::min())),
              "\u22129\u2009223\u2009372\u2009036\u2009854\u2009775\u2009808");
}

TEST(Measures, StandANoBreakSpaceBeforeTheirUnit) {
    EXPECT_EQ(utf8(plain.measure({41.7391, units::ampere})), "41.7\u00A0A");
    EXPECT_EQ(utf8(german.measure({0.3, units::ohm, 2})), "0,30\u00A0Ω");
    EXPECT_EQ(utf8(french.measure({-23, units::kelvin, 0})), "\u221223\u00A0K");
    EXPECT_EQ(utf8(plain.measure({1.45, units::ratio})), "1.45");
    EXPECT_EQ(utf8(plain.measure({99.9, units::ohm, 1, Bound::OrMore})), ">99.9\u00A0Ω");
    EXPECT_EQ(utf8(plain.measure({0.05, units::ohm, 2, Bound::OrLess})), "<0.05\u00A0Ω");
}

EntryText figureOf(EntryState state, double value, std::uint8_t decimals) {
    return {state, Origin::Read, decimals, value, {}};
}

TEST(Figures, KeepTheDecimalsThatWereTyped) {
    EXPECT_EQ(utf8(plain.figure({})), "");
    EXPECT_EQ(utf8(german.figure(figureOf(EntryState::Value, 0.3, 2))), "0,30");
    EXPECT_EQ(utf8(plain.figure(figureOf(EntryState::Above, 999, 0))), ">999");
    EXPECT_EQ(utf8(french.figure(figureOf(EntryState::Below, 0.01, 2))), "<0,01");
    EXPECT_EQ(utf8(plain.figure({EntryState::Limited, Origin::Read, 0, 0, "locked"})), "LIM: locked");
    EXPECT_EQ(utf8(plain.figure(figureOf(EntryState::NotApplicable, 0, 0))), "N/A");
}

TEST(Figures, CanBeTypedBackAsTheyAreShown) {
    for (const Words* words : {&plain, &english, &german, &french})
        for (const EntryText& entry :
             {figureOf(EntryState::Value, 1234.5, 1), figureOf(EntryState::Above, 9999, 0),
              figureOf(EntryState::Below, 0.01, 2), figureOf(EntryState::Value, -12.5, 1)}) {
            const QString shown = words->figure(entry);
            const auto read = parseEntry(utf8(shown), units::ratio, words->numberFormat());
            ASSERT_TRUE(read) << shown.toStdString() << " in " << words->locale().name().toStdString();
            EXPECT_EQ(*read, entry) << shown.toStdString() << " in " << words->locale().name().toStdString();
        }
}

TEST(Figures, FromTheNumberPadAreUnderstoodInEveryLocale) {
    for (const Words* words : {&plain, &german, &french})
        for (const char* typed : {"0.32", "0,32"}) {
            const auto read = parseEntry(typed, units::ohm, words->numberFormat());
            ASSERT_TRUE(read) << typed;
            EXPECT_DOUBLE_EQ(read->value, 0.32) << typed << " in " << words->locale().name().toStdString();
        }
}

TEST(Dates, AreWrittenWithTheMonthInWordsAndNoWeekday) {
    const Date date = year{2026} / month{3} / day{9};
    EXPECT_EQ(utf8(english.date(date)), "9 March 2026");
    EXPECT_EQ(utf8(plain.date(date)), "9 March 2026");
    EXPECT_EQ(utf8(german.date(date)), "9. März 2026");
    EXPECT_EQ(utf8(french.date(date)), "9 mars 2026");
    EXPECT_EQ(utf8(Words(QLocale(QLocale::English, QLocale::UnitedStates)).date(date)), "March 9, 2026");
    EXPECT_EQ(utf8(plain.date(year{2026} / month{2} / day{30})), "");
}

TEST(Sentences, ShowAKeyThatNoPhraseHas) {
    EXPECT_EQ(utf8(plain.sentence({"no.such.phrase", {}})), "no.such.phrase");
    EXPECT_EQ(utf8(plain.word("no.such.phrase")), "no.such.phrase");
}

TEST(Sentences, SpeakTheWordsOfVerdictsAndGrades) {
    EXPECT_EQ(utf8(plain.word("verdict.cannot-tell")), "can’t tell");
    EXPECT_EQ(utf8(plain.sentence({"choice.grade.make-safe", {}})), "Make safe");
}

} // namespace
} // namespace loopwright
