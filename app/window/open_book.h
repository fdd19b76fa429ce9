// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/knowledge.h"
#include "db/workbook.h"
#include "forms/frame/site_view.h"

#include <QObject>

namespace loopwright {

/// The workbook that the window shows: one of its sites, one visit of that, and everything found out about
/// it. Every change is committed, loaded back and assessed again before it returns, so that what is shown is
/// what is kept.
class OpenBook final : public QObject {
    Q_OBJECT
  public:
    /// `knowledge` outlives the book. Shows nothing until showFirst().
    OpenBook(Workbook workbook, const Knowledge& knowledge, QObject* parent = nullptr);

    /// The first site with its newest visit; nothing when the book holds no site.
    tl::expected<void, Message> showFirst();
    tl::expected<void, Message> showSite(Id site);
    tl::expected<void, Message> showVisit(Id visit);

    /// nullptr while the book holds no site.
    const SiteViewPtr& view() const { return view_; }
    const std::vector<SiteEntry>& sites() const { return sites_; }
    const std::filesystem::path& path() const { return workbook_->path(); }
    /// How many entries the journal has, and when the last one was written.
    std::int64_t journalCount() const { return journalCount_; }
    std::optional<std::chrono::sys_seconds> savedAt() const { return savedAt_; }

    tl::expected<void, Message> carryOut(const Change& change);
    ChangeDoor door();
    /// Adds a whole site and shows it. Its attachments are kept before it.
    tl::expected<void, Message> add(const Installation& installation, const Message& label);
    /// Keeps the bytes of a picture or a log and returns their digest.
    tl::expected<std::string, Message> keepAttachment(std::span<const std::byte> bytes,
                                                      std::string_view mediaType);

    /// What undo would take back and redo would do again; nothing when there is nothing.
    const std::optional<Message>& undoLabel() const { return undoLabel_; }
    const std::optional<Message>& redoLabel() const { return redoLabel_; }
    tl::expected<void, Message> undo();
    tl::expected<void, Message> redo();

  signals:
    /// There is a new view, or none.
    void changed();

  private:
    using Step = tl::expected<std::optional<JournalEntry>, Message> (Workbook::*)();
    tl::expected<void, Message> step(Step step);
    tl::expected<void, Message> reload(Id visit);
    void note(const JournalEntry& entry);

    std::shared_ptr<Workbook> workbook_; ///< shared with views, which ask it for attachments while it is open
    const Knowledge& knowledge_;
    std::vector<SiteEntry> sites_;
    Id site_;
    SiteViewPtr view_;
    std::int64_t journalCount_ = 0;
    std::optional<std::chrono::sys_seconds> savedAt_;
    std::optional<Message> undoLabel_, redoLabel_;
};

} // namespace loopwright
