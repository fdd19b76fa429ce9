// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/open_book.h"

#include <algorithm>

namespace loopwright {
namespace {

/// The visit to show first: the newest that is open, otherwise the newest.
Id newestVisit(const Installation& installation) {
    const auto& visits = installation.visits;
    const auto open = std::find_if(visits.rbegin(), visits.rend(),
                                   [](const Visit& visit) { return visit.state == VisitState::Open; });
    if (open != visits.rend()) return open->id;
    return visits.empty() ? Id{} : visits.back().id;
}

std::optional<Message> labelOf(const tl::expected<std::optional<JournalEntry>, Message>& entry) {
    return entry && *entry ? std::optional((*entry)->label) : std::nullopt;
}

QByteArray bytesOf(const std::weak_ptr<Workbook>& workbook, const std::string& digest) {
    const auto open = workbook.lock();
    const auto kept = open ? open->attachment(digest) : tl::unexpected(Message{});
    if (!kept) return {};
    return {reinterpret_cast<const char*>(kept->bytes.data()), static_cast<qsizetype>(kept->bytes.size())};
}

} // namespace

OpenBook::OpenBook(Workbook workbook, const Knowledge& knowledge, QObject* parent)
  : QObject(parent)
  , workbook_(std::make_shared<Workbook>(std::move(workbook)))
  , knowledge_(knowledge) {}

tl::expected<void, Message> OpenBook::showFirst() {
    auto journal = workbook_->journal();
    if (!journal) return tl::unexpected(journal.error());
    journalCount_ = static_cast<std::int64_t>(journal->size());
    auto sites = workbook_->sites();
    if (!sites) return tl::unexpected(sites.error());
    return showSite(sites->empty() ? Id{} : sites->front().id);
}

tl::expected<void, Message> OpenBook::showSite(Id site) {
    site_ = site;
    return reload({});
}

tl::expected<void, Message> OpenBook::showVisit(Id visit) {
    return reload(visit);
}

/// Loads the site, assesses `visit` (none: the newest) and tells everybody.
tl::expected<void, Message> OpenBook::reload(Id visit) {
    auto sites = workbook_->sites();
    if (!sites) return tl::unexpected(sites.error());
    const bool stillThere = std::ranges::count(*sites, site_, &SiteEntry::id) > 0;
    SiteViewPtr made;
    if (!stillThere) site_ = sites->empty() ? Id{} : sites->front().id;
    if (!site_.isNone()) {
        auto installation = workbook_->load(site_);
        if (!installation) return tl::unexpected(installation.error());
        auto view = std::make_shared<SiteView>();
        view->installation = std::move(*installation);
        view->visit = find(view->installation.visits, visit) ? visit : newestVisit(view->installation);
        const Visit* shown = find(view->installation.visits, view->visit);
        view->tables = &knowledge_.tables;
        view->rules = &ruleSetFor(knowledge_.ruleSets, shown ? shown->ruleSet : std::string());
        view->assessment = assess(view->installation, view->visit, *view->tables, *view->rules);
        view->attachment = [workbook = std::weak_ptr(workbook_)](const std::string& digest) {
            return bytesOf(workbook, digest);
        };
        made = std::move(view);
    }
    sites_ = std::move(*sites);
    view_ = std::move(made);
    undoLabel_ = labelOf(workbook_->undoable());
    redoLabel_ = labelOf(workbook_->redoable());
    emit changed();
    return {};
}

void OpenBook::note(const JournalEntry& entry) {
    ++journalCount_;
    savedAt_ = entry.at;
}

tl::expected<void, Message> OpenBook::carryOut(const Change& change) {
    auto entry = workbook_->commit(change);
    if (!entry) return tl::unexpected(entry.error());
    if (!*entry) return {};
    note(**entry);
    return reload(view_ ? view_->visit : Id{});
}

ChangeDoor OpenBook::door() {
    return [this](const Change& change) { return carryOut(change); };
}

tl::expected<void, Message> OpenBook::add(const Installation& installation, const Message& label) {
    auto entry = workbook_->add(installation, label);
    if (!entry) return tl::unexpected(entry.error());
    note(*entry);
    return showSite(installation.site.id);
}

tl::expected<std::string, Message> OpenBook::keepAttachment(std::span<const std::byte> bytes,
                                                            std::string_view mediaType) {
    return workbook_->putAttachment(bytes, mediaType);
}

tl::expected<void, Message> OpenBook::undo() {
    return step(&Workbook::undo);
}

tl::expected<void, Message> OpenBook::redo() {
    return step(&Workbook::redo);
}

tl::expected<void, Message> OpenBook::step(Step taken) {
    auto entry = ((*workbook_).*taken)();
    if (!entry) return tl::unexpected(entry.error());
    if (!*entry) return {};
    note(**entry);
    return reload(view_ ? view_->visit : Id{});
}

} // namespace loopwright
