// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

#include <algorithm>

/// An open leg of a ring reads beyond the instrument's range.
namespace loopwright {
namespace {

using test::Fixture;

struct OpenLeg {
    const char* name;
    Entry<Resistance> CircuitReading::*member;
};

class RingBeyondRange : public testing::TestWithParam<OpenLeg> {};

TEST_P(RingBeyondRange, AnOpenLegFails) {
    Fixture fixture;
    fixture.makeRing();
    ASSERT_EQ(fixture.find("ring").verdict, Verdict::Holds);
    fixture.reading().*GetParam().member = test::above(ohms(99.9));
    const Finding finding = fixture.find("ring");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    const auto isTheReading = [](const Measure& measure) {
        return measure.value == 99.9 && measure.bound == Bound::OrMore;
    };
    EXPECT_TRUE(std::ranges::any_of(finding.working->terms, isTheReading, &Term::value))
        << testing::PrintToString(finding);
}

TEST(RingBeyondRange, TheSentenceSaysWhatWasRead) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().continuity = test::above(ohms(99.9));
    const Finding finding = fixture.find("ring");
    EXPECT_EQ(finding.sentence.key, "check.ring.fails-continuity");
    const Measure& read = std::get<Measure>(finding.sentence.arguments.front());
    EXPECT_DOUBLE_EQ(read.value, 99.9);
    EXPECT_EQ(read.bound, Bound::OrMore);
    EXPECT_EQ(std::get<Measure>(finding.sentence.arguments.back()).bound, Bound::Exact);
}

INSTANTIATE_TEST_SUITE_P(Legs, RingBeyondRange,
                         testing::Values(OpenLeg{"Line", &CircuitReading::ringLine},
                                         OpenLeg{"Neutral", &CircuitReading::ringNeutral},
                                         OpenLeg{"Protective", &CircuitReading::ringProtective},
                                         OpenLeg{"Both", &CircuitReading::continuity}),
                         [](const auto& leg) { return leg.param.name; });

TEST(RingBelowRange, ABoundThatMightMeetTheOtherReadingSettlesNothing) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().ringNeutral = test::below(ohms(0.5));
    EXPECT_EQ(fixture.find("ring").verdict, Verdict::CannotTell);
}

} // namespace
} // namespace loopwright
