// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/ink.h"

#include <algorithm>

namespace loopwright::report {

Ink moved(Ink ink, const QPointF& offset) {
    std::visit(
        [&](auto& each) {
            if constexpr (requires { each.place; }) {
                each.place.translate(offset);
            } else {
                each.from += offset;
                each.to += offset;
            }
        },
        ink);
    return ink;
}

void Box::put(const Box& part, const QPointF& at) {
    for (const Ink& ink : part.inks)
        inks.push_back(moved(ink, at));
}

double heightOf(const Stack& stack) {
    double height = 0;
    for (const Box& box : stack)
        height += box.height;
    return height;
}

Box joined(const Stack& stack) {
    Box whole;
    for (const Box& box : stack) {
        whole.put(box, {0, whole.height});
        whole.height += box.height;
        whole.width = std::max(whole.width, box.width);
    }
    return whole;
}

void append(Stack& stack, const Stack& more) {
    stack.insert(stack.end(), more.begin(), more.end());
}

Box gap(double height) {
    return {0, height, {}};
}

} // namespace loopwright::report
