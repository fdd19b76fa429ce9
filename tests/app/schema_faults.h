// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/reference/embedded.h"

#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include <string>

namespace loopwright::test {

/// What a schema of resources/ finds wrong with a document; empty if nothing.
inline std::string schemaFaults(std::string_view path, const nlohmann::json& document) {
    using Adapter = valijson::adapters::NlohmannJsonAdapter;
    const nlohmann::json text = nlohmann::json::parse(embeddedFile(path));
    valijson::Schema schema;
    valijson::SchemaParser(valijson::SchemaParser::kDraft7).populateSchema(Adapter(text), schema);
    valijson::ValidationResults results;
    if (valijson::Validator().validate(schema, Adapter(document), &results)) return {};
    std::string said;
    for (valijson::ValidationResults::Error error; results.popError(error);) {
        for (const std::string& step : error.context)
            said += step;
        said += ": " + error.description + "\n";
    }
    return said;
}

} // namespace loopwright::test
