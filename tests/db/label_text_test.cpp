// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/label_text.h"
#include "tests/support/messages.h"

#include <rapidcheck/gtest.h>

#include <limits>

namespace loopwright {
namespace {

Message comesBack(const Message& label) {
    return labelFrom(label.key, argumentsText(label));
}

TEST(LabelText, EveryKindOfArgumentComesBack) {
    const Message label{"change.field",
                        {std::string("Board “C” / F1\n\\"), std::int64_t{-3}, Measure{0.54, units::ohm, 2},
                         Measure{1.25, units::ratio, -1}, Word{"record.board"}}};
    EXPECT_EQ(comesBack(label), label);
}

RC_GTEST_PROP(LabelText, AnyNumberComesBackExactly, (std::int64_t whole, double value)) {
    const Message label{"change.field", {whole, Measure{value, units::megohm, 1, Bound::OrMore}}};
    RC_ASSERT(comesBack(label) == label);
}

TEST(LabelText, UnitThatIsNotKnownIsWrittenOut) {
    EXPECT_EQ(labelFrom("change.field", R"([{"value":2.5,"unit":"lx","decimals":1}])"),
              (Message{"change.field", {std::string("2.5 lx")}}));
}

TEST(LabelText, WhatANewerProgramWroteIsSaidToBeSo) {
    EXPECT_EQ(labelFrom("change.from-the-future", "[]"), (Message{"workbook.unknown-label", {}}));
    EXPECT_EQ(labelFrom("change.field", "not JSON"), (Message{"workbook.unknown-label", {}}));
    EXPECT_EQ(labelFrom("change.added", R"([{"word":"record.windmill"}])"),
              (Message{"change.added", {Word{"workbook.unknown-word"}}}));
}

TEST(LabelText, BytesThatAreNoTextAreReplaced) {
    EXPECT_EQ(comesBack({"change.added", {std::string("\xFF")}}),
              (Message{"change.added", {std::string("\uFFFD")}}));
}

} // namespace
} // namespace loopwright
