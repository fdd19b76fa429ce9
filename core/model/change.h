// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"

#include <algorithm>

namespace loopwright {

/// One step of a change.
struct Edit {
    enum class Step : std::uint8_t { Set, Insert, Remove };
    struct Value {
        std::string key;  ///< of the field
        std::string text; ///< stored form; empty: absent
        friend bool operator==(const Value&, const Value&) = default;
    };
    Step step = Step::Set;
    RecordKind kind = RecordKind::Site;
    Id id;
    std::vector<Value> values; ///< of Set: the fields that change; of Insert: all that are not empty
    friend bool operator==(const Edit&, const Edit&) = default;
};

/// One user action: what the journal stores as one entry and what undo takes back.
struct Change {
    Message label; ///< "Zs of Board C / F1 to 0.54"
    std::vector<Edit> edits;
};

Edit setField(RecordKind kind, Id id, std::string key, std::string text);
/// An Insert with every non-empty field of `record`.
template <class Record>
Edit insertRecord(const Record& record) {
    Edit edit{Edit::Step::Insert, RecordTraits<Record>::kind, record.id, {}};
    for (const Field<Record>& field : fieldsOf<Record>())
        if (std::string text = field.get(record); !text.empty())
            edit.values.push_back({std::string(field.info.key), std::move(text)});
    return edit;
}
Edit removeRecord(RecordKind kind, Id id);

/// Sets fields of one record in order, up to the first that is unknown or cannot hold its value; says which.
template <class Record>
tl::expected<void, Message> setFields(Record& record, const std::vector<Edit::Value>& values) {
    for (const Edit::Value& value : values) {
        const auto fields = fieldsOf<Record>();
        const auto field =
            std::ranges::find(fields, value.key, [](const Field<Record>& f) { return f.info.key; });
        if (field == fields.end())
            return tl::unexpected(
                Message{"change.unknown-field", {value.key, std::string(RecordTraits<Record>::name)}});
        if (auto done = field->set(record, value.text); !done) return done;
    }
    return {};
}

/// Applies the change, or leaves `installation` as it was and says why not. Removing a record removes what
/// belongs to it (a board its circuits, a circuit its equipment and readings).
tl::expected<void, Message> apply(Installation& installation, const Change& change);
/// The same, of a copy: what the installation becomes.
tl::expected<Installation, Message> applied(Installation installation, const Change& change);

/// What a person typed into a field, as its stored form; or the reason why it cannot be a value of that
/// field.
tl::expected<std::string, Message> parseField(const FieldInfo& field, std::string_view typed,
                                              const NumberFormat& format);

} // namespace loopwright
