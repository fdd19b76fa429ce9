// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/inspection_page.h"

#include "forms/frame/labels.h"
#include "forms/inspection/result_keys.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QRegularExpression>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int side = 14;

/// "IEC 60364-5-52 (521 and 522.8) and IEC 60364-4-42" for "IEC 60364-5-52 (521 / 522.8) / 4-42".
QString inFull(QString pointer) {
    static const QRegularExpression betweenParts(QStringLiteral(" / (?![^(]*\\))"));
    const QString series = pointer.section(u'-', 0, 0) + u'-';
    pointer.replace(betweenParts, InspectionPage::tr(" and ") + series);
    return pointer.replace(QStringLiteral(" / "), InspectionPage::tr(" and "));
}

} // namespace

InspectionPage::InspectionPage(const Appearance& appearance, IdSource& ids, ChangeDoor door, QWidget* parent)
  : RoleFrame(appearance, &Look::sheet, {}, &Look::line, parent)
  , appearance_(appearance)
  , model_(new InspectionModel(appearance, ids, std::move(door), this))
  , list_(new InspectionView(appearance, *model_))
  , keys_(new ResultKeys(appearance))
  , facts_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft))
  , hint_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft)) {
    auto* title = new RoleLabel(appearance, ScreenText::PageTitle, &Look::ink);
    title->setNotation(tr("Inspection"));
    hint_->setWordWrap(true);
    for (RoleLabel* label : {title, facts_})
        label->setMinimumWidth(1);
    auto* head = new QVBoxLayout;
    head->setContentsMargins(side, 8, side, 8);
    head->setSpacing(4);
    head->addWidget(title);
    head->addWidget(facts_);
    head->addWidget(keys_);
    head->addWidget(hint_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(head);
    column->addWidget(list_, 1);
    setFocusProxy(list_);
    connect(keys_, &ResultKeys::chosen, list_, &InspectionView::choose);
    connect(list_, &InspectionView::refused, this, &InspectionPage::refused);
    connect(list_, &InspectionView::currentItemChanged, this, &InspectionPage::tellItem);
}

void InspectionPage::show(const SiteViewPtr& view) {
    model_->show(view);
    const ResultCounts& counts = model_->counts();
    const Words& words = appearance_.words;
    const Visit* visit = model_->visit();
    const int looked = counts.all() - counts.unseen();
    facts_->setNotation(visit ? tr("%1 · %2 of %3 items looked at")
                                    .arg(text(visit->label), words.number(std::int64_t{looked}),
                                         words.number(std::int64_t{counts.all()}))
                              : QString());
    const QString sealed = model_->sealed();
    keys_->show(counts, visit && sealed.isEmpty());
    keys_->setVisible(visit != nullptr);
    hint_->setNotation(!sealed.isEmpty() ? sealed
                       : counts.of(InspectionResult::NotLooked) < counts.all() || !visit
                           ? QString()
                           : tr("Nothing looked at yet. Walk from the intake to the last point of use and "
                                "press a key for each item; a letter begins a remark."));
    hint_->setVisible(!hint_->notation().isEmpty());
}

QString InspectionPage::facts() const {
    return facts_->notation();
}

void InspectionPage::tellItem() {
    const QModelIndex current = list_->currentIndex();
    const QString pointer = current.isValid() ? model_->rowAt(current.row()).pointer : QString();
    emit described(pointer.isEmpty() ? QString()
                                     : tr("This item follows %1 (named from memory)").arg(inFull(pointer)));
}

void InspectionPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit left();
    else
        RoleFrame::keyPressEvent(event);
}

} // namespace loopwright
