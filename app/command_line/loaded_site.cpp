// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/loaded_site.h"

#include "app/files/files.h"
#include "db/workbook.h"

#include <QCoreApplication>
#include <QStringList>

#include <array>
#include <fstream>
#include <memory>

namespace loopwright {
namespace {

QString sentence(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

/// How every SQLite file begins (https://www.sqlite.org/fileformat.html, section 1.3).
constexpr std::string_view sqliteHeader{"SQLite format 3\0", 16};

/// Whether a text begins as JSON does, in UTF-8 or in another encoding, which is refused by its own name. An
/// empty one is refused as such.
bool mayBeJson(std::string_view bytes) {
    constexpr std::array<std::string_view, 3> byteOrderMarks{"\xEF\xBB\xBF", "\xFF\xFE", "\xFE\xFF"};
    for (const std::string_view mark : byteOrderMarks)
        if (bytes.starts_with(mark)) return true;
    const auto first = bytes.find_first_not_of(" \t\r\n");
    return first == std::string_view::npos || bytes[first] == '{' || bytes[first] == '[';
}

QString namesOf(const auto& rows, auto&& name) {
    QStringList names;
    for (const auto& row : rows)
        names << '"' + text(name(row)) + '"';
    return names.join(", ");
}

tl::expected<Id, QString> chosenSite(const std::vector<SiteEntry>& sites, const std::string& wanted,
                                     const std::filesystem::path& file) {
    if (sites.empty())
        return tl::unexpected(sentence("%1 holds no site yet. Import one first.").arg(shown(file)));
    if (wanted.empty() && sites.size() == 1) return sites.front().id;
    for (const SiteEntry& site : sites)
        if (site.name == wanted || site.id.text() == wanted) return site.id;
    const QString known = namesOf(sites, [](const SiteEntry& site) { return site.name; });
    return tl::unexpected(
        wanted.empty()
            ? sentence("%1 holds several sites. Choose one with --site: %2.").arg(shown(file), known)
            : sentence("%1 has no site called \"%2\". It has %3.").arg(shown(file), text(wanted), known));
}

tl::expected<std::pair<Installation, AttachmentSource>, QString>
readWorkbook(const CommandSurroundings& surroundings, const std::filesystem::path& file,
             const std::string& wanted) {
    const auto inWords = [&](const Message& message) { return surroundings.words.sentence(message); };
    auto opened = Workbook::open(file, {{surroundings.author}, surroundings.clock, surroundings.ids});
    if (!opened) return tl::unexpected(inWords(opened.error()));
    const auto workbook = std::make_shared<Workbook>(std::move(*opened));
    const auto sites = workbook->sites();
    if (!sites) return tl::unexpected(inWords(sites.error()));
    const auto id = chosenSite(*sites, wanted, file);
    if (!id) return tl::unexpected(id.error());
    auto installation = workbook->load(*id);
    if (!installation) return tl::unexpected(inWords(installation.error()));
    AttachmentSource attachments = [workbook](std::string_view digest) -> std::optional<std::string> {
        const auto kept = workbook->attachment(digest);
        if (!kept) return std::nullopt;
        return std::string(reinterpret_cast<const char*>(kept->bytes.data()), kept->bytes.size());
    };
    return std::pair(std::move(*installation), std::move(attachments));
}

tl::expected<const Visit*, QString> chosenVisit(const Installation& installation, const std::string& wanted) {
    const auto& visits = installation.visits;
    if (visits.empty())
        return tl::unexpected(
            sentence("%1 has no visit, so there is nothing to judge.").arg(text(installation.site.name)));
    if (wanted.empty()) return &visits.back();
    for (const Visit& visit : visits)
        if (visit.label == wanted || visit.id.text() == wanted) return &visit;
    return tl::unexpected(
        sentence("There is no visit called \"%1\". There is %2.")
            .arg(text(wanted), namesOf(visits, [](const Visit& visit) { return visit.label; })));
}

} // namespace

bool looksLikeWorkbook(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    std::string begin(sqliteHeader.size(), '\0');
    stream.read(begin.data(), static_cast<std::streamsize>(begin.size()));
    return stream && begin == sqliteHeader;
}

tl::expected<SiteImport, QString> readSiteFile(const CommandSurroundings& surroundings,
                                               const std::filesystem::path& file) {
    if (looksLikeWorkbook(file))
        return tl::unexpected(
            sentence("%1 is a workbook. Take a site file from it with export, then import that.")
                .arg(shown(file)));
    const auto bytes = readFile(file, siteFileSizeLimit);
    if (!bytes) return tl::unexpected(bytes.error());
    if (!mayBeJson(*bytes))
        return tl::unexpected(
            sentence("%1 is neither a workbook nor a site file: a site file is text and begins with {.")
                .arg(shown(file)));
    const std::filesystem::path folder = file.parent_path();
    auto import = importSite(
        *bytes, surroundings.ids, [&](std::string_view path) -> tl::expected<std::string, Message> {
            auto picture = readFile(folder / path, siteFileSizeLimit);
            if (!picture)
                return tl::unexpected(Message{"sitefile.attachment-unreadable", {utf8(picture.error())}});
            return std::move(*picture);
        });
    if (import) return std::move(*import);
    QStringList lines{sentence("%1 is not taken in:").arg(shown(file))};
    for (const SiteFileProblem& problem : import.error()) {
        const QString what = surroundings.words.sentence(problem.what);
        lines << (problem.where.empty() ? "  " + what : "  " + text(problem.where) + ": " + what);
    }
    return tl::unexpected(lines.join('\n'));
}

tl::expected<std::pair<Installation, AttachmentSource>, QString>
readSite(const CommandSurroundings& surroundings, const std::filesystem::path& file,
         const std::string& site) {
    if (looksLikeWorkbook(file)) return readWorkbook(surroundings, file, site);
    auto import = readSiteFile(surroundings, file);
    if (!import) return tl::unexpected(import.error());
    auto brought = std::make_shared<std::vector<Attachment>>(std::move(import->attachments));
    AttachmentSource attachments = [brought](std::string_view digest) -> std::optional<std::string> {
        for (const Attachment& each : *brought)
            if (each.digest == digest) return each.bytes;
        return std::nullopt;
    };
    return std::pair(std::move(import->installation), std::move(attachments));
}

tl::expected<LoadedSite, QString> loadSite(const CommandSurroundings& surroundings,
                                           const std::filesystem::path& file, const std::string& site,
                                           const std::string& visit) {
    auto read = readSite(surroundings, file, site);
    if (!read) return tl::unexpected(read.error());
    LoadedSite loaded{std::move(read->first), std::move(read->second), nullptr, {}};
    const auto chosen = chosenVisit(loaded.installation, visit);
    if (!chosen) return tl::unexpected(chosen.error());
    loaded.rules = &ruleSetFor(surroundings.knowledge.ruleSets, (*chosen)->ruleSet);
    loaded.assessment =
        assess(loaded.installation, (*chosen)->id, surroundings.knowledge.tables, *loaded.rules);
    return loaded;
}

} // namespace loopwright
