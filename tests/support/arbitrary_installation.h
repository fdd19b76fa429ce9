// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/change.h"

#include <rapidcheck.h>

#include <string>
#include <vector>

/// Installations with anything that the field catalogue allows in any field, for property tests.
namespace loopwright::arbitrary {

/// Letters, digits and what tends to break formats: quotes, separators, signs of more than one byte.
inline rc::Gen<std::string> words() {
    const auto piece =
        rc::gen::element<std::string>("a", "Kiln", "7", " ", "é", "Ω", "“", "'", "\"", ";", "%", "\\", "{0}",
                                      "<b>", " / ", "漢字", "𝔘", "(carried)", "LIM:", ">9", "\u00A0");
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece),
                        [](const std::vector<std::string>& pieces) {
                            std::string text;
                            for (const std::string& each : pieces)
                                text += each;
                            return text;
                        });
}

inline std::string figure(const FieldInfo& field) {
    std::string text = std::to_string(*rc::gen::inRange(field.allowsZero ? 0 : 1, 100000));
    if (!field.wholeNumber)
        if (const int decimals = *rc::gen::inRange(0, 1000); decimals > 0)
            text += "." + std::to_string(decimals);
    const bool negative = field.allowsNegative && *rc::gen::arbitrary<bool>();
    return *rc::gen::element<std::string>("", "", ">", "<") + (negative ? "-" : "") + text;
}

/// The stored form of something that `field` can hold; never empty, and not for references.
inline std::string storedText(const FieldInfo& field) {
    switch (field.kind) {
    case FieldKind::Text:
        return "T" + *words();
    case FieldKind::LongText:
        return "L" + *words() + "\n" + *words();
    case FieldKind::Flag:
        return *rc::gen::element<std::string>("true", "false");
    case FieldKind::Option:
        return std::string(
            field.choices->choices[*rc::gen::inRange<std::size_t>(0, field.choices->choices.size())].key);
    case FieldKind::Day:
        return "20" + std::to_string(*rc::gen::inRange(10, 99)) + "-0" +
               std::to_string(*rc::gen::inRange(1, 10)) + "-" + std::to_string(*rc::gen::inRange(10, 29));
    case FieldKind::Figure: {
        const std::string text = *rc::gen::element<std::string>("figure", "figure", "N/A", "LIM: locked");
        return (text == "figure" ? figure(field) : text) +
               *rc::gen::element<std::string>("", "", " (carried)", " (typed)", " (assumed)");
    }
    case FieldKind::Reference:
        break;
    }
    RC_FAIL("a reference has no text of its own");
}

inline std::vector<Id> idsOf(const Installation& installation, RecordKind kind) {
    if (kind == RecordKind::Site) return {installation.site.id};
    std::vector<Id> ids;
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        if (RecordTraits<Record>::kind != kind) return;
        for (const Record& row : installation.*RecordTraits<Record>::rows)
            ids.push_back(row.id);
    });
    return ids;
}

/// A text for any field, a reference to a record of `installation` included; empty now and then where it may
/// be.
inline std::string anyText(const Installation& installation, const FieldInfo& field) {
    const bool mayBeEmpty = !(field.kind == FieldKind::Reference && field.isOwner);
    if (mayBeEmpty && *rc::gen::weightedElement<bool>({{1, true}, {2, false}})) return {};
    if (field.kind != FieldKind::Reference) return storedText(field);
    const std::vector<Id> ids = idsOf(installation, field.references);
    return ids.empty() ? std::string() : (*rc::gen::elementOf(ids)).text();
}

/// Whether a record of this kind has somebody to belong to.
template <class Record>
bool hasOwners(const Installation& installation) {
    for (const Field<Record>& field : fieldsOf<Record>())
        if (field.info.isOwner && idsOf(installation, field.info.references).empty()) return false;
    return true;
}

template <class Record>
Record record(const Installation& installation, IdSource& ids) {
    Record made{};
    made.id = ids.next();
    for (const Field<Record>& field : fieldsOf<Record>()) {
        const std::string text = anyText(installation, field.info);
        const auto done = field.set(made, text);
        if (!done) RC_FAIL(std::string(field.info.key) + " refuses " + text);
    }
    return made;
}

/// Up to three records of each kind. Boards may be fed from any circuit, as a person may record it.
inline Installation installation(IdSource& ids) {
    Installation made;
    made.site = record<Site>(made, ids);
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        const int count = *rc::gen::inRange(0, 4);
        for (int i = 0; i < count && hasOwners<Record>(made); ++i)
            (made.*RecordTraits<Record>::rows).push_back(record<Record>(made, ids));
    });
    for (Board& board : made.boards)
        if (!made.circuits.empty() && *rc::gen::arbitrary<bool>())
            board.fedFrom = (*rc::gen::elementOf(made.circuits)).id;
    return made;
}

} // namespace loopwright::arbitrary
