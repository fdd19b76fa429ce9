// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/fields.h"
#include "core/phrases/phrases.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace loopwright {
namespace {

int argumentCount(std::string_view list) {
    return list.empty() ? 0 : static_cast<int>(std::ranges::count(list, ',')) + 1;
}

TEST(Phrases, KeysAreUnique) {
    for (std::size_t i = 1; i < phrases().size(); ++i)
        EXPECT_NE(phrases()[i - 1].key, phrases()[i].key);
}

TEST(Phrases, EveryArgumentHasItsPlaceAndNoOther) {
    for (const Phrase& known : phrases()) {
        EXPECT_FALSE(known.text.empty()) << known.key;
        for (int place = 0; place < 10; ++place) {
            const bool present = known.text.find("{" + std::to_string(place) + "}") != std::string_view::npos;
            EXPECT_EQ(present, place < argumentCount(known.arguments)) << known.key << ": " << known.text;
        }
    }
}

TEST(Phrases, EveryRecordAndFieldHasAName) {
    const auto expectNames = [](auto record) {
        using Record = decltype(record);
        const std::string name(RecordTraits<Record>::name);
        EXPECT_TRUE(phrase("record." + name)) << name;
        for (const auto& field : fieldsOf<Record>())
            EXPECT_TRUE(phrase("field." + name + "." + std::string(field.info.key)))
                << name << " " << field.info.key;
    };
    expectNames(Site{});
    forEachRowKind(expectNames);
}

} // namespace
} // namespace loopwright
