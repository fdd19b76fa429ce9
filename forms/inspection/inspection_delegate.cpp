// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/inspection_delegate.h"

#include "forms/inspection/inspection_model.h"
#include "forms/look/paint.h"
#include "forms/sheet/cell_editor.h"

#include <QAbstractItemView>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int rowHeight = 22;
constexpr int headingHeight = 24;
constexpr int sidePadding = 6;
constexpr int leftPadding = 14;
constexpr int markGap = 5;
constexpr int accentBar = 3;

InspectionColumn columnOf(const QModelIndex& index) {
    return static_cast<InspectionColumn>(index.column());
}

QMargins padding(const QModelIndex& index) {
    return {textLeft(columnOf(index)), 2, sidePadding, 3};
}

} // namespace

int textLeft(InspectionColumn column) {
    return column == InspectionColumn::Item ? leftPadding : sidePadding;
}

InspectionDelegate::InspectionDelegate(const Appearance& appearance, InspectionModel& model, QObject* parent)
  : QStyledItemDelegate(parent)
  , appearance_(appearance)
  , model_(model) {}

int InspectionDelegate::heightFor(const QModelIndex& index, int width) const {
    if (index.data(InspectionModel::HeadingRole).toBool()) return appearance_.type.scaled(headingHeight);
    const QFontMetrics metrics(appearance_.type.screen(ScreenText::Figure));
    const QMargins margins = padding(index);
    const QRect room(0, 0, width - margins.left() - margins.right(), QWIDGETSIZE_MAX);
    const int text = metrics.boundingRect(room, Qt::TextWordWrap, index.data().toString()).height();
    return std::max(appearance_.type.scaled(rowHeight), text + margins.top() + margins.bottom());
}

void InspectionDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index) const {
    if (index.siblingAtColumn(0).data(InspectionModel::HeadingRole).toBool())
        return paintHeading(*painter, option.rect, index.siblingAtColumn(0).data().toString());
    const Look& look = appearance_.look();
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const QModelIndex current = view ? view->currentIndex() : QModelIndex();
    const bool inCurrentRow = current.isValid() && current.row() == index.row();
    const QRect& cell = option.rect;
    painter->save();
    painter->fillRect(cell, inCurrentRow ? look.selection : look.sheet);
    if (inCurrentRow && columnOf(index) == InspectionColumn::Item)
        painter->fillRect(QRect(cell.left(), cell.top(), accentBar, cell.height() - 1), look.accent);
    painter->fillRect(QRect(cell.left(), cell.bottom(), cell.width(), 1), look.line);
    const QRect room = cell.marginsRemoved(padding(index));
    if (columnOf(index) == InspectionColumn::Outcome) {
        paintResult(*painter, room, index);
    } else {
        painter->setFont(appearance_.type.screen(ScreenText::Figure));
        painter->setPen(columnOf(index) == InspectionColumn::Item ? look.ink : look.inkSoft);
        painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, index.data().toString());
    }
    if (current == index) {
        const QRect edge = cell.adjusted(0, 0, 0, -1);
        if (view->hasFocus()) drawFocusRing(*painter, edge, look);
    }
    painter->restore();
}

void InspectionDelegate::paintHeading(QPainter& painter, const QRect& row, const QString& text) const {
    const Look& look = appearance_.look();
    painter.save();
    painter.fillRect(row, look.panel);
    painter.fillRect(QRect(row.left(), row.bottom(), row.width(), 1), look.line);
    painter.setFont(appearance_.type.screen(ScreenText::Note, Weight::Semibold));
    painter.setPen(look.inkSoft);
    painter.drawText(row.adjusted(leftPadding, 0, -sidePadding, 0), Qt::AlignVCenter | Qt::AlignLeft, text);
    painter.restore();
}

void InspectionDelegate::paintResult(QPainter& painter, const QRect& room, const QModelIndex& index) const {
    const Look& look = appearance_.look();
    const auto result = static_cast<InspectionResult>(index.data(InspectionModel::ResultRole).toInt());
    const std::optional<Verdict> verdict = verdictOf(result);
    const QColor ink = verdict ? look.*inkOf(*verdict) : look.ink;
    const int side = appearance_.type.scaled(mark_size::column);
    if (verdict)
        drawMark(painter, QRect(room.left(), room.center().y() - side / 2, side, side), markOf(*verdict),
                 ink);
    // What holds and what does not apply is quiet.
    const bool loud = !verdict || isLoud(*verdict);
    painter.setFont(appearance_.type.screen(ScreenText::Figure, loud ? Weight::Semibold : Weight::Regular));
    painter.setPen(ink);
    painter.drawText(room.adjusted(side + markGap, 0, 0, 0),
                     Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, index.data().toString());
}

QWidget* InspectionDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                          const QModelIndex& index) const {
    auto* editor = new CellEditor(appearance_, parent);
    editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    editor->setProperty("item", QVariant::fromValue(QPersistentModelIndex(index)));
    return editor;
}

void InspectionDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    auto* line = qobject_cast<CellEditor*>(editor);
    // A change elsewhere refreshes every row; what a person is typing stays.
    if (line && !line->isModified()) line->setText(index.data(Qt::EditRole).toString());
}

void InspectionDelegate::setModelData(QWidget* editor, QAbstractItemModel*, const QModelIndex& index) const {
    auto* line = qobject_cast<CellEditor*>(editor);
    if (!line || line->isRefused()) return;
    if (const auto done = model_.enterRemark(index.row(), line->text()); !done) emit refused(done.error());
}

bool InspectionDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<CellEditor*>(watched);
    if (!editor || event->type() != QEvent::KeyPress) return QStyledItemDelegate::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool ends = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab ||
                      key == Qt::Key_Backtab || key == Qt::Key_Up || key == Qt::Key_Down;
    if (!ends) return QStyledItemDelegate::eventFilter(watched, event);
    const QModelIndex index = editor->property("item").value<QPersistentModelIndex>();
    if (const auto done = model_.enterRemark(index.row(), editor->text()); !done) {
        editor->refuse(done.error());
        return true;
    }
    emit closeEditor(editor, NoHint);
    emit entered(key);
    return true;
}

} // namespace loopwright
