// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/log_card.h"

#include "forms/frame/labels.h"
#include "forms/overload/fact_table.h"
#include "forms/plots/plot_view.h"
#include "forms/words/logged_words.h"

#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int plotHeight = 400, between = 24;

} // namespace

LogCard::LogCard(const Appearance& appearance, const CurrentLog& log, QWidget* parent)
  : RoleFrame(appearance, &Look::sheet, Qt::TopEdge, &Look::line, parent)
  , appearance_(appearance)
  , channels_(new QComboBox)
  , remove_(new QPushButton(tr("Remove")))
  , said_(new RoleLabel(appearance, ScreenText::Figure, &Look::ink))
  , shown_(new QWidget)
  , plot_(new PlotView(appearance))
  , reading_(new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft))
  , facts_(new FactTable(appearance)) {
    assemble(log.name.empty() ? tr("Log without a name") : text(log.name));
    said_->setWordWrap(true);
    plot_->setMinimumHeight(appearance.type.scaled(plotHeight));
    reading_->setMinimumHeight(reading_->fontMetrics().height() + 4);
    connect(plot_, &PlotView::pointedAt, reading_, &RoleLabel::setNotation);
    connect(remove_, &QPushButton::clicked, this, &LogCard::removeWanted);
    connect(channels_, &QComboBox::activated, this,
            [this](int index) { emit channelChosen(index == 0 ? QString() : channels_->itemText(index)); });
}

void LogCard::assemble(const QString& name) {
    auto* title = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink, Weight::Semibold);
    title->setNotation(name);
    channels_->setAccessibleName(tr("Channel of %1").arg(name));
    channels_->hide();
    auto* open = new QPushButton(tr("Name and notes"));
    connect(open, &QPushButton::clicked, this, &LogCard::openWanted);
    auto* head = new QHBoxLayout;
    head->addWidget(title);
    head->addWidget(channels_);
    head->addStretch(1);
    head->addWidget(open);
    head->addWidget(remove_);
    auto* picture = new QVBoxLayout;
    picture->setSpacing(2);
    picture->addWidget(plot_, 1);
    picture->addWidget(reading_);
    auto* row = new QHBoxLayout(shown_);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(between);
    row->addLayout(picture, 3);
    row->addWidget(facts_, 2, Qt::AlignTop);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 8);
    column->setSpacing(6);
    column->addLayout(head);
    column->addWidget(said_);
    column->addWidget(shown_);
    shown_->hide();
}

void LogCard::offer(const overload::LoggedCurrents& currents, const std::string& chosen) {
    channels_->clear();
    for (const overload::LoggedChannel& channel : currents.channels) {
        channels_->addItem(text(channel.name));
        if (channel.name == chosen) channels_->setCurrentIndex(channels_->count() - 1);
    }
    channels_->setVisible(channels_->count() > 1);
}

void LogCard::show(CircuitLog found) {
    said_->setNotation(loggedSentences(found, appearance_.words));
    facts_->show(loggedFacts(found, appearance_.words));
    plot_->show(std::move(found.picture));
    shown_->show();
}

void LogCard::refuse(const QString& sentence) {
    said_->setNotation(sentence);
    shown_->hide();
}

void LogCard::setReadOnly(bool readOnly) {
    channels_->setEnabled(!readOnly);
    remove_->setEnabled(!readOnly);
}

void LogCard::changeEvent(QEvent* event) {
    RoleFrame::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) plot_->refresh();
}

} // namespace loopwright
