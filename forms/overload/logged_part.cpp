// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/logged_part.h"

#include "core/assess/circuit_log.h"
#include "forms/frame/change_label.h"
#include "forms/frame/labels.h"
#include "forms/overload/log_card.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright {

LoggedPart::LoggedPart(const Appearance& appearance, ChangeDoor door, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , door_(std::move(door))
  , takeIn_(new QPushButton(tr("Take in a log")))
  , refusal_(new RoleLabel(appearance, ScreenText::Figure, &Look::fails)) {
    refusal_->setWordWrap(true);
    refusal_->hide();
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(takeIn_);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    column->setSpacing(6);
    column->addLayout(buttons);
    column->addWidget(refusal_);
    connect(takeIn_, &QPushButton::clicked, this, [this] { emit logWanted(circuit_); });
}

void LoggedPart::show(const SiteViewPtr& view, Id circuit) {
    view_ = view;
    circuit_ = circuit;
    refusal_->hide();
    takeIn_->setEnabled(!isSealed());
    const auto logs = logsOf(view->installation, view->visit, circuit);
    std::erase_if(read_, [&](const auto& each) {
        return std::ranges::none_of(logs, [&](const CurrentLog* log) { return log->digest == each.first; });
    });
    cards_.clear();
    delete body_;
    body_ = new QWidget;
    auto* column = new QVBoxLayout(body_);
    column->setContentsMargins(0, 0, 0, 0);
    for (const CurrentLog* log : logs)
        add(*log, *column);
    layout()->addWidget(body_);
    body_->show();
}

void LoggedPart::add(const CurrentLog& log, QVBoxLayout& column) {
    auto* card = cards_.emplace_back(new LogCard(appearance_, log));
    column.addWidget(card);
    card->setReadOnly(isSealed());
    const Id id = log.id;
    connect(card, &LogCard::openWanted, this, [this, id] { emit openWanted(id); });
    // Queued: a change makes the cards anew, and the one that asked goes with them.
    connect(
        card, &LogCard::channelChosen, this,
        [this, id](const QString& channel) { chooseChannel(id, utf8(channel)); }, Qt::QueuedConnection);
    connect(
        card, &LogCard::removeWanted, this, [this, id] { remove(id); }, Qt::QueuedConnection);
    const Read& read = readingOf(log);
    if (!read) return card->refuse(appearance_.words.sentence(read.error()));
    card->offer(*read, log.channel);
    auto found = circuitLog(view_->installation, view_->visit, circuit_, *view_->tables, *view_->rules, *read,
                            log.channel);
    if (found)
        card->show(std::move(*found));
    else
        card->refuse(appearance_.words.sentence(found.error()));
}

const LoggedPart::Read& LoggedPart::readingOf(const CurrentLog& log) {
    if (const auto known = read_.find(log.digest); known != read_.end()) return known->second;
    const QByteArray bytes = view_->attachment ? view_->attachment(log.digest) : QByteArray();
    const std::string_view kept(bytes.constData(), static_cast<std::size_t>(bytes.size()));
    return read_.emplace(log.digest, readKeptLog(bytes.isEmpty() ? std::nullopt : std::optional(kept)))
        .first->second;
}

void LoggedPart::refuse(const QString& sentence) {
    refusal_->setNotation(sentence);
    refusal_->show();
}

void LoggedPart::chooseChannel(Id log, const std::string& channel) {
    const CurrentLog* row = loopwright::find(view_->installation.currentLogs, log);
    if (!row || row->channel == channel) return;
    carryOut({fieldChangeLabel(row->name, RecordKind::CurrentLog, "channel", channel),
              {setField(RecordKind::CurrentLog, log, "channel", channel)}});
}

void LoggedPart::remove(Id log) {
    if (const CurrentLog* row = loopwright::find(view_->installation.currentLogs, log))
        carryOut({removedLabel(row->name), {removeRecord(RecordKind::CurrentLog, log)}});
}

void LoggedPart::carryOut(const Change& change) {
    if (const auto done = door_(change); !done) refuse(appearance_.words.sentence(done.error()));
}

bool LoggedPart::isSealed() const {
    const Visit* visit = loopwright::find(view_->installation.visits, view_->visit);
    return !visit || visit->state == VisitState::Issued;
}

} // namespace loopwright
