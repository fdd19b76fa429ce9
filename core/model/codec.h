// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/change.h"

/// How each type of member is written as text and read back. Reading trusts that parseField has accepted the
/// text.
namespace loopwright::codec {

template <class T>
struct Codec;

template <>
struct Codec<std::string> {
    static constexpr FieldKind kind = FieldKind::Text;
    static std::string write(const std::string& value, const FieldInfo&) { return value; }
    static std::string read(std::string_view text, const FieldInfo&) { return std::string(text); }
};

template <>
struct Codec<bool> {
    static constexpr FieldKind kind = FieldKind::Flag;
    static std::string write(bool value, const FieldInfo&) { return value ? "true" : "false"; }
    static bool read(std::string_view text, const FieldInfo&) { return text == "true"; }
};

template <>
struct Codec<Id> {
    static constexpr FieldKind kind = FieldKind::Reference;
    static std::string write(const Id& value, const FieldInfo&) {
        return value.isNone() ? std::string() : value.text();
    }
    static Id read(std::string_view text, const FieldInfo&) { return Id::parse(text).value_or(Id{}); }
};

std::string writeDate(const Date& date);
std::optional<Date> readDate(std::string_view text);

template <>
struct Codec<std::optional<Date>> {
    static constexpr FieldKind kind = FieldKind::Day;
    static std::string write(const std::optional<Date>& value, const FieldInfo&) {
        return value ? writeDate(*value) : std::string();
    }
    static std::optional<Date> read(std::string_view text, const FieldInfo&) { return readDate(text); }
};

template <class Q>
struct Codec<Entry<Q>> {
    static constexpr FieldKind kind = FieldKind::Figure;
    static std::string write(const Entry<Q>& value, const FieldInfo& info) {
        return formatEntry(toText(value, info.unit));
    }
    static Entry<Q> read(std::string_view text, const FieldInfo& info) {
        return fromText<Q>(parseEntry(text, info.unit).value_or(EntryText{}), info.unit);
    }
};

template <class E>
requires std::is_enum_v<E>
struct Codec<E> {
    static constexpr FieldKind kind = FieldKind::Option;
    static std::string write(E value, const FieldInfo&) { return std::string(choiceKey(value)); }
    static E read(std::string_view text, const FieldInfo&) {
        for (const Choice& choice : choicesOf<E>().choices)
            if (choice.key == text) return static_cast<E>(choice.value);
        return E{};
    }
};

/// The member that a path of member pointers leads to: at<&Circuit::device, &Device::ratedCurrent>(circuit).
template <auto First, auto... Rest, class Record>
auto& at(Record& record) {
    if constexpr (sizeof...(Rest) == 0)
        return record.*First;
    else
        return at<Rest...>(record.*First);
}

template <class Record, auto... Path>
constexpr Field<Record> field(FieldInfo info) {
    using Member = std::remove_cvref_t<decltype(at<Path...>(std::declval<Record&>()))>;
    if (info.kind == FieldKind::Text) info.kind = Codec<Member>::kind;
    return {info,
            [](const Record& record, const FieldInfo& self) {
                return Codec<Member>::write(at<Path...>(record), self);
            },
            [](Record& record, const FieldInfo& self, std::string_view text) -> tl::expected<void, Message> {
                if (text.empty()) {
                    Record fresh{};
                    at<Path...>(record) = std::move(at<Path...>(fresh));
                    return {};
                }
                const auto stored = parseField(self, text, NumberFormat{});
                if (!stored) return tl::unexpected(stored.error());
                at<Path...>(record) = Codec<Member>::read(*stored, self);
                return {};
            }};
}

} // namespace loopwright::codec
