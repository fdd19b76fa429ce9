// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/site_file.h"

#include <nlohmann/json.hpp>

namespace loopwright::sitefile {

/// resources/schema/site.schema.json, read once.
class SiteSchema {
  public:
    SiteSchema();

    /// The schema of a whole record; `definition` as in Nesting.
    const nlohmann::json& record(std::string_view definition) const;
    /// The schema behind one property of an object's schema, with "$ref" followed; nullptr if there is no
    /// such property.
    const nlohmann::json* property(const nlohmann::json& object, std::string_view key) const;
    /// The schema of the items of an array's schema.
    const nlohmann::json& items(const nlohmann::json& array) const;

    /// Whether the document is as the schema says; otherwise the deepest place where it is not, and why in
    /// the validator's words.
    tl::expected<void, SiteFileProblem> validate(const nlohmann::json& document) const;

  private:
    const nlohmann::json& resolved(const nlohmann::json& schema) const;

    nlohmann::json root_;
};

} // namespace loopwright::sitefile
