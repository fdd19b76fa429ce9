// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/working_json.h"

#include "forms/words/notation.h"

#include <cmath>

namespace loopwright {
namespace {

std::string_view relationKey(Relation relation) {
    switch (relation) {
    case Relation::AtMost:
        return "at-most";
    case Relation::AtLeast:
        return "at-least";
    case Relation::Between:
        return "between";
    case Relation::Equal:
        return "equal";
    }
    return {};
}

Json measureJson(const std::optional<Measure>& measure) {
    if (!measure) return nullptr;
    return {{"value", numberOrNull(measure->value)},
            {"unit", measure->unit.suffix},
            {"bound", boundKey(measure->bound)}};
}

} // namespace

std::string_view boundKey(Bound bound) {
    switch (bound) {
    case Bound::Exact:
        return "exact";
    case Bound::OrLess:
        return "or-less";
    case Bound::OrMore:
        return "or-more";
    case Bound::Open:
        return "either";
    }
    return {};
}

Json numberOrNull(const std::optional<double>& number) {
    return number && std::isfinite(*number) ? Json(*number) : Json(nullptr);
}

Json sourceJson(const Source& source) {
    if (source.title.empty()) return nullptr;
    return {{"title", source.title.view()},
            {"confidence", source.confidence.view()},
            {"fromMemory", source.fromMemory}};
}

Json workingJson(const Working& working, const Words& words) {
    Json terms = Json::array();
    for (const Term& term : working.terms)
        terms.push_back(
            {{"symbol", term.symbol},
             {"value", numberOrNull(term.value.value)},
             {"unit", term.value.unit.suffix},
             {"bound", boundKey(term.value.bound)},
             {"origin", originKey(term.origin)},
             {"note", term.note.key.empty() ? std::string() : utf8(plainNotation(words.sentence(term.note)))},
             {"source", sourceJson(term.source)}});
    return {{"formula", working.formula},
            {"terms", terms},
            {"resultSymbol", working.resultSymbol},
            {"result", measureJson(working.result)},
            {"relation", relationKey(working.relation)},
            {"limit", measureJson(working.limit)},
            {"clause", working.clause},
            {"restsOnAssumption", working.restsOnAssumption}};
}

} // namespace loopwright
