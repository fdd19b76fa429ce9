// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/records/belongings_list.h"

#include "forms/frame/appearance.h"
#include "forms/look/style.h"
#include "forms/records/form_plan.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int lineHeight = 28;
constexpr int lineWidth = 660; ///< as wide as a field with its name

QString headingOf(RecordKind kind) {
    switch (kind) {
    case RecordKind::Supply:
        return BelongingsList::tr("Supplies");
    case RecordKind::Board:
        return BelongingsList::tr("Boards");
    case RecordKind::Visit:
        return BelongingsList::tr("Visits");
    case RecordKind::Equipment:
        return BelongingsList::tr("Equipment");
    case RecordKind::Instrument:
        return BelongingsList::tr("Instruments");
    default:
        return {};
    }
}

/// Calls `action` with a blank record of that kind.
template <class Action>
void withRowKind(RecordKind kind, Action&& action) {
    forEachRowKind([&](auto blank) {
        if (RecordTraits<decltype(blank)>::kind == kind) action(blank);
    });
}

std::vector<Id> idsOf(const Installation& installation, RecordKind kind, RecordKind ownerKind, Id owner) {
    std::vector<Id> ids;
    withRowKind(kind, [&](const auto& blank) {
        using Record = std::remove_cvref_t<decltype(blank)>;
        const std::string_view key = ownerKey(kind, ownerKind);
        for (const Record& row : installation.*RecordTraits<Record>::rows)
            if (fieldText(installation, kind, row.id, key) == owner.text()) ids.push_back(row.id);
    });
    return ids;
}

} // namespace

std::string_view ownerKey(RecordKind kind, RecordKind ownerKind) {
    std::string_view key;
    withRowKind(kind, [&](const auto& blank) {
        for (const auto& field : fieldsOf<std::remove_cvref_t<decltype(blank)>>())
            if (field.info.isOwner && field.info.references == ownerKind) key = field.info.key;
    });
    return key;
}

BelongingsList::BelongingsList(const Appearance& appearance, RecordKind ownerKind, RecordKind kind,
                               QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , ownerKind_(ownerKind)
  , kind_(kind) {
    column_ = new QVBoxLayout(this);
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(4);
    auto* heading = new QLabel(headingOf(kind), this);
    heading->setFont(appearance.type.screen(ScreenText::PanelTitle));
    column_->addWidget(heading);
}

void BelongingsList::show(const SiteView& view, Id owner, bool readOnly) {
    delete lines_;
    lines_ = new QWidget(this);
    auto* lines = new QVBoxLayout(lines_);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    column_->addWidget(lines_);
    for (const Id& id : idsOf(view.installation, kind_, ownerKind_, owner))
        addLine(recordTitle(view.installation, kind_, id), id, readOnly);

    const QString kindName = appearance_.words.word("record." + std::string(recordName(kind_)));
    auto* add = new QPushButton(tr("Add %1").arg(kindName), lines_);
    add->setObjectName("add " + text(recordName(kind_)));
    add->setIcon(appearance_.icon(Icon::Add));
    add->setEnabled(!readOnly);
    connect(add, &QPushButton::clicked, this, [this] { emit addWanted(kind_); });
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(0, 4, 0, 0);
    foot->addWidget(add);
    foot->addStretch(1);
    lines->addLayout(foot);
}

void BelongingsList::addLine(const QString& title, Id id, bool readOnly) {
    auto* line = new QWidget(lines_);
    line->setFixedHeight(appearance_.type.scaled(lineHeight));
    line->setMaximumWidth(appearance_.type.scaled(lineWidth));
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    auto* open = new QToolButton(line);
    open->setText(title.isEmpty() ? tr("without a name") : title);
    setButtonKind(*open, ButtonKind::Quiet);
    connect(open, &QToolButton::clicked, this, [this, id] { emit openWanted(kind_, id); });
    auto* remove = new QPushButton(tr("Remove"), line);
    remove->setAccessibleName(tr("Remove %1").arg(title));
    setButtonKind(*remove, ButtonKind::Quiet);
    remove->setEnabled(!readOnly);
    connect(remove, &QPushButton::clicked, this, [this, id] { emit removeWanted(kind_, id); });
    row->addWidget(open);
    row->addStretch(1);
    row->addWidget(remove);
    lines_->layout()->addWidget(line);
}

} // namespace loopwright
