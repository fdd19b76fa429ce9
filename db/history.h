// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/workbook.h"

#include <optional>
#include <vector>

namespace loopwright {

/// What can be taken back and done again, found by reading the journal's entries in order. The journal is
/// only ever added to, so this is all the state that undo has.
class History {
  public:
    void add(std::int64_t sequence, JournalAction action) {
        if (action == JournalAction::Undo)
            move(undoable_, redoable_, sequence);
        else if (action == JournalAction::Redo)
            move(redoable_, undoable_, sequence);
        else {
            undoable_.push_back(sequence);
            redoable_.clear();
        }
        last_ = sequence;
    }

    /// The entry whose changeset an undo, or a redo, has to invert.
    std::optional<std::int64_t> undoable() const { return top(undoable_); }
    std::optional<std::int64_t> redoable() const { return top(redoable_); }
    std::int64_t last() const { return last_; } ///< the newest entry that was added; 0: none

  private:
    using Stack = std::vector<std::int64_t>;
    static void move(Stack& from, Stack& to, std::int64_t sequence) {
        if (!from.empty()) from.pop_back();
        to.push_back(sequence);
    }
    static std::optional<std::int64_t> top(const Stack& stack) {
        return stack.empty() ? std::nullopt : std::optional(stack.back());
    }

    Stack undoable_;
    Stack redoable_;
    std::int64_t last_ = 0;
};

} // namespace loopwright
