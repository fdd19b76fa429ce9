// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

namespace loopwright::report {

/// Something in a frame that other pages refer to.
struct Card {
    Stack content; ///< as wide as a column less two paddings
    std::vector<std::string> anchors;
    Box continued; ///< heads the frames after the first where one does not hold it
    std::string
        group; ///< cards beside each other with the same group need not keep their order; empty: keep it
};

/// In two columns, read down the left and then down the right of each page; the last page's columns are as
/// even as they can be. A card stands in one frame wherever a column holds it; what is higher than a page
/// goes on in the next frame, with several lines in each.
void addCards(Flow& flow, std::vector<Card> cards);

} // namespace loopwright::report
