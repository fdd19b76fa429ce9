// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/nesting.h"
#include "core/sitefile/problems.h"
#include "core/sitefile/schema.h"

/// How one field of the catalogue stands in a site file.
namespace loopwright::sitefile {

/// A number as the stored form writes it: the shortest digits that read back to the same number, without an
/// exponent.
std::string numberText(const nlohmann::json& number);

/// The stored form of a value that stands in the file for `field`; a problem and nothing if it cannot be one.
/// `schema` is the property's own.
std::optional<std::string> storedForm(const FieldInfo& field, const nlohmann::json& schema,
                                      const nlohmann::json& value, const Place& place, Problems& problems);

/// The value that the file holds for a stored form that is not empty. A figure is a number where a number
/// keeps its digits, otherwise a text.
nlohmann::ordered_json valueInFile(const FieldInfo& field, const std::string& stored);

/// Adds a problem unless `value` is an object.
bool isObject(const nlohmann::json& value, const Place& place, Problems& problems);
/// What a value is, as a word to fill in: "a number".
Word kindOf(const nlohmann::json& value);

/// Reads every field of `record` except references from `object`, and says which keys are not known.
template <class Record>
void readFields(const SiteSchema& site, const nlohmann::json& schema, const nlohmann::json& object,
                const std::string& prefix, const Place& place, Record& record, Problems& problems);

/// Says which keys are needed and are not there.
void checkRequired(const nlohmann::json& schema, const nlohmann::json& object, const Place& place,
                   Problems& problems);
void refuseUnknownKey(const nlohmann::json& schema, const std::string& key, const Place& place,
                      Problems& problems);

template <class Record>
void readFields(const SiteSchema& site, const nlohmann::json& schema, const nlohmann::json& object,
                const std::string& prefix, const Place& place, Record& record, Problems& problems) {
    checkRequired(schema, object, place, problems);
    for (const auto& [key, value] : object.items()) {
        const Place here = place.at(key);
        const nlohmann::json* property = site.property(schema, key);
        if (!property) {
            refuseUnknownKey(schema, key, place, problems);
            continue;
        }
        if (property->contains("properties")) {
            if (isObject(value, here, problems))
                readFields(site, *property, value, prefix + key + ".", here, record, problems);
            continue;
        }
        for (const Field<Record>& field : fieldsOf<Record>()) {
            if (field.info.key != prefix + key || field.info.kind == FieldKind::Reference) continue;
            const auto stored = storedForm(field.info, *property, value, here, problems);
            if (!stored) continue;
            if (const auto done = field.set(record, *stored); !done) problems.add(here.text(), done.error());
        }
    }
}

} // namespace loopwright::sitefile
