// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

namespace loopwright::report {

/// Something in a frame that other pages refer to.
struct Card {
    Stack content; ///< as wide as a column less two paddings
    std::vector<std::string> anchors;
    Box continued; ///< heads the frames after the first where one does not hold it
};

/// In two columns, read down the left and then down the right of each page; the last page's columns are as
/// even as they can be. No frame is cut by the end of a page: what is higher than a page goes on in the next
/// frame.
void addCards(Flow& flow, const std::vector<Card>& cards);

} // namespace loopwright::report
