// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/places/place_delegate.h"

#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/places/places_model.h"
#include "forms/places/visits_model.h"

#include <QAbstractItemView>
#include <QPainter>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int rowHeight = 24;
constexpr int left = 12;
constexpr int indent = 11;
constexpr int right = 10;
constexpr int iconSide = 15;
constexpr int gap = 7;
constexpr int markGap = 4;
constexpr int accentBar = 3;

int depthOf(QModelIndex index) {
    int depth = 0;
    while ((index = index.parent()).isValid())
        ++depth;
    return depth;
}

bool isVisit(const QModelIndex& index) {
    return qobject_cast<const VisitsModel*>(index.model()) != nullptr;
}

/// The longest that has room, otherwise what there is room for of the shortest.
QString fitting(const QStringList& names, const QFontMetrics& metrics, int width) {
    const auto found = std::ranges::find_if(
        names, [&](const QString& name) { return metrics.horizontalAdvance(name) <= width; });
    return found != names.end() ? *found : metrics.elidedText(names.back(), Qt::ElideRight, width);
}

} // namespace

PlaceDelegate::PlaceDelegate(const Appearance& appearance, QObject* parent)
  : QStyledItemDelegate(parent)
  , appearance_(appearance) {}

QSize PlaceDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {0, appearance_.type.scaled(rowHeight)};
}

int PlaceDelegate::paintRight(QPainter& painter, const QRect& row, const QModelIndex& index) const {
    const Look& look = appearance_.look();
    const QRect room = row.adjusted(0, 0, -right, 0);
    painter.setFont(appearance_.type.screen(isVisit(index) ? ScreenText::Note : ScreenText::Figure));
    painter.setPen(look.inkSoft);
    if (isVisit(index)) {
        const QString state = index.data(VisitsModel::StateRole).toString();
        painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter, state);
        return painter.fontMetrics().horizontalAdvance(state);
    }
    const int count = index.data(PlacesModel::CountRole).toInt();
    const QVariant worst = index.data(PlacesModel::WorstRole);
    const QString number = count > 0 ? appearance_.words.number(std::int64_t{count}) : QString();
    int used = painter.fontMetrics().horizontalAdvance(number);
    const QColor ink = worst.isValid() ? look.*inkOf(static_cast<Verdict>(worst.toInt())) : look.inkSoft;
    painter.setPen(ink);
    painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter, number);
    if (!worst.isValid()) return used;
    const int side = appearance_.type.scaled(mark_size::column);
    used += side + (number.isEmpty() ? 0 : 3);
    drawMark(painter, QRect(room.right() + 1 - used, room.center().y() - side / 2, side, side),
             markOf(static_cast<Verdict>(worst.toInt())), ink);
    return used;
}

void PlaceDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const Look& look = appearance_.look();
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    // The whole row, whatever indentation the view has taken off.
    QRect row = option.rect;
    if (view) {
        row.setLeft(0);
        row.setRight(view->viewport()->width() - 1);
    }
    const bool current = isVisit(index) ? index.data(VisitsModel::CurrentRole).toBool()
                                        : view && view->selectionModel()->isSelected(index);
    painter->save();
    painter->fillRect(row, current ? look.selection : look.panel);
    if (current) painter->fillRect(QRect(row.left(), row.top(), accentBar, row.height()), look.accent);

    const int used = paintRight(*painter, row, index);
    const int start = left + indent * depthOf(index);
    const int iconTop = row.center().y() - iconSide / 2;
    const auto icon = static_cast<Icon>(
        index.data(isVisit(index) ? int(VisitsModel::IconRole) : int(PlacesModel::IconRole)).toInt());
    appearance_.icon(icon).paint(painter, start, iconTop, iconSide, iconSide);
    const QRect room(start + iconSide + gap, row.top(),
                     row.width() - start - iconSide - gap - markGap - right - used, row.height());
    const QStringList names =
        index.data(isVisit(index) ? int(Qt::DisplayRole) : int(PlacesModel::NamesRole)).toStringList();
    painter->setFont(
        appearance_.type.screen(ScreenText::Figure, current ? Weight::Semibold : Weight::Regular));
    painter->setPen(look.ink);
    painter->drawText(room, Qt::AlignVCenter | Qt::AlignLeft,
                      fitting(names, painter->fontMetrics(), room.width()));
    if (view && view->hasFocus() && view->currentIndex() == index) drawFocusRing(*painter, row, look);
    painter->restore();
}

} // namespace loopwright
