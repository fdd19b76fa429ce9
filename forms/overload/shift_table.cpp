// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/shift_table.h"

#include "forms/frame/labels.h"
#include "forms/look/mark.h"
#include "forms/overload/verdict_word.h"
#include "forms/records/form_plan.h"
#include "forms/words/working_text.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <initializer_list>

namespace loopwright {
namespace {

constexpr int rowGap = 4, columnGap = 16;

bool isChanged(const CheckShift& shift) {
    return shift.isBetter() || shift.isWorse();
}

bool applies(const std::optional<Finding>& finding) {
    return finding && finding->verdict != Verdict::DoesNotApply;
}

} // namespace

ShiftTable::ShiftTable(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , body_(new QWidget)
  , grid_(new QGridLayout(body_)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setVerticalSpacing(rowGap);
    grid_->setHorizontalSpacing(columnGap);
    grid_->setColumnStretch(3, 1);
    addHead(tr("Check"));
    column->addWidget(body_);
    body_->hide();
}

void ShiftTable::clear() {
    body_->hide();
    spoken_.clear();
}

void ShiftTable::show(const WhatIf& result) {
    spoken_.clear();
    std::size_t rows = 0;
    const auto nameOf = [this](const CheckShift& shift) {
        return checkName(shift.after ? *shift.after : *shift.before, appearance_.words);
    };
    const auto nameThere = [&](const CheckShift& shift) {
        return QStringLiteral("%1: %2").arg(recordTitle(result.changed, shift.subject.kind, shift.subject.id),
                                            nameOf(shift));
    };
    for (const bool changed : {true, false}) {
        for (const CheckShift& shift : result.circuit)
            if (isChanged(shift) == changed && (applies(shift.before) || applies(shift.after)))
                put(rows++, shift, nameOf(shift), !changed);
        if (changed)
            for (const CheckShift& shift : result.elsewhere)
                put(rows++, shift, nameThere(shift), false);
        // What holds of a circuit that is made is no news, but part of the answer.
        for (const CheckShift& shift : result.made)
            if (applies(shift.after) && (shift.after->verdict == Verdict::Holds) != changed)
                put(rows++, shift, nameThere(shift), !changed);
    }
    for (; rows_.size() > rows; rows_.pop_back())
        remove(rows_.back());
    body_->show(); // and not only once the event loop comes to it
}

void ShiftTable::addHead(const QString& what) {
    int column = 0;
    for (const QString& title : {what, tr("Now"), tr("Then"), QString()}) {
        auto* label = new RoleLabel(appearance_, ScreenText::Note, &Look::inkSoft);
        label->setNotation(title);
        grid_->addWidget(label, 0, column++);
    }
}

/// The line that is there, or one made for it.
ShiftTable::Row ShiftTable::rowAt(std::size_t at, bool isQuiet) {
    if (at < rows_.size()) {
        if (rows_[at].isQuiet == isQuiet) return rows_[at];
        remove(rows_[at]);
    } else {
        rows_.emplace_back();
    }
    const Role ink = isQuiet ? &Look::inkSoft : &Look::ink;
    const Weight weight = isQuiet ? Weight::Regular : Weight::Semibold;
    const Row made{isQuiet, new RoleLabel(appearance_, ScreenText::Figure, ink, weight),
                   new VerdictWord(appearance_, Verdict::DoesNotApply),
                   new VerdictWord(appearance_, Verdict::DoesNotApply),
                   new RoleLabel(appearance_, ScreenText::Figure, &Look::inkSoft)};
    int column = 0;
    for (QWidget* cell : std::initializer_list<QWidget*>{made.what, made.before, made.after, made.sentence})
        grid_->addWidget(cell, static_cast<int>(at) + 1, column++, Qt::AlignTop);
    made.what->setWordWrap(true);
    made.sentence->setWordWrap(true);
    return rows_[at] = made;
}

void ShiftTable::remove(const Row& row) {
    for (QWidget* cell : std::initializer_list<QWidget*>{row.what, row.before, row.after, row.sentence})
        delete cell;
}

void ShiftTable::put(std::size_t at, const CheckShift& shift, const QString& what, bool isQuiet) {
    const Row row = rowAt(at, isQuiet);
    const Verdict before = shift.before ? shift.before->verdict : Verdict::DoesNotApply;
    const Verdict after = shift.after ? shift.after->verdict : Verdict::DoesNotApply;
    row.what->setNotation(what);
    row.before->set(before);
    row.after->set(after);
    const bool isSaid = shift.after && !shift.after->sentence.key.empty();
    row.sentence->setNotation(isSaid ? findingText(*shift.after, appearance_.words) : QString());
    spoken_ << tr("%1: %2, then %3")
                   .arg(what, appearance_.words.word(wordKey(before)),
                        appearance_.words.word(wordKey(after)));
}

} // namespace loopwright
