// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/schema.h"

#include "core/reference/embedded.h"
#include "core/sitefile/place.h"

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include <charconv>

namespace loopwright::sitefile {
namespace {

using nlohmann::json;

constexpr std::string_view definitionPrefix = "#/definitions/";

/// The validator's path ("<root>", "[boards]", "[2]") as a person counts.
std::string placeOf(const std::vector<std::string>& context) {
    std::string text;
    for (const std::string& step : context) {
        if (!step.starts_with('[')) continue;
        const std::string inner = step.substr(1, step.size() - 2);
        std::size_t index = 0;
        const auto [end, problem] = std::from_chars(inner.data(), inner.data() + inner.size(), index);
        const bool isIndex = problem == std::errc{} && end == inner.data() + inner.size();
        text += (text.empty() ? "" : ", ") + (isIndex ? ordinal(index + 1) : inner);
    }
    return text;
}

} // namespace

SiteSchema::SiteSchema()
  : root_(json::parse(embeddedFile("schema/site.schema.json"))) {}

const json& SiteSchema::resolved(const json& schema) const {
    const auto reference = schema.find("$ref");
    if (reference == schema.end()) return schema;
    const std::string_view path = reference->get_ref<const std::string&>();
    return resolved(root_.at("definitions").at(std::string(path.substr(definitionPrefix.size()))));
}

const json& SiteSchema::record(std::string_view definition) const {
    return definition.empty() ? root_ : root_.at("definitions").at(std::string(definition));
}

const json* SiteSchema::property(const json& object, std::string_view key) const {
    const json& properties = object.at("properties");
    const auto found = properties.find(key);
    return found == properties.end() ? nullptr : &resolved(*found);
}

const json& SiteSchema::items(const json& array) const {
    return resolved(array.at("items"));
}

tl::expected<void, SiteFileProblem> SiteSchema::validate(const json& document) const {
    using Adapter = valijson::adapters::NlohmannJsonAdapter;
    valijson::Schema schema;
    valijson::SchemaParser(valijson::SchemaParser::kDraft7).populateSchema(Adapter(root_), schema);
    valijson::ValidationResults results;
    if (valijson::Validator().validate(schema, Adapter(document), &results)) return {};
    valijson::ValidationResults::Error deepest;
    results.popError(deepest);
    return tl::unexpected(
        SiteFileProblem{placeOf(deepest.context), {"sitefile.not-by-schema", {deepest.description}}});
}

} // namespace loopwright::sitefile
