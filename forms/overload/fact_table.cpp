// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/fact_table.h"

#include "forms/frame/labels.h"
#include "forms/frame/role_frame.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loopwright {

FactTable::FactTable(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
}

void FactTable::show(const std::vector<OverloadFact>& facts) {
    delete body_;
    body_ = new QWidget;
    auto* rows = new QVBoxLayout(body_);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    for (const OverloadFact& fact : facts) {
        auto* line = new RoleFrame(appearance_, &Look::sheet, Qt::BottomEdge);
        auto* what = new RoleLabel(appearance_, ScreenText::Figure, &Look::inkSoft);
        auto* said = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink);
        what->setNotation(fact.what);
        said->setNotation(fact.isAssumed ? QStringLiteral("~ ") + fact.said : fact.said);
        said->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        for (RoleLabel* label : {what, said})
            label->setWordWrap(true);
        auto* row = new QHBoxLayout(line);
        row->setContentsMargins(0, 4, 0, 5);
        row->addWidget(what, 1);
        row->addWidget(said, 1);
        rows->addWidget(line);
    }
    layout()->addWidget(body_);
    body_->show(); // and not only once the event loop comes to it
}

} // namespace loopwright
