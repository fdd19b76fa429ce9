// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/answering_field.h"
#include "core/checks/context.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

namespace loopwright {
namespace {

using test::Fixture;

std::string_view fieldOf(const Finding& finding) {
    const auto field = answeringField(finding);
    return field ? field->key : std::string_view();
}

TEST(AnsweringField, IsInTheCatalogue) {
    for (const auto& check : circuitChecks()) {
        Finding finding;
        finding.check = check.key;
        if (const auto field = answeringField(finding)) {
            EXPECT_NE(fieldInfo(field->kind, field->key), nullptr) << check.key << ": " << field->key;
        }
    }
}

TEST(AnsweringField, IsTheReadingThatDecides) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().ringNeutral = test::read(ohms(1.5));
    EXPECT_EQ(fieldOf(fixture.find("ring")), "ringNeutral_ohm");
    fixture.makeRing();
    fixture.reading().ringProtective = test::read(ohms(5));
    EXPECT_EQ(fieldOf(fixture.find("ring")), "ringProtective_ohm");
    fixture.makeRing();
    for (const double read : {0.05, 0.6}) { // a bridge, a spur
        fixture.reading().continuity = test::read(ohms(read));
        EXPECT_EQ(fieldOf(fixture.find("ring")), "continuity_ohm") << read;
    }

    fixture.reading().insulationLive = test::read(megohms(0.2));
    EXPECT_EQ(fieldOf(fixture.find("insulation")), "insulationLive_Mohm");
    fixture.reading().insulationEarth = test::read(megohms(0.1));
    EXPECT_EQ(fieldOf(fixture.find("insulation")), "insulationEarth_Mohm");
}

} // namespace
} // namespace loopwright
