// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/shift_table.h"

#include "forms/frame/labels.h"
#include "forms/look/mark.h"
#include "forms/overload/verdict_word.h"
#include "forms/records/form_plan.h"
#include "forms/words/working_text.h"

#include <QGridLayout>
#include <QVBoxLayout>

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
  , appearance_(appearance) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
}

void ShiftTable::clear() {
    delete body_;
    body_ = nullptr;
    spoken_.clear();
}

void ShiftTable::show(const WhatIf& result) {
    clear();
    body_ = new QWidget;
    grid_ = new QGridLayout(body_);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setVerticalSpacing(rowGap);
    grid_->setHorizontalSpacing(columnGap);
    grid_->setColumnStretch(3, 1);
    addHead(tr("Check"));
    const auto nameOf = [this](const CheckShift& shift) {
        return checkName(shift.after ? *shift.after : *shift.before, appearance_.words);
    };
    for (const bool changed : {true, false}) {
        for (const CheckShift& shift : result.circuit)
            if (isChanged(shift) == changed && (applies(shift.before) || applies(shift.after)))
                add(shift, nameOf(shift), !changed);
        if (!changed) continue;
        for (const CheckShift& shift : result.elsewhere)
            add(shift,
                QStringLiteral("%1: %2").arg(
                    recordTitle(result.changed, shift.subject.kind, shift.subject.id), nameOf(shift)),
                false);
    }
    layout()->addWidget(body_);
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

void ShiftTable::add(const CheckShift& shift, const QString& what, bool isQuiet) {
    const int row = grid_->rowCount();
    const auto label = [&](const QString& notation, Role ink, int column) {
        auto* made =
            new RoleLabel(appearance_, ScreenText::Figure, ink, isQuiet ? Weight::Regular : Weight::Semibold);
        made->setNotation(notation);
        made->setWordWrap(true);
        grid_->addWidget(made, row, column, Qt::AlignTop);
    };
    label(what, isQuiet ? &Look::inkSoft : &Look::ink, 0);
    const Verdict before = shift.before ? shift.before->verdict : Verdict::DoesNotApply;
    const Verdict after = shift.after ? shift.after->verdict : Verdict::DoesNotApply;
    grid_->addWidget(new VerdictWord(appearance_, before), row, 1, Qt::AlignTop);
    grid_->addWidget(new VerdictWord(appearance_, after), row, 2, Qt::AlignTop);
    auto* sentence = new RoleLabel(appearance_, ScreenText::Figure, &Look::inkSoft);
    if (shift.after && !shift.after->sentence.key.empty())
        sentence->setNotation(findingText(*shift.after, appearance_.words));
    sentence->setWordWrap(true);
    grid_->addWidget(sentence, row, 3, Qt::AlignTop);
    spoken_ << tr("%1: %2, then %3")
                   .arg(what, appearance_.words.word(wordKey(before)),
                        appearance_.words.word(wordKey(after)));
}

} // namespace loopwright
