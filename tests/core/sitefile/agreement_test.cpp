// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/schema.h"
#include "tests/core/sitefile/site_text.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace loopwright {
namespace {

using nlohmann::json;

/// Every value of the document, as a pointer.
std::vector<json::json_pointer> placesOf(const json& document) {
    std::vector<json::json_pointer> places;
    const json flat = document.flatten();
    for (const auto& [path, leaf] : flat.items())
        for (json::json_pointer place(path); !place.empty(); place = place.parent_pointer())
            places.push_back(place);
    std::ranges::sort(places);
    const auto repeated = std::ranges::unique(places);
    places.erase(repeated.begin(), repeated.end());
    return places;
}

json anyValue() {
    static const std::vector<json> values{nullptr,
                                          true,
                                          false,
                                          0,
                                          -1,
                                          7,
                                          2.5,
                                          3.0,
                                          1e20,
                                          "",
                                          "text",
                                          "-3",
                                          "0",
                                          "N/A",
                                          "three",
                                          "2026-03-10",
                                          "2026-13-40",
                                          json::array(),
                                          json::object(),
                                          json::array({1}),
                                          json{{"name", "x"}},
                                          json::array({{{"digest", "abc"}}}),
                                          std::string(3000, 'x')};
    return *rc::gen::elementOf(values);
}

/// What a person could not have meant, whatever the schema says, has a sentence of our own: the validator's
/// words are never needed.
RC_GTEST_PROP(SiteFileAgreement, WhatTheSchemaRefusesHasASentenceOfOurs, ()) {
    json document = json::parse(test::smallSiteText);
    for (int changes = *rc::gen::inRange(1, 4); changes > 0; --changes) {
        const auto place = *rc::gen::elementOf(placesOf(document));
        if (*rc::gen::inRange(0, 4) == 0 && document[place].is_object())
            document[place][*rc::gen::element<std::string>("id", "name", "notes", "colour", "load_A",
                                                           "circuits")] = anyValue();
        else
            document[place] = anyValue();
    }
    SequentialIds ids;
    const auto imported = importSite(document.dump(), ids, test::noAttachments);
    const bool valid = sitefile::SiteSchema().validate(document).has_value();
    if (!imported)
        for (const SiteFileProblem& problem : imported.error())
            if (problem.what.key == "sitefile.not-by-schema")
                RC_FAIL(test::told(imported.error()) + document.dump(2));
    RC_ASSERT(valid || !imported);
}

} // namespace
} // namespace loopwright
