// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/table.h"

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double rowPadding = 1.5 * mm;
constexpr double headPadding = 1.2 * mm;
constexpr double keptRowHeight = 110 * mm; ///< rows that are higher may be parted
constexpr double frameLine = 0.25 * mm;

double columnHeight(std::span<const Box> boxes, double between) {
    double height = 0;
    for (const Box& box : boxes)
        height += box.height + (&box == boxes.data() ? 0 : between);
    return height;
}

} // namespace

std::vector<Stack> split(const Stack& lines, double limit) {
    std::vector<Stack> parts(1);
    double height = 0;
    for (const Box& line : lines) {
        if (height + line.height > limit && !parts.back().empty()) {
            parts.emplace_back();
            height = 0;
        }
        parts.back().push_back(line);
        height += line.height;
    }
    return parts;
}

double Table::width() const {
    double sum = 0;
    for (const Column& column : columns_)
        sum += column.width;
    return sum;
}

Stack Table::text(std::size_t column, const QString& text, const TextStyle& style, Notation notation) const {
    return type_.paragraph(text, style, room(column), columns_[column].align, notation);
}

Box Table::head() const {
    Box box{width(), 0, {}};
    double at = 0;
    for (std::size_t index = 0; index < columns_.size(); ++index) {
        const Column& column = columns_[index];
        const Box title = joined(type_.fitted(column.title, style::head, room(index), column.align));
        box.put(title, {at, 0});
        box.height = std::max(box.height, title.height);
        at += column.width;
    }
    box.height += headPadding;
    box.add(LineInk{{0, box.height}, {width(), box.height}, headLine, &Look::ink});
    return box;
}

Stack Table::row(const std::vector<Stack>& cells) const {
    std::vector<std::vector<Stack>> parted;
    std::size_t parts = 1;
    for (const Stack& cell : cells) {
        parted.push_back(split(cell, keptRowHeight));
        parts = std::max(parts, parted.back().size());
    }
    Stack row;
    for (std::size_t index = 0; index < parts; ++index) {
        std::vector<Stack> those;
        those.reserve(parted.size());
        for (const auto& cell : parted)
            those.push_back(index < cell.size() ? cell[index] : Stack{});
        row.push_back(part(those, index + 1 == parts));
    }
    return row;
}

Box Table::part(const std::vector<Stack>& cells, bool isLast) const {
    Box box{width(), 0, {}};
    double at = 0;
    double height = type_.lineHeight(style::cell);
    for (std::size_t index = 0; index < cells.size(); ++index) {
        box.put(joined(cells[index]), {at, rowPadding});
        height = std::max(height, heightOf(cells[index]));
        at += columns_[index].width;
    }
    box.height = height + 2 * rowPadding;
    if (isLast) box.add(LineInk{{0, box.height}, {width(), box.height}, hairline, &Look::line});
    return box;
}

std::size_t balanced(std::span<const Box> boxes, double between) {
    std::size_t best = boxes.size();
    const auto higher = [&](std::size_t count) {
        return std::max(columnHeight(boxes.first(count), between),
                        columnHeight(boxes.subspan(count), between));
    };
    for (std::size_t left = 1; left <= boxes.size(); ++left)
        if (higher(left) < higher(best)) best = left;
    return best;
}

Box sideBySide(std::span<const Box> left, std::span<const Box> right, double step, double between) {
    Box all;
    double x = 0;
    for (const std::span<const Box> column : {left, right}) {
        double top = 0;
        for (const Box& box : column) {
            all.put(box, {x, top});
            all.width = std::max(all.width, x + box.width);
            top += box.height + between;
        }
        all.height = std::max(all.height, columnHeight(column, between));
        x += step;
    }
    return all;
}

Box marked(const Typesetter& type, Mark mark, Role ink, const QString& word, const TextStyle& style,
           double width) {
    const double height = type.lineHeight(style);
    const double side = height * 0.78;
    const double indent = side + 1.6 * mm;
    Box box{width, 0, {}};
    box.add(MarkInk{QRectF(0, (height - side) / 2, side, side), mark, ink});
    const Box words = joined(type.fitted(word, style::inked(style, ink), width - indent));
    box.put(words, {indent, 0});
    box.height = std::max(height, words.height);
    return box;
}

Box framed(const Box& content, double width, double height) {
    Box box{width, height, {}};
    box.add(FrameInk{QRectF(0, 0, width, height), frameLine, &Look::lineStrong});
    box.put(content, {framePadding, framePadding});
    return box;
}

} // namespace loopwright::report
