// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/remedy_list.h"

#include "forms/frame/labels.h"

#include <gtest/gtest.h>

namespace loopwright {
namespace {

TEST(RemedyList, WithoutAnySaysWhetherOneIsAskedFor) {
    const Appearance appearance{QLocale::c()};
    RemedyList list(appearance);
    for (const bool areAskedFor : {true, false}) {
        list.show({}, {}, areAskedFor);
        const auto labels = list.findChildren<RoleLabel*>();
        ASSERT_EQ(labels.size(), 1);
        const QString said = labels.front()->notation();
        EXPECT_EQ(said == appearance.words.word("remedy.none"), areAskedFor) << utf8(said);
        EXPECT_EQ(said.startsWith(QStringLiteral("Nothing to put right")), !areAskedFor) << utf8(said);
    }
}

} // namespace
} // namespace loopwright
