// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/cards.h"

#include <gtest/gtest.h>

#include <cmath>

#include <string>

namespace loopwright::report {
namespace {

constexpr double line = 5 * mm;
constexpr double page = 250 * mm; // what it has for blocks

Box named(const std::string& name) {
    Box box{10 * mm, line, {}};
    box.add(TextInk{QRectF(0, 0, 10 * mm, line), QString::fromStdString(name), {}});
    return box;
}

/// So many millimetres of lines, its name in the first.
Card card(const std::string& name, int height, std::string group = {}) {
    Stack content(static_cast<std::size_t>(height / 5), Box{10 * mm, line, {}});
    content.front() = named(name);
    return {content, {name}, named(name), std::move(group)};
}

/// "L a107 R b207 | L c57": a page after the other, the frames of its columns and how high they are.
std::string drawn(const std::vector<Card>& cards, double above = 0) {
    Flow flow;
    flow.section(QStringLiteral("Section"), PageForm::Portrait);
    if (above > 0) flow.add(Box{10 * mm, above, {}});
    addCards(flow, cards);
    const Manuscript manuscript = flow.finish();
    std::string all;
    for (std::size_t block = above > 0 ? 1 : 0; block < manuscript.boxes.size(); ++block) {
        EXPECT_LE(manuscript.boxes[block].height, page);
        if (!all.empty()) all += " | ";
        double column = -1;
        for (const Ink& frame : manuscript.boxes[block].inks) {
            const auto* found = std::get_if<FrameInk>(&frame);
            if (!found) continue;
            const QRectF place = found->place;
            if (place.left() > column) all += place.left() > 0 ? " R" : "L";
            column = place.left();
            for (const Ink& ink : manuscript.boxes[block].inks)
                if (const auto* text = std::get_if<TextInk>(&ink); text && place.contains(text->place))
                    all += " " + text->text.toStdString();
            all += std::to_string(std::lround(place.height() / mm));
        }
    }
    return all;
}

TEST(Cards, goDownTheLeftAndThenDownTheRight) {
    EXPECT_EQ(drawn({card("a", 100), card("b", 100), card("c", 100), card("d", 100)}),
              "L a107 b107 R c107 d107");
    EXPECT_EQ(drawn({card("a", 60), card("b", 60)}), "L a67 R b67") << "even on the last page";
}

TEST(Cards, waitForAPageThatHoldsThemWhole) {
    EXPECT_EQ(drawn({card("a", 100), card("b", 235)}, 20 * mm), "L a107 | L b242");
    EXPECT_EQ(drawn({card("a", 100), card("b", 215)}, 20 * mm), "L a107 R b222");
}

TEST(Cards, letALaterOneOfTheSameGroupGoFirst) {
    EXPECT_EQ(drawn({card("a", 100, "x"), card("b", 200, "x"), card("c", 100, "x")}), "L a107 c107 R b207");
    EXPECT_EQ(drawn({card("a", 100, "x"), card("b", 200, "x"), card("c", 100, "y")}),
              "L a107 R b207 | L c107");
    EXPECT_EQ(drawn({card("a", 100), card("b", 200), card("c", 100)}), "L a107 R b207 | L c107")
        << "without a group they keep their order";
}

TEST(Cards, arePartedWithSeveralLinesInEachFrameWhereNoPageHoldsThem) {
    EXPECT_EQ(drawn({card("a", 300)}), "L a207 R a112");
    EXPECT_EQ(drawn({card("a", 100), card("b", 300)}), "L a107 b132 R b187") << "it fills the column";
    EXPECT_EQ(drawn({card("a", 190), card("b", 300), card("c", 30)}), "L a197 R b207 | L b112 R c37")
        << "too little room below for a part of it";
}

TEST(Cards, areReferredToByTheirFirstFrame) {
    Flow flow;
    flow.section(QStringLiteral("Section"), PageForm::Portrait);
    addCards(flow, {card("a", 900), card("b", 100)});
    const Manuscript manuscript = flow.finish();
    ASSERT_GE(manuscript.boxes.size(), 2u);
    std::string anchors;
    for (const auto& [block, key] : manuscript.anchors)
        anchors += key + std::to_string(block);
    EXPECT_EQ(anchors, "a0b2");
}

} // namespace
} // namespace loopwright::report
