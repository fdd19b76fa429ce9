// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/cards.h"

#include <algorithm>
#include <span>

namespace loopwright::report {
namespace {

constexpr double between = 4 * mm;          ///< frames of a column
constexpr double highestContent = 205 * mm; ///< leaves room on a page for a heading above

/// A frame to be: part of a card, or all of it.
struct Frame {
    Box content;
    std::vector<std::string> anchors;
    double height() const { return content.height + 2 * framePadding; }
};
using Frames = std::span<const Frame>;

std::vector<Frame> framesOf(const std::vector<Card>& cards) {
    std::vector<Frame> frames;
    for (const Card& card : cards) {
        const std::vector<Stack> parts = split(card.content, highestContent);
        frames.push_back({joined(parts.front()), card.anchors});
        for (std::size_t part = 1; part < parts.size(); ++part) {
            Stack content{card.continued};
            append(content, parts[part]);
            frames.push_back({joined(content), {}});
        }
    }
    return frames;
}

double heightOf(Frames column) {
    double height = 0;
    for (const Frame& frame : column)
        height += frame.height() + (&frame == column.data() ? 0 : between);
    return height;
}

/// How many of the frames a column of this height holds, at least one.
std::size_t held(Frames frames, double room) {
    std::size_t count = std::min<std::size_t>(1, frames.size());
    while (count < frames.size() && heightOf(frames.first(count + 1)) <= room)
        ++count;
    return count;
}

/// Where to part frames that fit into two columns so that the higher column is lowest.
std::size_t balanced(Frames frames) {
    std::size_t best = frames.size();
    for (std::size_t left = 1; left <= frames.size(); ++left) {
        const auto higher = [&](std::size_t count) {
            return std::max(heightOf(frames.first(count)), heightOf(frames.subspan(count)));
        };
        if (higher(left) < higher(best)) best = left;
    }
    return best;
}

Box columns(Frames left, Frames right) {
    Box box{sheetOf(PageForm::Portrait).width, std::max(heightOf(left), heightOf(right)), {}};
    double x = 0;
    for (const Frames column : {left, right}) {
        double top = 0;
        for (const Frame& frame : column) {
            box.put(framed(frame.content, columnWidth, frame.height()), {x, top});
            top += frame.height() + between;
        }
        x += columnWidth + columnGap;
    }
    return box;
}

} // namespace

void addCards(Flow& flow, const std::vector<Card>& cards) {
    const std::vector<Frame> frames = framesOf(cards);
    const double whole = sheetOf(PageForm::Portrait).bodyHeight;
    double room = whole - flow.heightOnPage() - between;
    if (room <= 0) room = whole;
    for (Frames rest = frames; !rest.empty();) {
        std::size_t left = held(rest, room);
        std::size_t right = held(rest.subspan(left), room);
        if (left + right == rest.size()) {
            left = balanced(rest);
            right = rest.size() - left;
        }
        for (const Frame& frame : rest.first(left + right))
            for (const std::string& anchor : frame.anchors)
                flow.anchor(anchor);
        flow.add(columns(rest.first(left), rest.subspan(left, right)), between);
        rest = rest.subspan(left + right);
        room = whole;
    }
}

} // namespace loopwright::report
