// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/change.h"
#include "core/model/clock.h"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace loopwright {

/// Who the journal says has made a change.
struct Author {
    std::string name;
};

/// What a workbook takes from outside. `clock` and `ids` outlive the workbook.
struct Surroundings {
    Author author;
    const Clock& clock;
    IdSource& ids;
    /// How long to wait for another program that is writing before saying so.
    std::chrono::milliseconds patience{2000};
    /// The largest number of pages the file may grow to; nothing: as the disk allows. Tests fill a "disk"
    /// with it.
    std::optional<std::int64_t> mostPages;
};

struct SiteEntry {
    Id id;
    std::string name;
    friend bool operator==(const SiteEntry&, const SiteEntry&) = default;
};

enum class JournalAction : std::uint8_t { Change, Undo, Redo };

/// One user action, as the journal keeps it. An undo carries the label of the change that it took back.
struct JournalEntry {
    std::int64_t sequence = 0; ///< counts up in this file
    Id id;
    std::chrono::sys_seconds at;
    std::string who;
    JournalAction action = JournalAction::Change;
    Id reverses; ///< of Undo and Redo: the entry that is taken back
    Message label;
    friend bool operator==(const JournalEntry&, const JournalEntry&) = default;
};

/// A picture or a log as it is kept.
struct AttachmentBytes {
    std::string mediaType;
    std::vector<std::byte> bytes;
    friend bool operator==(const AttachmentBytes&, const AttachmentBytes&) = default;
};

/// The workbook file: sites with everything recorded about them, the journal of how they came to be so, and
/// pictures and logs. What a function has returned is on the disk. Every refusal is a sentence, and leaves
/// the workbook as it was. One thread at a time; several programs may have the same workbook open.
class Workbook {
  public:
    /// Makes an empty workbook. Refuses a path where something is already.
    static tl::expected<Workbook, Message> create(const std::filesystem::path& path,
                                                  const Surroundings& surroundings);
    /// Opens a workbook to read and write; one that an older program has written is brought up to date first.
    /// Refuses what is not a workbook, what a newer program has written,
    /// what may only be read, what is damaged, and what another program keeps to itself.
    static tl::expected<Workbook, Message> open(const std::filesystem::path& path,
                                                const Surroundings& surroundings);
    Workbook(Workbook&&) noexcept;
    Workbook& operator=(Workbook&&) noexcept;
    ~Workbook();

    const std::filesystem::path& path() const;
    /// In the order in which they were added.
    tl::expected<std::vector<SiteEntry>, Message> sites() const;
    tl::expected<Installation, Message> load(Id site) const;

    /// Adds a whole site as one change; the one way to bring in visits that are issued already.
    tl::expected<JournalEntry, Message> add(const Installation& installation, const Message& label);
    /// Carries out one user action and writes it into the journal; nothing when the change changes nothing.
    /// Refuses fields that the catalogue does not know or that cannot hold the value, records that are not
    /// there, references to records that are not there, and changes to a visit that is issued.
    tl::expected<std::optional<JournalEntry>, Message> commit(const Change& change);

    /// What undo would take back and redo do again; nothing when there is nothing.
    tl::expected<std::optional<JournalEntry>, Message> undoable() const;
    tl::expected<std::optional<JournalEntry>, Message> redoable() const;
    /// Takes back the last change that stands, whoever made it and whenever; nothing when there is none. This
    /// is an entry of the journal too. What has been taken back can be done again until the next change.
    tl::expected<std::optional<JournalEntry>, Message> undo();
    tl::expected<std::optional<JournalEntry>, Message> redo();
    /// All entries, oldest first.
    tl::expected<std::vector<JournalEntry>, Message> journal() const;

    /// Keeps the bytes of a picture or a log and returns their digest (SHA-256, 64 hexadecimal digits). Bytes
    /// that are kept already are not kept twice. Not part of the journal.
    tl::expected<std::string, Message> putAttachment(std::span<const std::byte> bytes,
                                                     std::string_view mediaType);
    /// Refuses a digest that is not kept here, and bytes that no longer match it.
    tl::expected<AttachmentBytes, Message> attachment(std::string_view digest) const;

    /// Writes a consistent copy of the workbook to a new file, while others may go on writing to this one.
    tl::expected<void, Message> copyTo(const std::filesystem::path& target) const;

  private:
    struct Open;
    explicit Workbook(std::unique_ptr<Open> open);
    std::unique_ptr<Open> open_;
};

} // namespace loopwright
