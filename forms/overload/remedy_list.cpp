// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/remedy_list.h"

#include "forms/frame/labels.h"
#include "forms/frame/role_frame.h"
#include "forms/look/style.h"
#include "forms/words/overload_words.h"

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

void RemedyList::show(const Installation& installation, std::vector<Remedy> remedies, bool areAskedFor) {
    remedies_ = std::move(remedies);
    delete body_;
    body_ = new QWidget;
    auto* rows = new QVBoxLayout(body_);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    for (const Remedy& remedy : remedies_)
        add(installation, remedy, *rows);
    auto* advice = new RoleLabel(appearance_, ScreenText::Note, &Look::inkSoft);
    advice->setNotation(advised(areAskedFor));
    advice->setWordWrap(true);
    advice->setContentsMargins(0, 6, 0, 0);
    rows->addWidget(advice);
    rows->addStretch(1);
    layout()->addWidget(body_);
    body_->show(); // and not only once the event loop comes to it
}

QString RemedyList::advised(bool areAskedFor) const {
    if (!remedies_.empty()) return remedyAdvice(remedies_, appearance_.words);
    return areAskedFor
               ? appearance_.words.word("remedy.none")
               : tr("Nothing to put right here that a change of load, device or wiring would settle.");
}

void RemedyList::add(const Installation& installation, const Remedy& remedy, QVBoxLayout& rows) {
    auto* line = new RoleFrame(appearance_, &Look::sheet, Qt::BottomEdge);
    auto* what = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink, Weight::Semibold);
    what->setNotation(appearance_.words.sentence(remedy.change.label));
    auto* then = new RoleLabel(appearance_, ScreenText::Figure, &Look::inkSoft);
    then->setNotation(remedyConsequences(remedy, installation, appearance_.words));
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

} // namespace loopwright
