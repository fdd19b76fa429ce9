// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/inspection_model.h"

#include "forms/frame/change_label.h"

#include <algorithm>

namespace loopwright {
namespace {

constexpr std::string_view resultField = "result";
constexpr std::string_view remarkField = "remark";

/// The item as a place in a label: a sentence without its full stop.
std::string placeOf(const InspectionRow& row) {
    QString place = row.text;
    if (place.endsWith(u'.')) place.chop(1);
    return utf8(place);
}

} // namespace

InspectionModel::InspectionModel(const Appearance& appearance, IdSource& ids, ChangeDoor door,
                                 QObject* parent)
  : QAbstractTableModel(parent)
  , appearance_(appearance)
  , ids_(ids)
  , door_(std::move(door)) {}

void InspectionModel::show(const SiteViewPtr& view) {
    std::vector<InspectionRow> rows;
    if (view && find(view->installation.visits, view->visit))
        rows = inspectionRows(view->installation, view->visit, *view->tables);
    const bool sameItems =
        std::ranges::equal(rows, rows_, [](const InspectionRow& a, const InspectionRow& b) {
            return a.item == b.item && a.text == b.text;
        });
    // Rows that stay keep the current cell and what is being typed.
    if (!sameItems) beginResetModel();
    view_ = view;
    rows_ = std::move(rows);
    counts_ = ResultCounts(rows_);
    if (!sameItems)
        endResetModel();
    else if (!rows_.empty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

const Visit* InspectionModel::visit() const {
    return view_ ? find(view_->installation.visits, view_->visit) : nullptr;
}

QString InspectionModel::sealed() const {
    if (!visit() || visit()->state != VisitState::Issued) return {};
    return appearance_.words.sentence({"workbook.issued", {visit()->label}});
}

int InspectionModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int InspectionModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : inspectionColumnCount;
}

QVariant InspectionModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const InspectionRow& row = rowAt(index.row());
    const auto column = static_cast<InspectionColumn>(index.column());
    switch (role) {
    case HeadingRole:
        return row.isHeading();
    case ResultRole:
        return static_cast<int>(row.result);
    case Qt::ToolTipRole:
        return row.isHeading() ? QVariant() : QVariant(row.pointer);
    case Qt::AccessibleTextRole:
        return spoken(row, column);
    case Qt::DisplayRole:
    case Qt::EditRole:
        break;
    default:
        return {};
    }
    if (column == InspectionColumn::Item) return row.text;
    if (row.isHeading()) return {};
    return column == InspectionColumn::Remark ? row.remark : appearance_.words.word(wordKey(row.result));
}

QVariant InspectionModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<InspectionColumn>(section)) {
    case InspectionColumn::Item:
        return tr("What is looked at");
    case InspectionColumn::Outcome:
        return appearance_.words.word("field.inspection_outcome.result");
    case InspectionColumn::Remark:
        return appearance_.words.word("field.inspection_outcome.remark");
    }
    return {};
}

Qt::ItemFlags InspectionModel::flags(const QModelIndex& index) const {
    if (!index.isValid() || rowAt(index.row()).isHeading()) return Qt::NoItemFlags;
    const Qt::ItemFlags plain = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    const bool isTyped = index.column() == static_cast<int>(InspectionColumn::Remark);
    return isTyped && sealed().isEmpty() ? plain | Qt::ItemIsEditable : plain;
}

tl::expected<void, QString> InspectionModel::choose(int row, InspectionResult result) {
    if (row < 0 || row >= rowCount() || rowAt(row).isHeading() || rowAt(row).result == result) return {};
    return set(rowAt(row), resultField, std::string(choiceKey(result)),
               appearance_.words.word(wordKey(result)));
}

tl::expected<void, QString> InspectionModel::enterRemark(int row, const QString& typed) {
    const QString remark = typed.trimmed();
    if (row < 0 || row >= rowCount() || rowAt(row).isHeading() || rowAt(row).remark == remark) return {};
    return set(rowAt(row), remarkField, utf8(remark), remark);
}

tl::expected<void, QString> InspectionModel::set(const InspectionRow& row, std::string_view field,
                                                 std::string stored, const QString& shown) {
    if (const QString why = sealed(); !why.isEmpty()) return tl::unexpected(why);
    const Message label = fieldChangeLabel(placeOf(row), RecordKind::InspectionOutcome, field, utf8(shown));
    std::vector<Edit::Value> values{{std::string(field), std::move(stored)}};
    Edit edit{Edit::Step::Set, RecordKind::InspectionOutcome, row.outcome, std::move(values)};
    if (row.outcome.isNone()) {
        edit.step = Edit::Step::Insert;
        edit.id = ids_.next();
        edit.values.push_back({"visit", view_->visit.text()});
        edit.values.push_back({"item", row.item});
    }
    if (const auto done = door_({label, {std::move(edit)}}); !done)
        return tl::unexpected(appearance_.words.sentence(done.error()));
    return {};
}

int InspectionModel::nextWith(InspectionResult result, int row) const {
    const int rows = rowCount();
    for (int step = 1; step <= rows; ++step) {
        const int at = (row + step) % rows;
        if (!rowAt(at).isHeading() && rowAt(at).result == result) return at;
    }
    return -1;
}

QString InspectionModel::spoken(const InspectionRow& row, InspectionColumn column) const {
    if (row.isHeading()) return column == InspectionColumn::Item ? row.text : QString();
    QStringList parts{row.text};
    if (column != InspectionColumn::Remark) parts << appearance_.words.word(wordKey(row.result));
    if (column == InspectionColumn::Remark)
        parts << appearance_.words.word("field.inspection_outcome.remark")
              << (row.remark.isEmpty() ? tr("empty") : row.remark);
    return parts.join(QStringLiteral(" "));
}

} // namespace loopwright
