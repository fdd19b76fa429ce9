// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/status_line.h"

#include <QHBoxLayout>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int side = 12;
constexpr int lineHeight = 24;
constexpr int gap = 16;

/// "First to recalibrate: Tester 2, 1 March 2027". Which one is in use nobody writes down.
QString instrumentText(const SiteView& view, const Words& words) {
    const Instrument* soonest = nullptr;
    for (const Instrument& instrument : view.installation.instruments) {
        if (instrument.visit != view.visit) continue;
        const bool sooner =
            !soonest || (instrument.calibrationDue &&
                         (!soonest->calibrationDue || *instrument.calibrationDue < *soonest->calibrationDue));
        if (sooner) soonest = &instrument;
    }
    if (!soonest) return StatusLine::tr("No instrument is named");
    if (!soonest->calibrationDue) return StatusLine::tr("%1, calibration not known").arg(text(soonest->name));
    return StatusLine::tr("First to recalibrate: %1, %2")
        .arg(text(soonest->name), words.date(*soonest->calibrationDue));
}

} // namespace

StatusLine::StatusLine(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::header, Qt::TopEdge, &Look::line, parent)
  , appearance_(appearance) {
    setFixedHeight(appearance.type.scaled(lineHeight));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(side, 0, side, 0);
    row->setSpacing(gap);
    for (RoleLabel** label : {&saved_, &journal_, &rules_, &instrument_, &cell_, &readings_}) {
        *label = new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft);
        (*label)->setMinimumWidth(1);
        if (label == &cell_) row->addStretch(1);
        row->addWidget(*label);
    }
    cell_->setObjectName(QStringLiteral("said"));
}

void StatusLine::show(const SiteViewPtr& view, const BookState& book) {
    const Words& words = appearance_.words;
    saved_->setNotation(book.savedAt.isEmpty() ? QString() : tr("Saved %1").arg(book.savedAt));
    journal_->setNotation(view ? tr("Journal %1").arg(words.number(book.journalCount)) : QString());
    rules_->setNotation(view
                            ? tr("Judged by %1, %2")
                                  .arg(text(view->assessment.ruleSet), text(view->assessment.ruleSetRevision))
                            : QString());
    instrument_->setNotation(view ? instrumentText(*view, words) : QString());
    const Progress progress = view ? readingsDone(view->installation, view->assessment) : Progress{};
    readings_->setNotation(view ? tr("%1 of %2 readings")
                                      .arg(words.number(std::int64_t{progress.done}),
                                           words.number(std::int64_t{progress.needed}))
                                : QString());
    fit();
}

/// What says nothing is left out, and where the line is too short what matters least at this moment.
void StatusLine::fit() {
    int needed = 2 * side;
    const auto all = {saved_, journal_, rules_, instrument_, cell_, readings_};
    for (RoleLabel* label : all) {
        const bool speaks = !label->notation().isEmpty();
        label->setVisible(speaks);
        if (speaks) needed += label->sizeHint().width() + gap;
    }
    for (RoleLabel* label : {journal_, instrument_, rules_, saved_, readings_}) {
        if (needed <= width()) return;
        if (label->isHidden()) continue;
        label->hide();
        needed -= label->sizeHint().width() + gap;
    }
}

void StatusLine::describeCell(const QString& description) {
    say(description);
}

void StatusLine::say(const QString& sentence) {
    cell_->setNotation(sentence);
    fit();
}

void StatusLine::resizeEvent(QResizeEvent* event) {
    RoleFrame::resizeEvent(event);
    fit();
}

} // namespace loopwright
