// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/change_label.h"

#include "core/phrases/phrases.h"

namespace loopwright {

Message fieldChangeLabel(std::string place, RecordKind kind, std::string_view field, std::string shown) {
    const auto name = phrase("field." + std::string(recordName(kind)) + '.' + std::string(field));
    const Argument field_name = name ? Argument(Word{name->key}) : Argument(std::string(field));
    if (shown.empty()) return {"change.field-cleared", {std::move(place), field_name}};
    return {"change.field", {std::move(place), field_name, std::move(shown)}};
}

Message addedLabel(std::string name) {
    return {"change.added", {std::move(name)}};
}

Message removedLabel(std::string name) {
    return {"change.removed", {std::move(name)}};
}

} // namespace loopwright
