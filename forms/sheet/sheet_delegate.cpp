// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/sheet_delegate.h"

#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/sheet/cell_editor.h"
#include "forms/sheet/sheet_model.h"

#include <QAbstractItemView>
#include <QKeyEvent>
#include <QPainter>

namespace loopwright {
namespace {

constexpr int sidePadding = 6;
constexpr int markGap = 4;
constexpr int accentBar = 3;

QString signText(CellSign sign) {
    switch (sign) {
    case CellSign::Typed:
        return QStringLiteral("·");
    case CellSign::Carried:
        return QStringLiteral("‹");
    case CellSign::Computed:
        return QStringLiteral("=");
    case CellSign::Assumed:
        return QStringLiteral("~");
    case CellSign::None:
    case CellSign::Table:
        break;
    }
    return {};
}

bool isVerdictColumn(const QModelIndex& index) {
    return index.column() == indexOf(SheetColumnId::Verdict);
}
bool isWayColumn(const QModelIndex& index) {
    return index.column() == indexOf(SheetColumnId::Way);
}
bool isCircuitColumn(const QModelIndex& index) {
    return index.column() == indexOf(SheetColumnId::Circuit);
}

QModelIndex currentOf(const QStyleOptionViewItem& option) {
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    return view && view->selectionModel() ? view->selectionModel()->currentIndex() : QModelIndex();
}

/// The ring where the keyboard is; a thin frame where it will come back to.
void markCurrent(QPainter& painter, const QStyleOptionViewItem& option, const Look& look) {
    const QRect edge = option.rect.adjusted(0, 0, -1, -1);
    if (option.widget && option.widget->hasFocus()) return drawFocusRing(painter, edge, look);
    painter.setPen(look.lineStrong);
    painter.drawRect(edge.adjusted(0, 0, -1, -1));
}

/// Draws one cell; holds what all steps of it need.
class CellPainter {
  public:
    CellPainter(QPainter& painter, const Appearance& appearance, const QRect& rect, const QModelIndex& index)
      : painter_(painter)
      , appearance_(appearance)
      , look_(appearance.look())
      , rect_(rect)
      , index_(index)
      , cell_(index.data(SheetModel::CellRole).value<SheetCell>()) {}

    void fill(bool isCurrentRow) {
        const bool speaksUp = cell_.verdict && !isVerdictColumn(index_);
        QColor ground = isCurrentRow ? look_.selection : look_.sheet;
        if (speaksUp)
            ground = look_.*washOf(*cell_.verdict);
        else if (cell_.missing)
            ground = look_.cannotTellWash;
        painter_.fillRect(rect_, ground);
        if (isCurrentRow && isWayColumn(index_))
            painter_.fillRect(QRect(rect_.left(), rect_.top(), accentBar, rect_.height() - 1), look_.accent);
    }

    void rule() {
        painter_.fillRect(QRect(rect_.right(), rect_.top(), 1, rect_.height()), look_.line);
        const bool closesWay = index_.data(SheetModel::ClosesWayRole).toBool();
        painter_.fillRect(QRect(rect_.left(), rect_.bottom(), rect_.width(), 1),
                          closesWay ? look_.lineStrong : look_.line);
    }

    void say() {
        if (cell_.loadShare)
            drawLoadBar(painter_, QRectF(rect_).adjusted(0, 0, -1, -1), *cell_.loadShare, look_);
        if (cell_.missing && cell_.text.isEmpty()) {
            drawMissingCorners(painter_, QRectF(rect_).adjusted(0, 0, -1, -1), look_.cannotTell);
            return;
        }
        QRect room = rect_.adjusted(sidePadding, 0, -sidePadding - 1, cell_.loadShare ? -markGap : -1);
        if (cell_.verdict) {
            const bool inVerdictColumn = isVerdictColumn(index_);
            const int side = appearance_.type.scaled(inVerdictColumn ? mark_size::column : mark_size::cell);
            const QRect place(room.left(), room.top() + (room.height() - side) / 2, side, side);
            drawMark(painter_, place, markOf(*cell_.verdict), look_.*inkOf(*cell_.verdict));
            if (isLeftAligned()) room.setLeft(place.right() + markGap + 1);
        } else if (const QString sign = signText(cell_.sign); !sign.isEmpty()) {
            painter_.setFont(appearance_.type.screen(ScreenText::Figure));
            painter_.setPen(look_.inkSoft);
            painter_.drawText(room.adjusted(-1, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, sign);
        }
        write(room);
    }

  private:
    Qt::Alignment alignment() const {
        if (isCentred(sheetColumn(index_.column()))) return Qt::AlignCenter;
        return Qt::Alignment(index_.data(Qt::TextAlignmentRole).toInt());
    }
    bool isLeftAligned() const { return alignment() & Qt::AlignLeft; }

    void write(const QRect& room) {
        painter_.setFont(font());
        painter_.setPen(ink());
        // Only a name may be cut short: a figure with a digit missing would be another figure.
        const QString shown =
            isCircuitColumn(index_)
                ? painter_.fontMetrics().elidedText(cell_.text, Qt::ElideRight, room.width())
                : cell_.text;
        const bool needsAll = alignment() & Qt::AlignHCenter;
        painter_.drawText(needsAll ? rect_ : room,
                          static_cast<int>(alignment()) | Qt::TextDontClip | Qt::TextSingleLine, shown);
    }

    QFont font() const {
        const bool loud = (cell_.verdict && isLoud(*cell_.verdict)) || isWayColumn(index_);
        const QFont plain =
            appearance_.type.screen(ScreenText::Figure, loud ? Weight::Semibold : Weight::Regular);
        return cell_.sign == CellSign::Carried ? italic(plain) : plain;
    }

    QColor ink() const {
        if (cell_.verdict) return look_.*inkOf(*cell_.verdict);
        if (index_.data(SheetModel::SpareRole).toBool() && !isWayColumn(index_)) return look_.inkSoft;
        const bool isOwnReading = cell_.sign == CellSign::None || cell_.sign == CellSign::Typed;
        return isOwnReading ? look_.ink : look_.inkSoft;
    }

    QPainter& painter_;
    const Appearance& appearance_;
    const Look& look_;
    QRect rect_;
    const QModelIndex& index_;
    SheetCell cell_;
};

} // namespace

SheetDelegate::SheetDelegate(const Appearance& appearance, SheetModel& model, QObject* parent)
  : QStyledItemDelegate(parent)
  , appearance_(appearance)
  , model_(model) {}

void SheetDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const Look& look = appearance_.look();
    painter->save();
    const QModelIndex heading = index.siblingAtColumn(0);
    if (const QVariant title = heading.data(SheetModel::HeadingRole); title.isValid()) {
        painter->fillRect(option.rect, look.panel);
        painter->fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), look.line);
        painter->setFont(appearance_.type.screen(ScreenText::Note, Weight::Semibold));
        painter->setPen(look.inkSoft);
        painter->drawText(option.rect.adjusted(sidePadding, 0, -sidePadding, 0),
                          Qt::AlignVCenter | Qt::AlignLeft, title.toString());
    } else {
        const QModelIndex current = currentOf(option);
        CellPainter cell(*painter, appearance_, option.rect, index);
        cell.fill(current.isValid() && current.row() == index.row());
        cell.rule();
        cell.say();
        if (current == index) markCurrent(*painter, option, look);
    }
    painter->restore();
}

QSize SheetDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
    const auto& column = sheetColumn(index.column());
    return {appearance_.type.scaled(column.width), appearance_.type.scaled(22)};
}

int SheetDelegate::neededWidth(const QModelIndex& index) const {
    const auto cell = index.data(SheetModel::CellRole).value<SheetCell>();
    if (cell.text.isEmpty()) return 0;
    const bool loud = cell.verdict && isLoud(*cell.verdict);
    const QFontMetrics metrics(
        appearance_.type.screen(ScreenText::Figure, loud ? Weight::Semibold : Weight::Regular));
    int width = 2 * sidePadding + 1 + metrics.horizontalAdvance(cell.text);
    if (cell.verdict)
        width += appearance_.type.scaled(isVerdictColumn(index) ? mark_size::column : mark_size::cell) +
                 markGap + 1;
    else if (const QString sign = signText(cell.sign); !sign.isEmpty())
        width += metrics.horizontalAdvance(sign);
    return width;
}

QWidget* SheetDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                     const QModelIndex& index) const {
    auto* editor = new CellEditor(appearance_, parent);
    editor->setAlignment(Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt()));
    editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    editor->setProperty("cell", QVariant::fromValue(QPersistentModelIndex(index)));
    return editor;
}

void SheetDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    auto* line = qobject_cast<CellEditor*>(editor);
    // A change elsewhere refreshes every cell; what a person is typing stays.
    if (line && !line->isModified()) line->setText(index.data(Qt::EditRole).toString());
}

void SheetDelegate::setModelData(QWidget* editor, QAbstractItemModel*, const QModelIndex& index) const {
    auto* line = qobject_cast<CellEditor*>(editor);
    if (!line || line->isRefused()) return;
    if (const auto done = model_.enter(index, line->text()); !done) emit refused(done.error());
}

/// Closes the editor where its text was stored; leaves it open, with the reason, where it was refused.
void SheetDelegate::endEditing(CellEditor& editor, int key, bool withControl) {
    const QModelIndex index = editor.property("cell").value<QPersistentModelIndex>();
    if (const auto done = model_.enter(index, editor.text()); !done) {
        editor.refuse(done.error());
        return;
    }
    emit closeEditor(&editor, NoHint);
    emit entered(key, withControl);
}

bool SheetDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<CellEditor*>(watched);
    if (editor && event->type() == QEvent::KeyPress) {
        const auto* press = static_cast<QKeyEvent*>(event);
        switch (press->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Tab:
        case Qt::Key_Backtab:
        case Qt::Key_Up:
        case Qt::Key_Down:
            endEditing(*editor, press->key(), press->modifiers() & Qt::ControlModifier);
            return true;
        default:
            break;
        }
    }
    return QStyledItemDelegate::eventFilter(watched, event);
}

} // namespace loopwright
