// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/cell_words.h"

#include "forms/look/mark.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Sheet", text);
}

QString textOf(const SheetCell& cell) {
    return cell.missing ? tr("missing") : cell.text.isEmpty() ? tr("empty") : cell.text;
}

/// Where the figure comes from, and what is found about it.
QStringList notesOn(const SheetColumn& column, const SheetCell& cell, const Words& words) {
    QStringList notes;
    if (cell.sign == CellSign::Typed) notes << words.word("origin.typed");
    if (cell.sign == CellSign::Carried) notes << words.word("origin.carried");
    if (cell.sign == CellSign::Computed) notes << words.word("origin.computed");
    if (cell.sign == CellSign::Assumed) notes << words.word("origin.assumed");
    if (cell.verdict && column.id != SheetColumnId::Verdict) notes << words.word(wordKey(*cell.verdict));
    return notes;
}

/// The field that a figure stands in: the first one with something in it, the last one where none has.
const ColumnField* shownField(const RowFacts& facts, const SheetColumn& column) {
    if (!column.isFigure || column.fields.empty()) return nullptr;
    const auto filled = std::ranges::find_if(column.fields, [&](const ColumnField& field) {
        return !storedText(facts, field.kind, field.key).empty();
    });
    return filled != column.fields.end() ? &*filled : &column.fields.back();
}

QString nameOf(const RowFacts& facts, const SheetColumn& column) {
    if (const ColumnField* field = shownField(facts, column)) return fieldName(*field, facts.words);
    return column.fields.size() > 1 ? groupTitle(column.group) : quantityName(column, facts.words);
}

/// "Load" as it stands within a line; "R_1+R_2" stays.
QString withinLine(QString name) {
    if (name.size() > 1 && name[1].isLower()) name[0] = name[0].toLower();
    return name;
}

/// The reason of what could not be found out is too long for its cell.
QString wholeText(const RowFacts& facts, const SheetColumn& column, const SheetCell& cell) {
    const ColumnField* field = shownField(facts, column);
    if (!field) return textOf(cell);
    const std::string stored = storedText(facts, field->kind, field->key);
    const auto entry = parseEntry(stored, fieldInfo(field->kind, field->key)->unit);
    return entry && entry->state == EntryState::Limited ? facts.words.figure(*entry) : textOf(cell);
}

} // namespace

QString spokenCell(const QString& way, const SheetColumn& column, const SheetCell& cell, const Words& words) {
    const QStringList parts{tr("Way %1, %2").arg(way, columnName(column, words)), textOf(cell)};
    return (parts + notesOn(column, cell, words)).join(QStringLiteral(", "));
}

QString writtenCell(const RowFacts& facts, const SheetColumn& column, const SheetCell& cell) {
    const QString way = text(facts.circuit.way);
    if (column.group == SheetGroup::Identity) return tr("Way %1: %2").arg(way, text(facts.circuit.name));
    QString shown = wholeText(facts, column, cell);
    const QString unit = columnUnit(column);
    if (!unit.isEmpty() && !shown.isEmpty() && shown.back().isDigit()) shown += QChar(QChar::Nbsp) + unit;
    const QStringList parts{tr("%1 %2: %3").arg(way, withinLine(nameOf(facts, column)), shown)};
    return (parts + notesOn(column, cell, facts.words)).join(QStringLiteral(", "));
}

} // namespace loopwright
