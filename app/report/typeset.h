// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/ink.h"

#include <QFont>
#include <QFontMetricsF>
#include <QStringList>

#include <map>
#include <tuple>

namespace loopwright::report {

/// The font of a style, sized in hundredths of a millimetre and without hinting, so that a line is as wide on
/// every device.
QFont fontOf(const TextStyle& style);
/// How far below the top of a line its base line lies.
double baseLineOf(const QFontMetricsF& metrics, double lineHeight);

/// Whether `_` in a text begins a subscript. Names that people typed are shown as they are.
enum class Notation : std::uint8_t { Plain, Symbols };

/// To what share of its size a text is shrunk before it is broken. A figure that is broken is misread, so
/// figures go further down.
inline constexpr double smallestText = 0.8;
inline constexpr double smallestFigure = 0.6;

/// Measures text and breaks it into lines. Everything that is put on a page goes through here, so nothing is
/// put down that is wider than its place. Needs a QGuiApplication.
class Typesetter {
  public:
    double width(const QString& text, const TextStyle& style) const;
    double symbolWidth(const QString& notation, const TextStyle& style) const;
    double lineHeight(const TextStyle& style) const;
    /// Of a text with symbols in it.
    double richWidth(const QString& text, const TextStyle& style) const;

    /// Broken at word boundaries, and within a word that is wider than the line.
    QStringList lines(const QString& text, const TextStyle& style, double width) const;

    /// One line, which must have been measured.
    Box line(const QString& text, const TextStyle& style, double width, Align align = Align::Left,
             Notation notation = Notation::Plain) const;
    /// A box a line. An empty text gives no lines.
    Stack paragraph(const QString& text, const TextStyle& style, double width, Align align = Align::Left,
                    Notation notation = Notation::Plain) const;
    /// For cells: one line as it is or smaller; where the smallest size is still too wide, several lines of
    /// that size.
    Stack fitted(const QString& text, const TextStyle& style, double width, Align align = Align::Left,
                 Notation notation = Notation::Plain, double smallest = smallestText) const;
    /// One line; what has no room gives way to an ellipsis. Only for running heads, whose full text stands on
    /// page one.
    Box shortened(const QString& text, const TextStyle& style, double width, Align align = Align::Left) const;

  private:
    const QFontMetricsF& metrics(const TextStyle& style) const;

    using Key = std::tuple<PageText, Weight, bool, int>;
    mutable std::map<Key, QFontMetricsF> metrics_; // a cache: a style measures the same for ever
};

} // namespace loopwright::report
