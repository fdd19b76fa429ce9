// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/sheet.h"
#include "app/report/typeset.h"

#include <span>

namespace loopwright::report {

/// Lines that are higher than `limit` together, in several stacks of at most that height.
std::vector<Stack> split(const Stack& lines, double limit);

/// A table of running text: a head, rows with hairlines between them.
class Table {
  public:
    struct Column {
        double width = 0;
        QString title;
        Align align = Align::Left;
    };

    Table(const Typesetter& type, std::vector<Column> columns)
      : type_(type)
      , columns_(std::move(columns)) {}

    Box head() const;
    /// One stack of lines a column. A row that no page could hold comes in parts, the hairline below the
    /// last.
    Stack row(const std::vector<Stack>& cells) const;
    /// The lines of a text in the width of a column.
    Stack text(std::size_t column, const QString& text, const TextStyle& style = style::cell,
               Notation notation = Notation::Plain) const;
    /// What a column has for text, between its neighbours.
    double room(std::size_t column) const { return columns_[column].width - spaceAfter(column); }
    double width() const;

  private:
    double spaceAfter(std::size_t column) const { return column + 1 == columns_.size() ? 0 : 3 * mm; }
    Box part(const std::vector<Stack>& cells, bool isLast) const;

    const Typesetter& type_;
    std::vector<Column> columns_;
};

/// How many of the boxes stand in the first of two columns where the higher one is as low as it can be.
std::size_t balanced(std::span<const Box> boxes, double between = 0);
/// Two columns of boxes, `step` from the left of one to the left of the other.
Box sideBySide(std::span<const Box> left, std::span<const Box> right, double step, double between = 0);

/// A mark and a word in its colour, the mark as high as the text.
Box marked(const Typesetter& type, Mark mark, Role ink, const QString& word, const TextStyle& style,
           double width);

/// A frame of this height round the content.
Box framed(const Box& content, double width, double height);
inline constexpr double framePadding = 3.5 * mm;

} // namespace loopwright::report
