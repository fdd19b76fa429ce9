// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/remedy_list.h"

#include "forms/frame/labels.h"
#include "forms/frame/role_frame.h"
#include "forms/look/style.h"
#include "forms/records/form_plan.h"
#include "forms/words/working_text.h"

#include <QHBoxLayout>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright {

RemedyList::RemedyList(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
}

void RemedyList::show(const Installation& installation, std::vector<Remedy> remedies) {
    remedies_ = std::move(remedies);
    delete body_;
    body_ = new QWidget;
    auto* rows = new QVBoxLayout(body_);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    for (const Remedy& remedy : remedies_)
        add(installation, remedy, *rows);
    auto* advice = new RoleLabel(appearance_, ScreenText::Note, &Look::inkSoft);
    advice->setNotation(remedies_.empty() ? tr("Nothing to put right here that a change of load, device or "
                                               "wiring would settle.")
                                          : appearance_.words.word("remedy.advice"));
    advice->setWordWrap(true);
    advice->setContentsMargins(0, 6, 0, 0);
    rows->addWidget(advice);
    rows->addStretch(1);
    layout()->addWidget(body_);
}

void RemedyList::add(const Installation& installation, const Remedy& remedy, QVBoxLayout& rows) {
    auto* line = new RoleFrame(appearance_, &Look::sheet, Qt::BottomEdge);
    auto* what = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink, Weight::Semibold);
    what->setNotation(appearance_.words.sentence(remedy.change.label));
    auto* then = new RoleLabel(appearance_, ScreenText::Figure, &Look::inkSoft);
    then->setNotation(consequences(installation, remedy));
    for (RoleLabel* label : {what, then})
        label->setWordWrap(true);
    auto* button = new QToolButton;
    button->setText(tr("Try"));
    setButtonKind(*button, ButtonKind::Quiet);
    connect(button, &QToolButton::clicked, this, [this, change = remedy.change] { emit tryWanted(change); });
    auto* words = new QVBoxLayout;
    words->setSpacing(1);
    words->addWidget(what);
    words->addWidget(then);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 5, 0, 6);
    row->addLayout(words, 1);
    row->addWidget(button, 0, Qt::AlignTop);
    rows.addWidget(line);
}

/// "Every check of the circuit then holds." or what is left, then what gets better or worse elsewhere.
QString RemedyList::consequences(const Installation& installation, const Remedy& remedy) const {
    QStringList said{remedy.holdsThroughout ? tr("No check of the circuit fails then.")
                                            : tr("Other checks of the circuit still fail.")};
    QStringList better, worse;
    for (const auto* shifts : {&remedy.circuit, &remedy.elsewhere})
        for (const CheckShift& shift : *shifts) {
            const Finding& finding = shift.after ? *shift.after : *shift.before;
            QString name = checkName(finding, appearance_.words);
            if (shifts == &remedy.elsewhere)
                name = QStringLiteral("%1 (%2)").arg(
                    name, recordTitle(installation, shift.subject.kind, shift.subject.id));
            if (shift.isWorse())
                worse << name;
            else if (shifts == &remedy.elsewhere && shift.isBetter())
                better << name;
        }
    if (!better.isEmpty()) said << tr("Better: %1.").arg(better.join(QStringLiteral(", ")));
    if (!worse.isEmpty()) said << tr("Worse: %1.").arg(worse.join(QStringLiteral(", ")));
    return said.join(u' ');
}

} // namespace loopwright
