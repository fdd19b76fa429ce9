// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/embedded.h"

#include <gtest/gtest.h>

#include <stdexcept>

TEST(EmbeddedFiles, UnknownPathIsNamed) {
    try {
        loopwright::embeddedFile("reference/no-such-table.csv");
        FAIL() << "an unknown path must not give bytes";
    } catch (const std::out_of_range& refusal) {
        EXPECT_NE(std::string(refusal.what()).find("no-such-table"), std::string::npos) << refusal.what();
    }
}
