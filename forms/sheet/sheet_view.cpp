// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/sheet_view.h"

#include <QContextMenuEvent>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

constexpr int circuitHeight = 22;
constexpr int headingHeight = 20;
constexpr int leastCircuitWidth = 108;
constexpr int margin = 8;

/// Groups that a person may hide. What a row is called and how it is judged always stay.
constexpr std::array hideable{SheetGroup::Device, SheetGroup::Wiring,   SheetGroup::Load,
                              SheetGroup::Ring,   SheetGroup::Readings, SheetGroup::More};

int columnCount() {
    return static_cast<int>(sheetColumns().size());
}

/// What both tables, the sheet and its frozen part, have in common.
void setUpTable(QTableView& table, SheetHeader& header) {
    table.setHorizontalHeader(&header);
    table.verticalHeader()->hide();
    table.verticalHeader()->setMinimumSectionSize(1);
    table.setShowGrid(false);
    table.setFrameShape(QFrame::NoFrame);
    table.setSelectionMode(QAbstractItemView::SingleSelection);
    table.setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table.setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    table.setCornerButtonEnabled(false);
    table.setTabKeyNavigation(false);
    table.setWordWrap(false);
}

} // namespace

SheetView::SheetView(const Appearance& appearance, SheetModel& model, QWidget* parent)
  : QTableView(parent)
  , appearance_(appearance)
  , model_(model)
  , delegate_(new SheetDelegate(appearance, model, this))
  , frozen_(new QTableView(this)) {
    setObjectName(QStringLiteral("sheet"));
    setAccessibleName(tr("Sheet"));
    const auto worst = [this](SheetGroup group) { return model_.worstIn(group); };
    auto* header = new SheetHeader(appearance, worst, this);
    setUpTable(*this, *header);
    setModel(&model);
    setItemDelegate(delegate_);
    setEditTriggers(AnyKeyPressed | DoubleClicked);
    setUpFrozen();

    connect(header, &SheetHeader::groupWanted, this, [this](SheetGroup group) { setShown(group, true); });
    connect(header, &SheetHeader::menuWanted, this, &SheetView::offerGroups);
    connect(delegate_, &SheetDelegate::entered, this, &SheetView::goOn);
    connect(delegate_, &SheetDelegate::refused, this, &SheetView::refused);
    connect(&model, &QAbstractItemModel::modelAboutToBeReset, this, [this] {
        keptCircuit_ = currentCircuit();
        keptColumn_ = std::max(0, currentIndex().column());
    });
    connect(&model, &QAbstractItemModel::modelReset, this, &SheetView::refresh);
    connect(&model, &QAbstractItemModel::dataChanged, this, &SheetView::layOutColumns);
    refresh();
}

void SheetView::setUpFrozen() {
    auto* header = new SheetHeader(
        appearance_, [](SheetGroup) { return Verdict::DoesNotApply; }, frozen_);
    setUpTable(*frozen_, *header);
    frozen_->setModel(&model_);
    frozen_->setSelectionModel(selectionModel());
    // One of its own, because a delegate tells every view that it serves to close an editor.
    frozen_->setItemDelegate(new SheetDelegate(appearance_, model_, frozen_));
    frozen_->setEditTriggers(NoEditTriggers);
    frozen_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    frozen_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    frozen_->setFocusPolicy(Qt::NoFocus);
    frozen_->setFocusProxy(this);
    frozen_->hide();
    connect(frozen_, &QTableView::doubleClicked, this, [this](const QModelIndex& index) { edit(index); });
    connect(verticalScrollBar(), &QScrollBar::valueChanged, frozen_->verticalScrollBar(),
            &QScrollBar::setValue);
    connect(frozen_->verticalScrollBar(), &QScrollBar::valueChanged, verticalScrollBar(),
            &QScrollBar::setValue);
    connect(horizontalScrollBar(), &QScrollBar::valueChanged, this, &SheetView::placeFrozen);
}

void SheetView::refresh() {
    layOutRows();
    layOutColumns();
    const int row = model_.rowOf(keptCircuit_);
    const QModelIndex wanted = row >= 0 ? model_.index(row, keptColumn_) : QModelIndex();
    if (wanted.isValid()) return setCurrentIndex(wanted);
    for (int first = 0; first < model_.rowCount(); ++first)
        if (!model_.isHeading(first))
            return setCurrentIndex(model_.index(first, indexOf(SheetColumnId::Continuity)));
    emit currentCellChanged({});
}

void SheetView::layOutRows() {
    for (QTableView* table : {static_cast<QTableView*>(this), frozen_}) {
        table->clearSpans();
        table->verticalHeader()->setDefaultSectionSize(appearance_.type.scaled(circuitHeight));
        for (int row = 0; row < model_.rowCount(); ++row) {
            const bool heading = model_.isHeading(row);
            table->setRowHeight(row, appearance_.type.scaled(heading ? headingHeight : circuitHeight));
            if (heading) table->setSpan(row, 0, 1, columnCount());
        }
    }
}

int SheetView::widthOf(int column, Room room) const {
    if (sheetColumn(column).id == SheetColumnId::Circuit) return appearance_.type.scaled(leastCircuitWidth);
    // A figure is never cut: a column is as wide as what it has to say.
    int width = room == Room::Usual ? appearance_.type.scaled(sheetColumn(column).width)
                                    : static_cast<SheetHeader*>(horizontalHeader())->neededWidth(column);
    for (int row = 0; row < model_.rowCount(); ++row)
        width = std::max(width, delegate_->neededWidth(model_.index(row, column)));
    return width;
}

/// Whether a group finds room beside what stands anyway: ring readings before the further ones.
bool SheetView::fits(SheetGroup wanted, Room room) const {
    int needed = 0;
    for (int column = 0; column < columnCount(); ++column) {
        const SheetGroup group = sheetColumn(column).group;
        const bool comesLater = wanted == SheetGroup::Ring && group == SheetGroup::More;
        if (group == wanted || (!comesLater && isShown(group))) needed += widthOf(column, room);
    }
    return needed <= viewport()->width();
}

bool SheetView::isShown(SheetGroup group) const {
    if (const auto chosen = choices_.find(group); chosen != choices_.end()) return chosen->second;
    // A verdict pushed out of sight would cost more than ring readings that the head offers.
    if (group == SheetGroup::Ring) return model_.hasRings() && fits(group, Room::Least);
    return group != SheetGroup::More || fits(group, Room::Usual);
}

void SheetView::setShown(SheetGroup group, bool shown) {
    choices_[group] = shown;
    layOutColumns();
    emit groupsChanged();
}

void SheetView::setChoices(std::map<SheetGroup, bool> choices) {
    choices_ = std::move(choices);
    layOutColumns();
    emit groupsChanged();
}

int SheetView::takenBy(Room room) const {
    int taken = 0;
    for (int column = 0; column < columnCount(); ++column)
        if (isShown(sheetColumn(column).group)) taken += widthOf(column, room);
    return taken;
}

void SheetView::layOutColumns() {
    std::vector<SheetGroup> hidden;
    for (int column = 0; column < columnCount(); ++column) {
        const SheetGroup group = sheetColumn(column).group;
        const bool shown = isShown(group);
        setColumnHidden(column, !shown);
        frozen_->setColumnHidden(column, column >= frozenColumns);
        const bool isWanted = group != SheetGroup::Ring || model_.hasRings();
        if (!shown && isWanted && !std::ranges::count(hidden, group)) hidden.push_back(group);
    }
    // Closer together before anything goes out of sight; what is left over goes to the names.
    const Room room = takenBy(Room::Usual) <= viewport()->width() ? Room::Usual : Room::Least;
    const int spare = std::max(0, viewport()->width() - takenBy(room));
    for (int column = 0; column < columnCount(); ++column) {
        const bool isCircuit = sheetColumn(column).id == SheetColumnId::Circuit;
        const int width = widthOf(column, room) + (isCircuit ? spare : 0);
        setColumnWidth(column, width);
        if (column < frozenColumns) frozen_->setColumnWidth(column, width);
    }
    static_cast<SheetHeader*>(horizontalHeader())->setHiddenGroups(std::move(hidden));
    placeFrozen();
}

void SheetView::placeFrozen() {
    const int width = columnWidth(0) + columnWidth(1);
    frozen_->setGeometry(0, 0, width, horizontalHeader()->height() + viewport()->height());
    frozen_->setVisible(horizontalScrollBar()->value() > 0);
}

void SheetView::scrollTo(const QModelIndex& index, ScrollHint hint) {
    QTableView::scrollTo(index, hint);
    if (!index.isValid() || index.column() < frozenColumns) return;
    const int covered = columnWidth(0) + columnWidth(1) - visualRect(index).left();
    if (covered > 0) horizontalScrollBar()->setValue(horizontalScrollBar()->value() - covered);
}

Id SheetView::currentCircuit() const {
    return model_.circuitAt(currentIndex().row());
}

void SheetView::setCurrentCircuit(Id circuit) {
    const int row = model_.rowOf(circuit);
    if (row >= 0) setCurrentIndex(model_.index(row, std::max(0, currentIndex().column())));
}

bool SheetView::isFillable(const QModelIndex& index) const {
    return (model_.flags(index) & Qt::ItemIsEditable) && !isColumnHidden(index.column()) &&
           !index.data(SheetModel::SpareRole).toBool();
}

QModelIndex SheetView::walkDown(const QModelIndex& from, int step) const {
    int row = from.row(), column = from.column();
    for (int tried = model_.rowCount() * columnCount(); tried > 0; --tried) {
        row += step;
        if (row < 0 || row >= model_.rowCount()) {
            row = step > 0 ? 0 : model_.rowCount() - 1;
            column = (column + step + columnCount()) % columnCount();
        }
        if (const QModelIndex next = model_.index(row, column); isFillable(next)) return next;
    }
    return from;
}

QModelIndex SheetView::walkAcross(const QModelIndex& from, int step) const {
    int row = from.row(), column = from.column();
    for (int tried = model_.rowCount() * columnCount(); tried > 0; --tried) {
        column += step;
        if (column < 0 || column >= columnCount()) {
            column = step > 0 ? 0 : columnCount() - 1;
            row = (row + step + model_.rowCount()) % model_.rowCount();
        }
        if (const QModelIndex next = model_.index(row, column); isFillable(next)) return next;
    }
    return from;
}

bool SheetView::goToNextMissing() {
    const int cells = model_.rowCount() * columnCount();
    const int start =
        std::max(0, currentIndex().row()) * columnCount() + std::max(0, currentIndex().column());
    for (int step = 1; step <= cells; ++step) {
        const int cell = (start + step) % cells;
        const QModelIndex index = model_.index(cell / columnCount(), cell % columnCount());
        if (!index.data(SheetModel::CellRole).value<SheetCell>().missing) continue;
        if (const SheetGroup group = sheetColumn(index.column()).group; !isShown(group))
            setShown(group, true);
        setCurrentIndex(index);
        return true;
    }
    return false;
}

QModelIndex SheetView::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
    const QModelIndex from = currentIndex();
    if (action == MoveNext) return walkAcross(from, 1);
    if (action == MovePrevious) return walkAcross(from, -1);
    QModelIndex to = QTableView::moveCursor(action, modifiers);
    // A heading is passed over, and the column is kept: a span would pull it to the left.
    const int step = to.row() < from.row() ? -1 : 1;
    int row = to.row();
    while (row >= 0 && row < model_.rowCount() && model_.isHeading(row))
        row += step;
    if (row < 0 || row >= model_.rowCount()) return from;
    const bool vertical =
        action == MoveUp || action == MoveDown || action == MovePageUp || action == MovePageDown;
    return model_.index(row, vertical ? from.column() : to.column());
}

void SheetView::goOn(int key, bool withControl) {
    QModelIndex next = currentIndex();
    if (key == Qt::Key_Tab)
        next = walkAcross(next, 1);
    else if (key == Qt::Key_Backtab)
        next = walkAcross(next, -1);
    else if (key == Qt::Key_Up)
        next = moveCursor(MoveUp, Qt::NoModifier);
    else if (key == Qt::Key_Down)
        next = moveCursor(MoveDown, Qt::NoModifier);
    else if (!withControl)
        next = walkDown(next, 1);
    setCurrentIndex(next);
}

void SheetView::keyPressEvent(QKeyEvent* event) {
    const bool shift = event->modifiers() & Qt::ShiftModifier;
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        setCurrentIndex(walkDown(currentIndex(), shift ? -1 : 1));
        return;
    case Qt::Key_Tab:
    case Qt::Key_Backtab:
        setCurrentIndex(walkAcross(currentIndex(), event->key() == Qt::Key_Tab ? 1 : -1));
        return;
    case Qt::Key_Space:
        edit(currentIndex());
        return;
    default:
        QTableView::keyPressEvent(event);
    }
}

void SheetView::report(const tl::expected<void, QString>& done) {
    if (!done) emit refused(done.error());
}

void SheetView::addWay() {
    const auto added = model_.addWay();
    if (!added) return emit refused(added.error());
    const int row = model_.rowOf(*added);
    if (row >= 0) setCurrentIndex(model_.index(row, indexOf(SheetColumnId::Circuit)));
}

void SheetView::removeWay() {
    report(model_.removeWay(currentCircuit()));
}

void SheetView::clearCell() {
    report(model_.clear(currentIndex()));
}

void SheetView::confirmAsRead() {
    report(model_.confirmAsRead(currentIndex()));
    setCurrentIndex(walkDown(currentIndex(), 1));
}

void SheetView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    layOutColumns();
}

void SheetView::paintEvent(QPaintEvent* event) {
    QTableView::paintEvent(event);
    if (model_.rowCount() > 0 || model_.board().isNone()) return;
    QPainter painter(viewport());
    painter.setFont(appearance_.type.screen(ScreenText::Body));
    painter.setPen(appearance_.look().inkSoft);
    painter.drawText(viewport()->rect().adjusted(margin, margin, -margin, -margin),
                     Qt::AlignLeft | Qt::AlignTop, tr("No circuits yet. Press Ins to add a way."));
}

void SheetView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    viewport()->update(); // the whole current row is filled, not its cell alone
    frozen_->viewport()->update();
    emit currentCellChanged(current);
}

void SheetView::offerGroups(const QPoint& globalPosition) {
    QMenu menu(this);
    for (const SheetGroup group : hideable) {
        QAction* action =
            menu.addAction(groupTitle(group), this, [this, group](bool shown) { setShown(group, shown); });
        action->setCheckable(true);
        action->setChecked(isShown(group));
    }
    menu.exec(globalPosition);
}

void SheetView::contextMenuEvent(QContextMenuEvent* event) {
    if (!actions().isEmpty()) QMenu::exec(actions(), event->globalPos(), nullptr, this);
}

} // namespace loopwright
