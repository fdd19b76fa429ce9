// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/cards.h"

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double between = 4 * mm;     ///< frames of a column
constexpr double leastPart = 100 * mm; ///< of a card that is parted, as far as it is high enough

double pageHeight() {
    return sheetOf(PageForm::Portrait).bodyHeight;
}

double frameHeight(const Stack& content) {
    return heightOf(content) + 2 * framePadding;
}

/// How many lines from the first on a frame of that height holds.
std::size_t linesIn(const Stack& content, double height) {
    std::size_t count = 0;
    for (double used = 2 * framePadding; count < content.size(); ++count) {
        used += content[count].height;
        if (used > height) break;
    }
    return count;
}

/// Puts cards into columns, from the first card on.
class Filling {
  public:
    Filling(Flow& flow, std::vector<Card> cards)
      : flow_(flow)
      , cards_(std::move(cards)) {}

    bool isDone() const { return cards_.empty(); }

    /// The frames of the next column. It may stay empty where `mayWait` and the next card is whole on a page.
    Stack column(double room, bool mayWait) {
        Stack frames;
        for (double left = room; !cards_.empty(); left = room - used(frames)) {
            const std::size_t next = fitting(left);
            const bool isTooHigh = frameHeight(cards_.front().content) > pageHeight();
            const bool mayBeParted =
                isTooHigh && left >= leastPart && linesIn(cards_.front().content, left) >= leastLines();
            if (next == 0 || (next < cards_.size() && !mayBeParted)) {
                frames.push_back(wholeFrame(next));
                continue;
            }
            const bool mustBeParted = frames.empty() && (!mayWait || isTooHigh || isContinued_);
            if (mayBeParted || mustBeParted) frames.push_back(partFrame(left));
            break;
        }
        return frames;
    }

  private:
    static double used(const Stack& frames) {
        return heightOf(frames) + static_cast<double>(frames.size()) * between;
    }

    /// The first card that fits and whose turn it can be; past the last where there is none.
    std::size_t fitting(double room) const {
        const std::string& group = cards_.front().group;
        for (std::size_t at = 0; at < cards_.size(); ++at) {
            const bool isItsTurn = at == 0 || (!isContinued_ && !group.empty() && cards_[at].group == group);
            if (!isItsTurn) break;
            if (frameHeight(cards_[at].content) <= room) return at;
        }
        return cards_.size();
    }

    /// The line that says that a card goes on does not bring it further.
    std::size_t leastLines() const { return isContinued_ ? 2 : 1; }

    Box wholeFrame(std::size_t at) {
        const auto card = cards_.begin() + static_cast<std::ptrdiff_t>(at);
        if (at == 0) isContinued_ = false;
        Box frame = framed(*card);
        cards_.erase(card);
        return frame;
    }

    /// As much of the first card as has room, but so that several lines stay for the next frame.
    Box partFrame(double room) {
        Card& card = cards_.front();
        const double height = frameHeight(card.content);
        const double high = std::min(room, std::max(height - leastPart, height / 2));
        const std::size_t lines = std::max(linesIn(card.content, high), leastLines());
        if (lines >= card.content.size()) return wholeFrame(0);
        const auto end = card.content.begin() + static_cast<std::ptrdiff_t>(lines);
        Stack rest{card.continued};
        rest.insert(rest.end(), end, card.content.end());
        card.content.erase(end, card.content.end());
        Box frame = framed(card);
        card.content = std::move(rest);
        card.anchors.clear();
        isContinued_ = true;
        return frame;
    }

    Box framed(const Card& card) {
        for (const std::string& anchor : card.anchors)
            flow_.anchor(anchor);
        return report::framed(joined(card.content), columnWidth, frameHeight(card.content));
    }

    Flow& flow_;
    std::vector<Card> cards_;  ///< that are not in a column yet
    bool isContinued_ = false; ///< the first of them is what remains of a card
};

} // namespace

void addCards(Flow& flow, std::vector<Card> cards) {
    double room = pageHeight() - flow.heightOnPage() - between;
    if (room <= 0) room = pageHeight();
    for (Filling filling(flow, std::move(cards)); !filling.isDone(); room = pageHeight()) {
        Stack frames = filling.column(room, false);
        std::size_t left = frames.size();
        append(frames, filling.column(room, true));
        if (filling.isDone()) left = balanced(frames, between);
        const std::span<const Box> all(frames);
        flow.add(sideBySide(all.first(left), all.subspan(left), columnWidth + columnGap, between), between);
    }
}

} // namespace loopwright::report
