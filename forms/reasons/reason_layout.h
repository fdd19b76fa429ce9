// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "forms/frame/appearance.h"

#include <QRectF>

class QPainter;

namespace loopwright {

/// Where everything of one row of Reasons stands, for a width; the same object measures and draws. Nothing is
/// cut: what is too long for a line goes on in the next.
class ReasonLayout {
  public:
    /// A finding's row; open, its working stands below the sentence. Both arguments outlive the layout.
    ReasonLayout(const Appearance& appearance, const Finding& finding, bool open, double width);

    double height() const { return height_; }
    /// At the row's top left corner.
    void draw(QPainter& painter, const QPointF& at) const;

  private:
    struct Piece {
        enum class Kind : std::uint8_t { Sentence, Plain, Symbol } kind;
        QRectF place;
        QString text;
        Role ink;
        Weight weight = Weight::Regular;
    };
    struct Line {
        QString symbol, value, from;
        Role ink = &Look::ink;
        Role fromInk = &Look::inkSoft;
        Weight weight = Weight::Regular;
    };
    QFont font(Weight weight = Weight::Regular) const;
    double textHeight(const QString& text, double width, Weight weight = Weight::Regular) const;
    std::vector<Line> workingLines() const;

    void placeSentence();
    void placeWorking();
    void placeFormula(const QString& formula);
    void placeLine(const Line& line, double symbolRoom, double valueRoom);
    void placeParagraph(const QString& text, Role ink);
    void drawHead(QPainter& painter) const;
    void drawPiece(QPainter& painter, const Piece& piece) const;

    const Appearance& appearance_;
    const Finding& finding_;
    bool open_;
    double width_;
    double height_ = 0; ///< of what is placed so far
    std::vector<Piece> pieces_;
};

} // namespace loopwright
