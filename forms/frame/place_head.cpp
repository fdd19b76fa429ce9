// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/place_head.h"

#include "forms/frame/place_text.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int side = 14;
constexpr int headHeight = 55;

} // namespace

PlaceHead::PlaceHead(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::sheet, Qt::BottomEdge, &Look::line, parent)
  , appearance_(appearance)
  , title_(new RoleLabel(appearance, ScreenText::PageTitle, &Look::ink))
  , facts_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft))
  , tally_(new TallyLine(appearance)) {
    setFixedHeight(appearance.type.scaled(headHeight));
    // A narrow window may cut them; the tool tip says them whole.
    for (RoleLabel* label : {title_, facts_})
        label->setMinimumWidth(1);
    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    words->addStretch();
    words->addWidget(title_);
    words->addWidget(facts_);
    words->addStretch();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(side, 0, side, 6);
    row->addLayout(words, 1);
    row->addWidget(tally_, 0, Qt::AlignBottom);
}

void PlaceHead::show(const SiteViewPtr& view, const Subject& subject) {
    const Board* board = view ? loopwright::find(view->installation.boards, subject.id) : nullptr;
    title_->setNotation(view ? titleOf(view->installation, subject) : QString());
    facts_->setNotation(board ? boardFacts(*view, *board, appearance_.words) : QString());
    tally_->setTally(board ? view->assessment.circuits(view->installation, board->id) : Tally{});
    setToolTip(title_->accessibleName() + u'\n' + facts_->accessibleName());
}

} // namespace loopwright
