// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/entry.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace loopwright {
namespace {

struct Typed {
    std::string text;
    Unit unit;
    std::string stored;
};

class EntryReads : public testing::TestWithParam<Typed> {};

TEST_P(EntryReads, WhatPeopleType) {
    const auto entry = parseEntry(GetParam().text, GetParam().unit);
    ASSERT_TRUE(entry) << GetParam().text << ": " << entry.error().key;
    EXPECT_EQ(formatEntry(*entry), GetParam().stored) << "typed: " << GetParam().text;
}

INSTANTIATE_TEST_SUITE_P(
    Figures, EntryReads,
    testing::Values(Typed{"0.32", units::ohm, "0.32"}, Typed{"0,32", units::ohm, "0.32"},
                    Typed{" 0.30 ", units::ohm, "0.30"}, Typed{".5", units::ohm, "0.5"},
                    Typed{"12.", units::ohm, "12"}, Typed{">999", units::megohm, ">999"},
                    Typed{"> 999 MΩ", units::megohm, ">999"}, Typed{"<0.01", units::ohm, "<0.01"},
                    Typed{"8.5 kW", units::watt, "8500"}, Typed{"8500 W", units::kilowatt, "8.500"},
                    Typed{"320 mΩ", units::ohm, "0.320"}, Typed{"0.8 Mohm", units::megohm, "0.8"},
                    Typed{"24 ms", units::millisecond, "24"}, Typed{"0.024 s", units::millisecond, "24"},
                    Typed{"2.5mm2", units::squareMillimetre, "2.5"}, Typed{"16 kA", units::kiloampere, "16"},
                    Typed{"N/A", units::ohm, "N/A"}, Typed{"n/a", units::ohm, "N/A"},
                    Typed{"lim:  locked", units::ohm, "LIM: locked"},
                    Typed{"LIM: behind joinery (carried)", units::ohm, "LIM: behind joinery (carried)"},
                    Typed{"58 (carried)", units::metre, "58 (carried)"},
                    Typed{"58 (read)", units::metre, "58"}, Typed{"\u22125 °C", units::celsius, "-5"},
                    Typed{"0", units::ohm, "0"}, Typed{"", units::ohm, ""}));

class EntryRefuses : public testing::TestWithParam<std::pair<std::string, std::string>> {};

TEST_P(EntryRefuses, WhatIsNoFigureAndSaysWhy) {
    const auto entry = parseEntry(GetParam().first, units::ohm);
    ASSERT_FALSE(entry) << GetParam().first << " was read as " << formatEntry(*entry);
    EXPECT_EQ(entry.error().key, GetParam().second) << GetParam().first;
}

INSTANTIATE_TEST_SUITE_P(
    Texts, EntryRefuses,
    testing::Values(std::pair("abc", "entry.not-a-number"), std::pair("nan", "entry.not-a-number"),
                    std::pair("inf", "entry.not-a-number"), std::pair(">", "entry.not-a-number"),
                    std::pair("-", "entry.not-a-number"), std::pair("1.2.3", "entry.wrong-unit"),
                    std::pair("0x10", "entry.wrong-unit"), std::pair("1e5", "entry.wrong-unit"),
                    std::pair("5 A", "entry.wrong-unit"), std::pair("5 furlongs", "entry.wrong-unit"),
                    std::pair("LIM:", "entry.limitation-without-reason"),
                    std::pair("(carried)", "entry.origin-alone"),
                    std::pair("1234567890123456", "entry.too-many-digits")));

TEST(Entry, GroupSeparatorsAreSkippedInTheReadersFormat) {
    const NumberFormat german{',', "."};
    const auto entry = parseEntry("1.234,50", units::ohm, german);
    ASSERT_TRUE(entry) << entry.error().key;
    EXPECT_EQ(formatEntry(*entry), "1234.50");
    EXPECT_EQ(formatFigure(*entry, german), "1234,50");
}

TEST(Entry, QuantityKeepsTheTableValueExactly) {
    const auto size = parseEntry("2.5", units::squareMillimetre);
    ASSERT_TRUE(size);
    EXPECT_EQ(fromText<CrossSection>(*size, units::squareMillimetre).value, squareMillimetres(2.5));
    const auto time = parseEntry("300", units::millisecond);
    ASSERT_TRUE(time);
    EXPECT_EQ(fromText<Time>(*time, units::millisecond).value, seconds(0.3));
}

RC_GTEST_PROP(Entry, StoredTextComesBackAsItWas, ()) {
    const auto whole = *rc::gen::inRange<long>(0, 1'000'000);
    const auto decimals = *rc::gen::inRange(0, 7);
    const auto state = *rc::gen::element(EntryState::Value, EntryState::Above, EntryState::Below);
    const auto origin =
        *rc::gen::element(Origin::Read, Origin::Typed, Origin::Carried, Origin::Computed, Origin::Assumed);
    const Unit unit =
        *rc::gen::element(units::ohm, units::megohm, units::milliampere, units::kiloampere,
                          units::millisecond, units::minute, units::squareMillimetre, units::ratio);
    EntryText entry{state, origin, static_cast<std::uint8_t>(decimals), static_cast<double>(whole), {}};
    for (int i = 0; i < decimals; ++i)
        entry.value /= 10;
    const std::string stored = formatEntry(entry);
    const auto back = parseEntry(stored, unit);
    RC_ASSERT(back.has_value());
    RC_ASSERT(formatEntry(*back) == stored);
    RC_ASSERT(formatEntry(toText(fromText<double>(*back, unit), unit)) == stored);
}

TEST(Unit, EverySuffixNamesItsUnit) {
    for (const Unit& unit : {units::ampere, units::milliampere, units::kiloampere, units::volt, units::ohm,
                             units::milliohm, units::megohm, units::second, units::millisecond, units::minute,
                             units::hour, units::metre, units::millimetre, units::squareMillimetre,
                             units::watt, units::kilowatt, units::celsius, units::kelvin}) {
        ASSERT_TRUE(unitNamed(unit.suffix)) << unit.suffix;
        EXPECT_EQ(*unitNamed(unit.suffix), unit) << unit.suffix;
        EXPECT_EQ(unitNamed(unit.symbol), unit) << unit.symbol;
    }
}

} // namespace
} // namespace loopwright
