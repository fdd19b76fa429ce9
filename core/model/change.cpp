// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/change.h"

#include "core/model/codec.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace loopwright {
namespace codec {

std::string writeDate(const Date& date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::optional<Date> readDate(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto number = [&](std::size_t from, std::size_t length, auto& value) {
        const char* end = text.data() + from + length;
        return std::from_chars(text.data() + from, end, value) == std::from_chars_result{end, std::errc{}};
    };
    int year = 0;
    unsigned month = 0, day = 0;
    if (!number(0, 4, year) || !number(5, 2, month) || !number(8, 2, day)) return std::nullopt;
    const Date date{std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)};
    return date.ok() ? std::optional(date) : std::nullopt;
}

} // namespace codec

namespace {

Message refusal(std::string_view key, std::string_view text) {
    return {key, {std::string(text)}};
}

tl::expected<std::string, Message> parseFigure(const FieldInfo& field, std::string_view typed,
                                               const NumberFormat& format) {
    const auto entry = parseEntry(typed, field.unit, format);
    if (!entry) return tl::unexpected(entry.error());
    if (entry->state == EntryState::Value || entry->state == EntryState::Above ||
        entry->state == EntryState::Below) {
        if (entry->value < 0 && !field.allowsNegative)
            return tl::unexpected(refusal("entry.negative", typed));
        if (entry->value == 0 && !field.allowsZero) return tl::unexpected(refusal("entry.zero", typed));
        if (field.wholeNumber && entry->value != std::floor(entry->value))
            return tl::unexpected(refusal("entry.not-whole", typed));
    }
    return formatEntry(*entry);
}

tl::expected<std::string, Message> parseOption(const FieldInfo& field, std::string_view typed) {
    std::string known;
    for (const Choice& choice : field.choices->choices) {
        if (choice.key == typed) return std::string(typed);
        known += (known.empty() ? "" : ", ") + std::string(choice.key);
    }
    return tl::unexpected(Message{"field.unknown-option", {std::string(typed), known}});
}

bool hasControlCharacters(std::string_view text, bool linesAllowed) {
    return std::ranges::any_of(text, [&](char c) {
        const auto code = static_cast<unsigned char>(c);
        return (code < 0x20 && !(linesAllowed && (c == '\n' || c == '\t'))) || code == 0x7F;
    });
}

/// Whether `row` names the record `named` in a field that owns it, or in one that only mentions it.
template <class Record>
bool refersTo(const Record& row, RecordKind kind, Id named, bool asOwner) {
    const std::string wanted = named.text();
    return std::ranges::any_of(fieldsOf<Record>(), [&](const Field<Record>& field) {
        return field.info.kind == FieldKind::Reference && field.info.references == kind &&
               field.info.isOwner == asOwner && field.get(row) == wanted;
    });
}

/// Clears what merely mentions a record that is gone: a board's feeder, an observation's place.
template <class Record>
void forget(Record& row, RecordKind kind, Id gone) {
    if (!refersTo(row, kind, gone, false)) return;
    for (const Field<Record>& field : fieldsOf<Record>())
        if (field.info.kind == FieldKind::Reference && field.info.references == kind && !field.info.isOwner)
            (void)field.set(row, {});
}

void removeWithBelongings(Installation& installation, RecordKind kind, Id id) {
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        auto& rows = installation.*RecordTraits<Record>::rows;
        if (RecordTraits<Record>::kind == kind)
            std::erase_if(rows, [&](const Record& row) { return row.id == id; });
        std::vector<Id> belongings;
        for (const Record& row : rows)
            if (refersTo(row, kind, id, true)) belongings.push_back(row.id);
        for (const Id& belonging : belongings)
            removeWithBelongings(installation, RecordTraits<Record>::kind, belonging);
        for (Record& row : rows)
            forget(row, kind, id);
    });
}

template <class Record>
tl::expected<void, Message> applyTo(std::vector<Record>& rows, const Edit& edit) {
    const auto row = std::ranges::find(rows, edit.id, &Record::id);
    if (edit.step == Edit::Step::Insert) {
        if (row != rows.end()) return tl::unexpected(refusal("change.already-there", edit.id.text()));
        Record fresh{};
        fresh.id = edit.id;
        if (auto done = setFields(fresh, edit.values); !done) return done;
        rows.push_back(std::move(fresh));
        return {};
    }
    if (row == rows.end()) return tl::unexpected(refusal("change.no-such-record", edit.id.text()));
    return setFields(*row, edit.values);
}

tl::expected<void, Message> applyStep(Installation& installation, const Edit& edit) {
    if (edit.kind == RecordKind::Site) {
        if (edit.step != Edit::Step::Set || edit.id != installation.site.id)
            return tl::unexpected(refusal("change.no-such-record", edit.id.text()));
        return setFields(installation.site, edit.values);
    }
    tl::expected<void, Message> outcome;
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        if (RecordTraits<Record>::kind != edit.kind) return;
        auto& rows = installation.*RecordTraits<Record>::rows;
        if (edit.step != Edit::Step::Remove)
            outcome = applyTo(rows, edit);
        else if (!find(rows, edit.id))
            outcome = tl::unexpected(refusal("change.no-such-record", edit.id.text()));
        else
            removeWithBelongings(installation, edit.kind, edit.id);
    });
    return outcome;
}

} // namespace

Edit setField(RecordKind kind, Id id, std::string key, std::string text) {
    return {Edit::Step::Set, kind, id, {{std::move(key), std::move(text)}}};
}

Edit removeRecord(RecordKind kind, Id id) {
    return {Edit::Step::Remove, kind, id, {}};
}

tl::expected<void, Message> apply(Installation& installation, const Change& change) {
    auto changed = applied(installation, change);
    if (!changed) return tl::unexpected(changed.error());
    installation = std::move(*changed);
    return {};
}

tl::expected<Installation, Message> applied(Installation installation, const Change& change) {
    for (const Edit& edit : change.edits)
        if (auto done = applyStep(installation, edit); !done) return tl::unexpected(done.error());
    return installation;
}

tl::expected<std::string, Message> parseField(const FieldInfo& field, std::string_view typed,
                                              const NumberFormat& format) {
    if (typed.empty()) return std::string();
    switch (field.kind) {
    case FieldKind::Figure:
        return parseFigure(field, typed, format);
    case FieldKind::Option:
        return parseOption(field, typed);
    case FieldKind::Flag:
        if (typed == "true" || typed == "false") return std::string(typed);
        return tl::unexpected(refusal("field.not-a-flag", typed));
    case FieldKind::Day:
        if (const auto date = codec::readDate(typed)) return codec::writeDate(*date);
        return tl::unexpected(refusal("field.not-a-date", typed));
    case FieldKind::Reference:
        if (const auto id = Id::parse(typed)) return id->text();
        return tl::unexpected(refusal("field.not-an-id", typed));
    case FieldKind::Text:
    case FieldKind::LongText:
        break;
    }
    if (hasControlCharacters(typed, field.kind == FieldKind::LongText))
        return tl::unexpected(Message{"field.control-characters", {}});
    return std::string(typed);
}

} // namespace loopwright
