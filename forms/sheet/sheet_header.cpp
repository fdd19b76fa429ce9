// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/sheet_header.h"

#include "forms/look/mark.h"
#include "forms/look/rich_symbol.h"

#include <QContextMenuEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

constexpr int rowHeight = 19;
constexpr int sidePadding = 6;
constexpr int offerGap = 12;
constexpr int markGap = 3;

} // namespace

SheetHeader::SheetHeader(const Appearance& appearance, WorstInGroup worst, QWidget* parent)
  : QHeaderView(Qt::Horizontal, parent)
  , appearance_(appearance)
  , worst_(std::move(worst)) {
    setSectionResizeMode(QHeaderView::Fixed);
    setMinimumSectionSize(1);
    setFixedHeight(sizeHint().height());
    setToolTip(tr("Click to choose which groups are shown"));
}

void SheetHeader::setHiddenGroups(std::vector<SheetGroup> groups) {
    hidden_ = std::move(groups);
    viewport()->update();
}

QSize SheetHeader::sizeHint() const {
    return {0, 2 * appearance_.type.scaled(rowHeight) + 1};
}

int SheetHeader::neededWidth(int column) const {
    const double head = symbolWidth(columnHead(sheetColumn(column)),
                                    appearance_.type.screen(ScreenText::Note), nullptr, Slant::Upright);
    return static_cast<int>(std::ceil(head)) + 2 * sidePadding;
}

QRect SheetHeader::groupRect(SheetGroup group) const {
    QRect rect;
    for (int column = 0; column < count(); ++column)
        if (sheetColumn(column).group == group && !isSectionHidden(column))
            rect |= QRect(sectionViewportPosition(column), 0, sectionSize(column),
                          appearance_.type.scaled(rowHeight));
    return rect;
}

/// Right to left from the end of the readings, as many as there is room for beside the group's own title.
std::vector<SheetHeader::Offer> SheetHeader::offers() const {
    const QRect room = groupRect(SheetGroup::Readings);
    if (room.isEmpty()) return {};
    const QFontMetrics metrics(appearance_.type.screen(ScreenText::Note));
    const int left =
        room.left() + 2 * sidePadding + metrics.horizontalAdvance(groupTitle(SheetGroup::Readings));
    int right = room.right() - sidePadding;
    std::vector<Offer> found;
    for (auto at = hidden_.rbegin(); at != hidden_.rend(); ++at) {
        const SheetGroup group = *at;
        const QString text = QStringLiteral("+ ") + groupTitle(group);
        const Verdict worst = worst_(group);
        const int mark = isLoud(worst) ? appearance_.type.scaled(mark_size::cell) + markGap : 0;
        const int width = metrics.horizontalAdvance(text) + mark;
        if (right - width < left) break;
        found.push_back({group, QRect(right - width, 0, width, room.height()), text, worst});
        right -= width + offerGap;
    }
    return found;
}

void SheetHeader::paintGroup(QPainter& painter, const SheetColumn& column) const {
    const Look& look = appearance_.look();
    painter.setFont(appearance_.type.screen(ScreenText::Note, Weight::Semibold));
    painter.setPen(look.ink);
    painter.drawText(groupRect(column.group).adjusted(sidePadding, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                     groupTitle(column.group));
    if (column.group != SheetGroup::Readings) return;
    painter.setFont(appearance_.type.screen(ScreenText::Note));
    for (const Offer& offer : offers()) {
        QRect place = offer.place;
        if (isLoud(offer.worst)) {
            const int side = appearance_.type.scaled(mark_size::cell);
            drawMark(painter, QRect(place.left(), place.center().y() - side / 2, side, side),
                     markOf(offer.worst), look.*inkOf(offer.worst));
            place.setLeft(place.left() + side + markGap);
        }
        painter.setPen(look.inkSoft);
        painter.drawText(place, Qt::AlignVCenter | Qt::AlignLeft, offer.text);
    }
}

void SheetHeader::paintSection(QPainter* painter, const QRect& rect, int index) const {
    const Look& look = appearance_.look();
    const SheetColumn& column = sheetColumn(index);
    const int row = appearance_.type.scaled(rowHeight);
    painter->save();
    painter->setClipRect(rect);
    painter->fillRect(rect, look.header);
    paintGroup(*painter, column);

    const QFont font = appearance_.type.screen(ScreenText::Note);
    const QString head = columnHead(column);
    const double width = symbolWidth(head, font, nullptr, Slant::Upright);
    const double left = isCentred(column) ? rect.center().x() - width / 2
                        : column.isFigure ? rect.right() - sidePadding - width
                                          : rect.left() + sidePadding;
    const QFontMetricsF metrics(font);
    painter->setPen(look.inkSoft);
    drawSymbol(*painter, {left, rect.top() + row + (row + metrics.ascent() - metrics.descent()) / 2}, head,
               font, Slant::Upright);

    const bool endsGroup = rect.right() >= groupRect(column.group).right();
    painter->fillRect(QRect(rect.right(), endsGroup ? rect.top() : rect.top() + row, 1, rect.height()),
                      look.line);
    painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), look.line);
    painter->restore();
}

void SheetHeader::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return QHeaderView::mousePressEvent(event);
    const QPoint at = event->position().toPoint();
    for (const Offer& offer : offers())
        if (offer.place.contains(at)) {
            emit groupWanted(offer.group);
            return;
        }
    if (at.y() < appearance_.type.scaled(rowHeight)) emit menuWanted(event->globalPosition().toPoint());
}

void SheetHeader::contextMenuEvent(QContextMenuEvent* event) {
    emit menuWanted(event->globalPos());
}

} // namespace loopwright
