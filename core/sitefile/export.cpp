// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/attachment.h"
#include "core/sitefile/fields_in_file.h"
#include "core/sitefile/names.h"

#include <algorithm>

namespace loopwright {
namespace {

using namespace sitefile;
using nlohmann::ordered_json;

class Writing {
  public:
    Writing(const Installation& installation, const AttachmentSource& attachments)
      : installation_(installation)
      , attachments_(attachments)
      , names_(installation) {}

    ordered_json site() const {
        ordered_json object{{"loopwright", "site"}, {"version", 1}, {"id", installation_.site.id.text()}};
        writeFields(installation_.site, object);
        writeHeld(installation_.site, object);
        return object;
    }

  private:
    /// Every field that is not what it would be if it were left out.
    template <class Record>
    void writeFields(const Record& record, ordered_json& object) const {
        static const Record blank{};
        for (const Field<Record>& field : fieldsOf<Record>()) {
            const std::string stored = field.get(record);
            if (stored == field.get(blank) || saysHolder<Record>(field.info)) continue;
            ordered_json value;
            if (field.info.kind != FieldKind::Reference)
                value = valueInFile(field.info, stored);
            else if (isOnlySupply(field.info))
                continue;
            else
                value = names_.nameOf(field.info.references, Id::parse(stored).value_or(Id{}));
            at(object, field.info.key) = std::move(value);
        }
    }

    bool isOnlySupply(const FieldInfo& field) const {
        return field.references == RecordKind::Supply && installation_.supplies.size() == 1;
    }

    /// The member that a key leads to, through the object of an embedded struct.
    static ordered_json& at(ordered_json& object, std::string_view key) {
        const std::size_t dot = key.find('.');
        if (dot == std::string_view::npos) return object[std::string(key)];
        return at(object[std::string(key.substr(0, dot))], key.substr(dot + 1));
    }

    template <class Holder>
    void writeHeld(const Holder& holder, ordered_json& object) const {
        forEachHeldKind<Holder>([&](auto blank) {
            using Record = decltype(blank);
            ordered_json list = ordered_json::array();
            for (const Record& row : installation_.*RecordTraits<Record>::rows)
                if (row.*Nesting<Record>::holder == holder.id) list.push_back(written(row));
            if (!list.empty()) object[std::string(Nesting<Record>::list)] = std::move(list);
        });
    }

    template <class Record>
    ordered_json written(const Record& record) const {
        ordered_json object{{"id", record.id.text()}};
        writeFields(record, object);
        if constexpr (hasAttachment<Record>)
            if (const auto bytes = attachments_(record.digest)) object["data"] = encodedBase64(*bytes);
        writeHeld(record, object);
        return object;
    }

    const Installation& installation_;
    const AttachmentSource& attachments_;
    Names names_;
};

} // namespace

std::string exportSite(const Installation& installation, const AttachmentSource& attachments) {
    constexpr int indent = 2;
    return Writing(installation, attachments)
               .site()
               .dump(indent, ' ', false, ordered_json::error_handler_t::replace) +
           "\n";
}

Installation groupedByOwner(const Installation& installation) {
    Installation grouped = installation;
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        using Holder = typename Nesting<Record>::Holder;
        if constexpr (!std::is_same_v<Holder, Site>) {
            std::unordered_map<Id, std::size_t> order;
            for (const Holder& holder : grouped.*RecordTraits<Holder>::rows)
                order.emplace(holder.id, order.size());
            std::ranges::stable_sort(grouped.*RecordTraits<Record>::rows, {}, [&](const Record& row) {
                const auto found = order.find(row.*Nesting<Record>::holder);
                return found == order.end() ? order.size() : found->second;
            });
        }
    });
    return grouped;
}

} // namespace loopwright
