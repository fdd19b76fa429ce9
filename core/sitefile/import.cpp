// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/attachment.h"
#include "core/sitefile/document.h"
#include "core/sitefile/fields_in_file.h"
#include "core/sitefile/names.h"
#include "core/sitefile/relations.h"

#include <set>

namespace loopwright {
namespace {

using namespace sitefile;
using nlohmann::json;
using Problem = SiteFileProblem;

/// A reference that is looked up when every name is known.
struct Pending {
    RecordKind kind;
    std::string text;
    std::string where;
    std::function<void(Id)> assign;
};

/// Reads one document into one installation.
class Reading {
  public:
    Reading(const SiteSchema& schema, IdSource& ids, const AttachmentReader& reader)
      : schema_(schema)
      , ids_(ids)
      , reader_(reader) {}

    tl::expected<SiteImport, std::vector<Problem>> read(const json& document) {
        const Place root;
        Site& site = import_.installation.site;
        site.id = idOf(document, root);
        readFields(schema_, schema_.record({}), document, {}, root, site, problems_);
        readHeld<Site>(document, root, site.id);
        resolveReferences();
        if (problems_.empty()) settleRelations(import_.installation, rows_, problems_);
        if (!problems_.empty()) return tl::unexpected(problems_.take());
        if (const auto valid = schema_.validate(document); !valid)
            return tl::unexpected(std::vector{valid.error()});
        return std::move(import_);
    }

  private:
    template <class Holder>
    void readHeld(const json& object, const Place& place, Id holder) {
        forEachHeldKind<Holder>([&](auto blank) { readRows<decltype(blank)>(object, place, holder); });
    }

    template <class Record>
    void readRows(const json& object, const Place& place, Id holder) {
        const auto list = object.find(Nesting<Record>::list);
        if (list == object.end()) return;
        const Place listPlace = place.at(Nesting<Record>::list);
        if (!list->is_array()) {
            problems_.add(listPlace, "sitefile.wrong-kind", {Word{"sitefile.kind.list"}, kindOf(*list)});
            return;
        }
        for (std::size_t i = 0; i < list->size() && !problems_.full(); ++i) {
            const Place here = listPlace.at(i);
            if (isObject((*list)[i], here, problems_)) readRow<Record>((*list)[i], here, holder);
        }
    }

    template <class Record>
    void readRow(const json& object, const Place& place, Id holder) {
        Record record{};
        record.id = idOf(object, place);
        record.*Nesting<Record>::holder = holder;
        readFields(schema_, schema_.record(Nesting<Record>::definition), object, {}, place, record,
                   problems_);
        if constexpr (hasAttachment<Record>) readBytes(object, place, record);
        auto& rows = import_.installation.*RecordTraits<Record>::rows;
        rows.push_back(std::move(record));
        noteReferences<Record>(object, place, rows.size() - 1);
        readHeld<Record>(object, place, rows.back().id);
    }

    /// The id that the object gives itself, or a new one.
    Id idOf(const json& object, const Place& place) {
        const auto given = object.find("id");
        if (given == object.end()) {
            const Id made = ids_.next();
            rows_.emplace(made, Row{place.text(), false});
            return made;
        }
        const auto id = given->is_string() ? Id::parse(given->get_ref<const std::string&>()) : std::nullopt;
        if (!id || id->isNone()) {
            problems_.add(place.at("id"), "sitefile.not-an-id");
            return {};
        }
        const auto [row, isNew] = rows_.emplace(*id, Row{place.text(), true});
        if (!isNew) problems_.add(place.at("id"), "sitefile.id-twice", {row->second.where});
        return *id;
    }

    /// The place of row `index` in its vector stays while rows are added, its address does not.
    template <class Record>
    void noteReferences(const json& object, const Place& place, std::size_t index) {
        for (const Field<Record>& field : fieldsOf<Record>()) {
            if (field.info.kind != FieldKind::Reference || saysHolder<Record>(field.info)) continue;
            const auto value = object.find(field.info.key);
            if (value == object.end()) continue;
            const Place here = place.at(field.info.key);
            const json* schema =
                schema_.property(schema_.record(Nesting<Record>::definition), field.info.key);
            const auto text = storedForm(field.info, *schema, *value, here, problems_);
            if (!text) continue;
            pending_.push_back({field.info.references, *text, here.text(), [this, &field, index](Id id) {
                                    auto& rows = import_.installation.*RecordTraits<Record>::rows;
                                    (void)field.set(rows[index], id.text());
                                }});
        }
    }

    void resolveReferences() {
        const Names names(import_.installation);
        for (const Pending& pending : pending_) {
            if (problems_.full()) return;
            if (const auto id = names.resolve(pending.kind, pending.text))
                pending.assign(*id);
            else
                problems_.add(pending.where, id.error());
        }
    }

    template <class Record>
    void readBytes(const json& object, const Place& place, Record& record) {
        AttachmentOrigin origin{textAt(object, "file", place), textAt(object, "data", place), record.digest,
                                record.mediaType};
        auto attachment = readAttachment(origin, RecordTraits<Record>::kind, reader_);
        if (!attachment) return problems_.add(place.text(), attachment.error());
        record.digest = attachment->digest;
        record.mediaType = attachment->mediaType;
        if (attachment->bytes.empty() || !digests_.insert(attachment->digest).second) return;
        import_.attachments.push_back(*std::move(attachment));
    }

    std::optional<std::string> textAt(const json& object, std::string_view key, const Place& place) {
        const auto value = object.find(key);
        if (value == object.end()) return std::nullopt;
        if (value->is_string()) return value->get<std::string>();
        problems_.add(place.at(key), "sitefile.wrong-kind", {Word{"sitefile.kind.text"}, kindOf(*value)});
        return std::nullopt;
    }

    const SiteSchema& schema_;
    IdSource& ids_;
    const AttachmentReader& reader_;
    SiteImport import_;
    Problems problems_;
    Rows rows_;
    std::vector<Pending> pending_;
    std::set<std::string> digests_; ///< of what was brought along
};

/// Whether the document says that it is a site file of a version that we read.
tl::expected<void, Problem> checkHeader(const json& document) {
    const auto refuse = [](std::string_view key) { return tl::unexpected(Problem{{}, {key, {}}}); };
    if (!document.is_object() || document.value("loopwright", json()) != "site")
        return refuse("sitefile.no-header");
    const json version = document.value("version", json());
    if (!version.is_number_integer()) return refuse("sitefile.no-version");
    if (version != 1)
        return tl::unexpected(Problem{{}, {"sitefile.other-version", {version.get<std::int64_t>()}}});
    return {};
}

} // namespace

tl::expected<SiteImport, std::vector<Problem>> importSite(std::string_view text, IdSource& ids,
                                                          const AttachmentReader& attachments) {
    const auto document = parseDocument(text);
    if (!document) return tl::unexpected(std::vector{document.error()});
    if (const auto header = checkHeader(*document); !header)
        return tl::unexpected(std::vector{header.error()});
    const SiteSchema schema;
    return Reading(schema, ids, attachments).read(*document);
}

} // namespace loopwright
