// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/inspection_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int outcomeWidth = 186;
constexpr int headHeight = 20;
constexpr int margin = 14;
/// Of what the outcome leaves, the item takes this share and the remark the rest.
constexpr double itemShare = 0.7;

int at(InspectionColumn column) {
    return static_cast<int>(column);
}

/// Heads that stand over their texts.
class InspectionHeader final : public QHeaderView {
  public:
    InspectionHeader(const Appearance& appearance, QWidget* parent)
      : QHeaderView(Qt::Horizontal, parent)
      , appearance_(appearance) {
        setSectionResizeMode(QHeaderView::Fixed);
        setFixedHeight(appearance.type.scaled(headHeight));
    }

  protected:
    void paintSection(QPainter* painter, const QRect& rect, int column) const override {
        const Look& look = appearance_.look();
        painter->fillRect(rect, look.header);
        painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), look.line);
        painter->setFont(appearance_.type.screen(ScreenText::Note));
        painter->setPen(look.inkSoft);
        painter->drawText(rect.adjusted(textLeft(static_cast<InspectionColumn>(column)), 0, 0, -1),
                          Qt::AlignVCenter | Qt::AlignLeft,
                          model()->headerData(column, Qt::Horizontal).toString());
    }

  private:
    const Appearance& appearance_;
};

} // namespace

InspectionView::InspectionView(const Appearance& appearance, InspectionModel& model, QWidget* parent)
  : QTableView(parent)
  , appearance_(appearance)
  , model_(model)
  , delegate_(new InspectionDelegate(appearance, model, this)) {
    setObjectName(QStringLiteral("inspection"));
    setAccessibleName(tr("Inspection"));
    verticalHeader()->hide();
    verticalHeader()->setMinimumSectionSize(1);
    setHorizontalHeader(new InspectionHeader(appearance, this));
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setSelectionMode(SingleSelection);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    setModel(&model);
    setItemDelegate(delegate_);
    setEditTriggers(AnyKeyPressed | DoubleClicked);
    connect(delegate_, &InspectionDelegate::entered, this, &InspectionView::goOn);
    connect(delegate_, &InspectionDelegate::refused, this, &InspectionView::refused);
    connect(&model, &QAbstractItemModel::modelReset, this, &InspectionView::refresh);
    connect(&model, &QAbstractItemModel::dataChanged, this, &InspectionView::layOut);
    refresh();
}

void InspectionView::refresh() {
    clearSpans();
    for (int row = 0; row < model_.rowCount(); ++row)
        if (model_.rowAt(row).isHeading()) setSpan(row, 0, 1, inspectionColumnCount);
    layOut();
    const int open = model_.nextWith(InspectionResult::NotLooked, -1);
    const int first = open >= 0 ? open : itemAfter(model_.index(0, 0), 0).row();
    if (first >= 0) goTo(first, InspectionColumn::Outcome);
}

void InspectionView::layOut() {
    const int outcome = appearance_.type.scaled(outcomeWidth);
    const int rest = std::max(0, viewport()->width() - outcome);
    const int item = static_cast<int>(rest * itemShare);
    setColumnWidth(at(InspectionColumn::Item), item);
    setColumnWidth(at(InspectionColumn::Outcome), outcome);
    setColumnWidth(at(InspectionColumn::Remark), rest - item);
    for (int row = 0; row < model_.rowCount(); ++row) {
        const QModelIndex name = model_.index(row, at(InspectionColumn::Item));
        const QModelIndex remark = name.siblingAtColumn(at(InspectionColumn::Remark));
        setRowHeight(row,
                     std::max(delegate_->heightFor(name, item), delegate_->heightFor(remark, rest - item)));
    }
}

QModelIndex InspectionView::itemAfter(const QModelIndex& from, int step) const {
    const int direction = step < 0 ? -1 : 1;
    int row = from.row() + step;
    while (row >= 0 && row < model_.rowCount() && model_.rowAt(row).isHeading())
        row += direction;
    return row < 0 || row >= model_.rowCount() ? from : model_.index(row, from.column());
}

void InspectionView::goTo(int row, InspectionColumn column) {
    setCurrentIndex(model_.index(row, at(column)));
}

void InspectionView::choose(InspectionResult result) {
    const QModelIndex current = currentIndex();
    if (!current.isValid()) return;
    if (const auto done = model_.choose(current.row(), result); !done) return emit refused(done.error());
    goTo(itemAfter(current, 1).row(), InspectionColumn::Outcome);
}

bool InspectionView::goToNextOpen() {
    const int row = model_.nextWith(InspectionResult::NotLooked, std::max(0, currentIndex().row()));
    if (row >= 0) goTo(row, InspectionColumn::Outcome);
    return row >= 0;
}

QModelIndex InspectionView::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
    const QModelIndex from = currentIndex();
    if (action == MoveUp) return itemAfter(from, -1);
    if (action == MoveDown) return itemAfter(from, 1);
    QModelIndex to = QTableView::moveCursor(action, modifiers);
    if (!to.isValid()) return from;
    if (model_.rowAt(to.row()).isHeading())
        to = itemAfter(to, to.row() < from.row() && to.row() > 0 ? -1 : 1);
    if (model_.rowAt(to.row()).isHeading()) return from;
    // Nothing is chosen or typed in the item's own column.
    return to.siblingAtColumn(std::max(at(InspectionColumn::Outcome), to.column()));
}

/// After a remark: down to the next outcome, or along with the arrows.
void InspectionView::goOn(int key) {
    const QModelIndex current = currentIndex();
    if (key == Qt::Key_Backtab) return goTo(current.row(), InspectionColumn::Outcome);
    if (key == Qt::Key_Up || key == Qt::Key_Down)
        return setCurrentIndex(itemAfter(current, key == Qt::Key_Up ? -1 : 1));
    goTo(itemAfter(current, 1).row(), InspectionColumn::Outcome);
}

void InspectionView::keyPressEvent(QKeyEvent* event) {
    const QModelIndex current = currentIndex();
    const bool atRemark = current.column() == at(InspectionColumn::Remark);
    const QString typed = event->text();
    const bool isPlain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    if (isPlain && !atRemark && current.isValid()) {
        for (const ResultKey& key : resultKeys)
            if (typed == QChar::fromLatin1(key.key)) return choose(key.result);
        if (!typed.isEmpty() && typed.front().isLetter()) {
            if (const QString why = model_.sealed(); !why.isEmpty()) return emit refused(why);
            goTo(current.row(), InspectionColumn::Remark);
            return QTableView::keyPressEvent(event);
        }
    }
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter: {
        const int step = event->modifiers() & Qt::ShiftModifier ? -1 : 1;
        goTo(itemAfter(current, step).row(), InspectionColumn::Outcome);
        return;
    }
    case Qt::Key_Tab:
        if (!atRemark) return goTo(current.row(), InspectionColumn::Remark);
        return goTo(itemAfter(current, 1).row(), InspectionColumn::Outcome);
    case Qt::Key_Backtab:
        if (atRemark) return goTo(current.row(), InspectionColumn::Outcome);
        return goTo(itemAfter(current, -1).row(), InspectionColumn::Remark);
    default:
        QTableView::keyPressEvent(event);
    }
}

void InspectionView::mousePressEvent(QMouseEvent* event) {
    const QModelIndex pressed = indexAt(event->position().toPoint());
    if (pressed.isValid() && pressed.column() == at(InspectionColumn::Item)) {
        if (!model_.rowAt(pressed.row()).isHeading()) goTo(pressed.row(), InspectionColumn::Outcome);
        return;
    }
    QTableView::mousePressEvent(event);
}

void InspectionView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    layOut();
}

void InspectionView::paintEvent(QPaintEvent* event) {
    QTableView::paintEvent(event);
    if (model_.rowCount() > 0) return;
    QPainter painter(viewport());
    painter.setFont(appearance_.type.screen(ScreenText::Body));
    painter.setPen(appearance_.look().inkSoft);
    painter.drawText(viewport()->rect().adjusted(margin, margin, -margin, -margin),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                     tr("No visit yet. Choose Visit, New visit; then look at each item and press its key."));
}

void InspectionView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    viewport()->update(); // the whole current row is filled, not its cell alone
    emit currentItemChanged(current);
}

} // namespace loopwright
