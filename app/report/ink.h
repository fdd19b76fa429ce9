// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"
#include "forms/look/mark.h"
#include "forms/look/type.h"

#include <QImage>
#include <QPicture>
#include <QPointF>
#include <QRectF>
#include <QString>

#include <array>
#include <cstdint>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

/// What stands on a page, as values. Sections make boxes of ink, pagination places them, the page painter
/// draws them; tests read them. Lengths are hundredths of a millimetre on every device, so that preview,
/// printer and PDF show the same lines on the same pages.
namespace loopwright::report {

inline constexpr double mm = 100;

struct TextStyle {
    PageText role = PageText::Body;
    Weight weight = Weight::Regular;
    Role ink = &Look::ink;
    bool isItalic = false;
    double scale = 1; ///< below 1 where the text was shrunk to fit
    friend bool operator==(const TextStyle&, const TextStyle&) = default;
};

enum class Align : std::uint8_t { Left, Right, Centre };

/// One line of text. `place` is as high as the line; the text must not be wider than it.
struct TextInk {
    QRectF place;
    QString text;
    TextStyle style;
    Align align = Align::Left;
    friend bool operator==(const TextInk&, const TextInk&) = default;
};

/// A formula symbol in core's notation: "Z_s".
struct SymbolInk {
    QRectF place;
    QString notation;
    TextStyle style;
    Align align = Align::Left;
    friend bool operator==(const SymbolInk&, const SymbolInk&) = default;
};

struct LineInk {
    QPointF from;
    QPointF to;
    double width = 0;
    Role ink = &Look::line;
    friend bool operator==(const LineInk&, const LineInk&) = default;
};

struct FillInk {
    QRectF place;
    Role ink = &Look::header;
    friend bool operator==(const FillInk&, const FillInk&) = default;
};

/// An outline whose line lies inside `place`.
struct FrameInk {
    QRectF place;
    double width = 0;
    Role ink = &Look::lineStrong;
    friend bool operator==(const FrameInk&, const FrameInk&) = default;
};

struct MarkInk {
    QRectF place;
    Mark mark = Mark::Holds;
    Role ink = &Look::ink;
    friend bool operator==(const MarkInk&, const MarkInk&) = default;
};

/// Four corners round the place of a reading that is missing and needed.
struct CornersInk {
    QRectF place;
    Role ink = &Look::cannotTell;
    friend bool operator==(const CornersInk&, const CornersInk&) = default;
};

/// A picture, shown whole and centred in its place.
struct PictureInk {
    QRectF place;
    QImage picture;
    friend bool operator==(const PictureInk&, const PictureInk&) = default;
};

using SealDigest = std::array<std::uint8_t, 16>;

/// A plot, recorded as vectors in a space of its own size, which is drawn over the whole place.
struct PlotInk {
    QRectF place;
    QSizeF size;
    QPicture drawing;
    friend bool operator==(const PlotInk& a, const PlotInk& b) {
        return a.place == b.place && a.size == b.size && bytesOf(a.drawing) == bytesOf(b.drawing);
    }

  private:
    static QByteArray bytesOf(const QPicture& drawing) {
        return QByteArray::fromRawData(drawing.data(), static_cast<qsizetype>(drawing.size()));
    }
};

/// The ring of the seal: 64 ticks whose lengths show the digest; all alike while there is no seal.
struct RingInk {
    QRectF place;
    std::optional<SealDigest> digest;
    friend bool operator==(const RingInk&, const RingInk&) = default;
};

using Ink = std::variant<TextInk, SymbolInk, LineInk, FillInk, FrameInk, MarkInk, CornersInk, PictureInk,
                         PlotInk, RingInk>;

/// The same ink, further right and down by `offset`.
Ink moved(Ink ink, const QPointF& offset);

/// A measured piece of a page; its ink is placed from its own top left corner.
struct Box {
    double width = 0;
    double height = 0;
    std::vector<Ink> inks;

    template <class Kind>
    void add(Kind ink) {
        inks.emplace_back(std::in_place_type<Kind>, std::move(ink));
    }
    /// Copies the ink of `part` to `at`; the size stays as it is.
    void put(const Box& part, const QPointF& at);
    friend bool operator==(const Box&, const Box&) = default;
};

/// Boxes one below the other; a page may break between two of them.
using Stack = std::vector<Box>;

double heightOf(const Stack& stack);
/// The stack as one box.
Box joined(const Stack& stack);
void append(Stack& stack, const Stack& more);
/// An empty box, to keep a distance.
Box gap(double height);

} // namespace loopwright::report
