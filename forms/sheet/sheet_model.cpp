// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/sheet_model.h"

#include "forms/frame/change_label.h"
#include "forms/frame/visit_rows.h"
#include "forms/sheet/cell_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright {
namespace {

QString withUnit(const QString& shown, const SheetColumn& column) {
    const QString unit = columnUnit(column);
    return shown.isEmpty() || unit.isEmpty() || !column.isFigure ? shown : shown + QChar(QChar::Nbsp) + unit;
}

/// Values of an entry that differ from what is stored: what is typed again changes nothing.
std::vector<Edit::Value> changedValues(const RowFacts& facts, const CellEntry& entry) {
    std::vector<Edit::Value> changed;
    for (const Edit::Value& value : entry.values)
        if (storedText(facts, entry.kind, value.key) != value.text) changed.push_back(value);
    return changed;
}

/// The number that follows the last way of a board.
std::string nextWay(const Installation& installation, Id board) {
    int last = 0;
    for (const Circuit& circuit : installation.circuits)
        if (circuit.board == board) last = std::max(last, text(circuit.way).toInt());
    return std::to_string(last + 1);
}

} // namespace

SheetModel::SheetModel(const Appearance& appearance, IdSource& ids, ChangeDoor door, QObject* parent)
  : QAbstractTableModel(parent)
  , appearance_(appearance)
  , ids_(ids)
  , door_(std::move(door)) {}

void SheetModel::show(SiteViewPtr view, Id board) {
    std::vector<SheetRow> rows = view ? sheetRows(*view, board, appearance_.words) : std::vector<SheetRow>();
    const bool sameRows =
        board == board_ && std::ranges::equal(rows, rows_, [](const SheetRow& a, const SheetRow& b) {
            return a.circuit == b.circuit && a.heading == b.heading;
        });
    // Rows that stay keep their editors and the current cell.
    if (!sameRows) beginResetModel();
    view_ = std::move(view);
    board_ = board;
    rows_ = std::move(rows);
    if (!sameRows)
        endResetModel();
    else if (!rows_.empty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

bool SheetModel::hasRings() const {
    return view_ && loopwright::hasRings(*view_, board_);
}

int SheetModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int SheetModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(sheetColumns().size());
}

const SheetCell& SheetModel::cellAt(const QModelIndex& index) const {
    return rows_[static_cast<std::size_t>(index.row())].cells[static_cast<std::size_t>(index.column())];
}

QVariant SheetModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const SheetRow& row = rows_[static_cast<std::size_t>(index.row())];
    if (row.isHeading()) {
        const bool isText = role == Qt::DisplayRole || role == Qt::AccessibleTextRole || role == HeadingRole;
        return isText && index.column() == 0 ? QVariant(row.heading) : QVariant();
    }
    switch (role) {
    case Qt::DisplayRole:
        return cellAt(index).text;
    case Qt::EditRole: {
        const SheetColumn& column = sheetColumn(index.column());
        const auto facts = factsAt(index.row());
        return column.editText && facts ? column.editText(*facts, column) : QVariant();
    }
    case Qt::TextAlignmentRole:
        return int(Qt::AlignVCenter |
                   (sheetColumn(index.column()).isFigure ? Qt::AlignRight : Qt::AlignLeft));
    case Qt::AccessibleTextRole:
        return spokenCell(row.cells.front().text, sheetColumn(index.column()), cellAt(index),
                          appearance_.words);
    case CellRole:
        return QVariant::fromValue(cellAt(index));
    case SpareRole:
        return row.isSpare;
    case ClosesWayRole:
        return row.closesWay;
    default:
        return {};
    }
}

QVariant SheetModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
    const SheetColumn& column = sheetColumn(section);
    if (role == Qt::DisplayRole) return columnHead(column);
    if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole)
        return columnName(column, appearance_.words);
    return {};
}

Qt::ItemFlags SheetModel::flags(const QModelIndex& index) const {
    if (!index.isValid() || isHeading(index.row())) return Qt::NoItemFlags;
    const Qt::ItemFlags plain = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    return sheetColumn(index.column()).enter ? plain | Qt::ItemIsEditable : plain;
}

bool SheetModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    return role == Qt::EditRole && enter(index, value.toString()).has_value();
}

std::optional<RowFacts> SheetModel::factsAt(int row) const {
    const Circuit* circuit = view_ ? find(view_->installation.circuits, circuitAt(row)) : nullptr;
    if (!circuit) return std::nullopt;
    return factsOf(*view_, *circuit, appearance_.words);
}

tl::expected<void, QString> SheetModel::ask(const Change& change) {
    if (auto done = door_(change); !done) return tl::unexpected(appearance_.words.sentence(done.error()));
    return {};
}

tl::expected<void, QString> SheetModel::enter(const QModelIndex& index, const QString& typed) {
    if (!(flags(index) & Qt::ItemIsEditable)) return {};
    const SiteViewPtr kept = view_; // the door replaces view_ while the facts still point into this one
    const SheetColumn& column = sheetColumn(index.column());
    const auto facts = factsAt(index.row());
    if (!facts || typed == column.editText(*facts, column)) return {};
    const auto entry = column.enter(*facts, column, typed);
    if (!entry) return tl::unexpected(entry.error());
    return store(*facts, column, *entry, typed.trimmed());
}

tl::expected<void, QString> SheetModel::clear(const QModelIndex& index) {
    if (!(flags(index) & Qt::ItemIsEditable)) return {};
    return enter(index, QString());
}

tl::expected<void, QString> SheetModel::confirmAsRead(const QModelIndex& index) {
    const SiteViewPtr kept = view_;
    const auto facts = factsAt(index.row());
    if (!facts || cellAt(index).sign != CellSign::Carried) return {};
    const SheetColumn& column = sheetColumn(index.column());
    CellEntry entry{column.fields.front().kind, {}};
    for (const ColumnField& field : column.fields) {
        const FieldInfo* info = fieldInfo(field.kind, field.key);
        if (info->kind != FieldKind::Figure || field.kind != entry.kind) continue;
        auto figure = parseEntry(storedText(*facts, field.kind, field.key), info->unit);
        if (!figure || figure->origin != Origin::Carried) continue;
        figure->origin = Origin::Read;
        entry.values.push_back({std::string(field.key), formatEntry(*figure)});
    }
    return store(*facts, column, entry, cellAt(index).text);
}

tl::expected<void, QString> SheetModel::store(const RowFacts& facts, const SheetColumn& column,
                                              const CellEntry& entry, const QString& shown) {
    const auto values = changedValues(facts, entry);
    if (values.empty()) return {};
    Change change{fieldChangeLabel(pathOf(facts.view.installation, facts.circuit), entry.kind,
                                   values.front().key, utf8(withUnit(shown, column))),
                  {}};
    if (entry.kind == RecordKind::Circuit)
        change.edits.push_back({Edit::Step::Set, entry.kind, facts.circuit.id, values});
    else
        change.edits.push_back(setReading(facts.view, entry.kind, facts.circuit.id, values, ids_));
    return ask(change);
}

tl::expected<Id, QString> SheetModel::addWay() {
    if (!view_ || !find(view_->installation.boards, board_))
        return tl::unexpected(tr("Choose a board first."));
    Circuit fresh;
    fresh.id = ids_.next();
    fresh.board = board_;
    fresh.way = nextWay(view_->installation, board_);
    // A new way goes to the end, so it belongs under the heading that the sheet ends with.
    for (const Circuit& circuit : view_->installation.circuits)
        if (circuit.board == board_) fresh.section = circuit.section;
    if (auto done = ask({addedLabel(pathOf(view_->installation, fresh)), {insertRecord(fresh)}}); !done)
        return tl::unexpected(done.error());
    return fresh.id;
}

tl::expected<void, QString> SheetModel::removeWay(Id circuit) {
    const Circuit* gone = view_ ? find(view_->installation.circuits, circuit) : nullptr;
    if (!gone) return {};
    return ask(
        {removedLabel(pathOf(view_->installation, *gone)), {removeRecord(RecordKind::Circuit, circuit)}});
}

Id SheetModel::circuitAt(int row) const {
    return row < 0 || row >= rowCount() ? Id{} : rows_[static_cast<std::size_t>(row)].circuit;
}

int SheetModel::rowOf(Id circuit) const {
    const auto found = std::ranges::find(rows_, circuit, &SheetRow::circuit);
    return circuit.isNone() || found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

bool SheetModel::isHeading(int row) const {
    return circuitAt(row).isNone();
}

Verdict SheetModel::worstIn(SheetGroup group) const {
    Verdict worst = Verdict::DoesNotApply;
    for (const SheetRow& row : rows_)
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            if (sheetColumns()[i].group != group) continue;
            if (row.cells[i].missing) worst = std::min(worst, Verdict::CannotTell);
            if (row.cells[i].verdict) worst = std::min(worst, *row.cells[i].verdict);
        }
    return worst;
}

QString SheetModel::describe(const QModelIndex& index) const {
    if (!index.isValid() || isHeading(index.row())) return {};
    const auto facts = factsAt(index.row());
    return facts ? writtenCell(*facts, sheetColumn(index.column()), cellAt(index)) : QString();
}

} // namespace loopwright
