// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

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
}

INSTANTIATE_TEST_SUITE_P(Legs, RingBeyondRange,
                         testing::Values(OpenLeg{"Line", &CircuitReading::ringLine},
                                         OpenLeg{"Neutral", &CircuitReading::ringNeutral},
                                         OpenLeg{"Protective", &CircuitReading::ringProtective}),
                         [](const auto& leg) { return leg.param.name; });

TEST(RingBelowRange, ABoundThatMightMeetTheOtherReadingSettlesNothing) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().ringNeutral = test::below(ohms(0.5));
    EXPECT_EQ(fixture.find("ring").verdict, Verdict::CannotTell);
}

} // namespace
} // namespace loopwright
