// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"
#include "core/sitefile/site_file.h"

#include <map>
#include <unordered_map>

namespace loopwright::sitefile {

/// What the records of an installation are called in a site file: boards and circuits by their path, supplies
/// by their number, everything by its id.
class Names {
  public:
    explicit Names(const Installation& installation);

    /// The record that `text` names. The refusal gives the nearest known name, or says that several are
    /// called so.
    tl::expected<Id, Message> resolve(RecordKind kind, const std::string& text) const;
    /// A text that resolves to that record: its name where that is unmistakable, otherwise its id.
    std::string nameOf(RecordKind kind, Id id) const;

  private:
    struct Kind {
        std::map<std::string, std::vector<Id>> idsByName;
        std::unordered_map<Id, std::string> nameById;
        void add(Id id, std::string name);
    };
    const Kind& names(RecordKind kind) const;

    Kind supplies_, boards_, circuits_;
};

} // namespace loopwright::sitefile
