// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/overload_page.h"

#include "core/assess/circuit_overload.h"
#include "forms/frame/labels.h"
#include "forms/overload/fact_table.h"
#include "forms/overload/logged_part.h"
#include "forms/overload/remedy_list.h"
#include "forms/overload/trial_panel.h"
#include "forms/overload/verdict_plate.h"
#include "forms/plots/plot_view.h"
#include "forms/words/notation.h"

#include <QKeyEvent>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

constexpr int side = 20, top = 12, between = 24;

} // namespace

OverloadPage::OverloadPage(const Appearance& appearance, IdSource& ids, ChangeDoor door, QWidget* parent)
  : RoleFrame(appearance, &Look::sheet, {}, &Look::line, parent)
  , appearance_(appearance)
  , ids_(ids)
  , title_(new RoleLabel(appearance, ScreenText::PageTitle, &Look::ink))
  , facts_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft))
  , band_(new PlotView(appearance))
  , heat_(new PlotView(appearance))
  , bandReading_(new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft))
  , heatReading_(new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft))
  , meanwhile_(new FactTable(appearance))
  , remedies_(new RemedyList(appearance))
  , logged_(new LoggedPart(appearance, door))
  , trial_(new TrialPanel(appearance, std::move(door)))
  , room_(new QScrollArea) {
    room_->setWidget(makeSheet());
    room_->setWidgetResizable(true);
    room_->setFrameShape(QFrame::NoFrame);
    room_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    for (QWidget* part : {room_->viewport(), room_->widget()})
        part->setAutoFillBackground(false); // the page is a sheet, and so are its plots
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(room_);
    setFocusProxy(room_);
    connect(band_, &PlotView::pointedAt, bandReading_, &RoleLabel::setNotation);
    connect(heat_, &PlotView::pointedAt, heatReading_, &RoleLabel::setNotation);
    connect(remedies_, &RemedyList::tryWanted, trial_, &TrialPanel::attempt);
    connect(trial_, &TrialPanel::began, this, [this] { bringUp(*trial_->parentWidget()); });
}

QWidget* OverloadPage::makeSheet() {
    auto* sheet = new QWidget;
    auto* column = new QVBoxLayout(sheet);
    column->setContentsMargins(side, top, side, top);
    column->setSpacing(10);
    column->addWidget(title_);
    column->addWidget(facts_);
    for (std::size_t i = 0; i < checksOverTime.size(); ++i)
        column->addWidget(plates_.emplace_back(new VerdictPlate(appearance_)));
    pictures_ = new QWidget;
    auto* below = new QVBoxLayout(pictures_);
    below->setContentsMargins(0, 8, 0, 0);
    below->setSpacing(14);
    auto* row = new QHBoxLayout;
    row->setSpacing(between);
    row->addWidget(titled(tr("Time against current"), tr("Between the lines a sound device may operate."),
                          band_, bandReading_),
                   1);
    row->addWidget(titled(tr("Heat against time"), tr("From cold. Hatched: more than the insulation bears."),
                          heat_, heatReading_),
                   1);
    below->addLayout(row);
    auto* answers = new QHBoxLayout;
    answers->setSpacing(between);
    answers->addWidget(titled(tr("What it does meanwhile"), {}, meanwhile_), 1);
    answers->addWidget(titled(tr("What would put it right"), {}, remedies_), 1);
    below->addLayout(answers);
    column->addWidget(pictures_);
    column->addWidget(titled(tr("Logged current"),
                             tr("What a logger wrote, in place of the duty: the same devices and conductors, "
                                "from cold, and had it gone on like this before."),
                             logged_));
    column->addWidget(
        titled(tr("What if"), tr("On a copy: change the load, its duty, the device or the wiring."), trial_));
    column->addStretch(1);
    return sheet;
}

QWidget* OverloadPage::titled(const QString& title, const QString& hint, QWidget* body, RoleLabel* below) {
    auto* part = new QWidget;
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    auto* head = new RoleLabel(appearance_, ScreenText::PanelTitle, &Look::ink);
    head->setNotation(title);
    column->addWidget(head);
    if (!hint.isEmpty()) {
        auto* soft = new RoleLabel(appearance_, ScreenText::Note, &Look::inkSoft);
        soft->setNotation(hint);
        soft->setWordWrap(true);
        column->addWidget(soft);
    }
    column->addWidget(body, 1);
    if (below) {
        below->setMinimumHeight(below->fontMetrics().height() + 4);
        column->addWidget(below);
    }
    return part;
}

/// What has just come into the page has its height only once the layouts have been told.
void OverloadPage::bringUp(const QWidget& part) {
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    room_->verticalScrollBar()->setValue(part.mapTo(room_->widget(), QPoint(0, -top)).y());
}

void OverloadPage::show(const SiteViewPtr& view, Id circuit) {
    circuit_ = circuit;
    const Circuit* row = view ? loopwright::find(view->installation.circuits, circuit) : nullptr;
    title_->setNotation(row ? text(row->name) : QString());
    facts_->setNotation(row ? text(pathOf(view->installation, *row)) : QString());
    pictures_->setVisible(row != nullptr);
    if (!row) return;
    showFindings(*view);
    showPictures(*view);
    remedies_->show(
        view->installation,
        loopwright::remedies(view->installation, view->visit, circuit, *view->tables, *view->rules, ids_),
        std::ranges::any_of(view->assessment.about(circuit),
                            [](const Finding* finding) { return asksForRemedy(*finding); }));
    logged_->show(view, circuit);
    trial_->show(view, circuit);
}

void OverloadPage::showFindings(const SiteView& view) {
    const auto found = view.assessment.about(circuit_);
    for (std::size_t i = 0; i < checksOverTime.size(); ++i) {
        const auto finding = std::ranges::find(found, checksOverTime[i], &Finding::check);
        // The first one always says something; the others where they have something to say.
        const bool speaks =
            finding != found.end() && (i == 0 || (*finding)->verdict != Verdict::DoesNotApply);
        plates_[i]->setVisible(speaks);
        if (speaks) plates_[i]->show(**finding);
    }
}

void OverloadPage::showPictures(const SiteView& view) {
    auto overload = circuitOverload(view.installation, view.visit, circuit_, *view.tables, *view.rules);
    pictures_->setVisible(overload.has_value());
    if (!overload) return;
    meanwhile_->show(overloadFacts(overload->found, overload->band.device, appearance_.words));
    band_->show(std::move(overload->band));
    heat_->show(std::move(overload->heat));
}

QString OverloadPage::spoken() const {
    QStringList lines;
    for (const auto* label : findChildren<RoleLabel*>())
        if (label->isVisibleTo(this) && !label->notation().isEmpty())
            lines << plainNotation(label->notation());
    return lines.join(u'\n');
}

void OverloadPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit left();
    else
        RoleFrame::keyPressEvent(event);
}

void OverloadPage::changeEvent(QEvent* event) {
    RoleFrame::changeEvent(event);
    if (event->type() != QEvent::PaletteChange) return;
    for (PlotView* plot : {band_, heat_})
        plot->refresh();
}

} // namespace loopwright
