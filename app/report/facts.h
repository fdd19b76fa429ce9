// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

#include "core/model/fields.h"

namespace loopwright::report {

/// A field as a person reads it: its name, and its value with unit, word or date.
struct Fact {
    QString name;
    QString said;
};

/// "0.24 Ω", ">999 MΩ", "LIM: locked", "24 m, carried"; empty while missing.
QString entrySaid(const EntryText& entry, const Unit& unit, const Words& words);
/// The stored form `stored` of a field, in words.
QString fieldSaid(const FieldInfo& field, const std::string& stored, const ReportInput& input);

/// Every field that holds something and is no reference, in the catalogue's order.
template <class Record>
std::vector<Fact> factsOf(const Record& record, const ReportInput& input) {
    std::vector<Fact> facts;
    for (const Field<Record>& field : fieldsOf<Record>()) {
        if (field.info.kind == FieldKind::Reference) continue;
        const std::string key =
            "field." + std::string(RecordTraits<Record>::name) + "." + std::string(field.info.key);
        const QString said = fieldSaid(field.info, field.get(record), input);
        if (!said.isEmpty()) facts.push_back({input.words.word(key), said});
    }
    return facts;
}

/// "B 32 A, 10 kA" as a sheet shows it; empty without a family and a rating.
QString deviceSaid(const Device& device, const ReportInput& input);

/// Two facts a row, each with a hairline below.
void writeFactColumns(const Composing& composing, Flow& flow, const std::vector<Fact>& facts);

} // namespace loopwright::report
