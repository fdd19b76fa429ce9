// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/take_in.h"

#include "core/overload/current_log.h"
#include "forms/frame/change_label.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TakeIn", text);
}

std::optional<std::string> bytesOf(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
    return file.readAll().toStdString();
}

QString problemText(const SiteFileProblem& problem, const Words& words) {
    const QString what = words.sentence(problem.what);
    return problem.where.empty() ? what : text(problem.where) + QStringLiteral(": ") + what;
}

} // namespace

tl::expected<SiteImport, QString> readSiteFile(const QString& path, IdSource& ids, const Words& words) {
    const QFileInfo info(path);
    if (info.size() > static_cast<qint64>(siteFileSizeLimit))
        return tl::unexpected(tr("%1 is too large for a site file.").arg(info.fileName()));
    const auto json = bytesOf(path);
    if (!json)
        return tl::unexpected(
            tr("%1 cannot be read. Check that it is there and that you may read it.").arg(path));
    const AttachmentReader attachments =
        [folder = info.dir()](std::string_view name) -> tl::expected<std::string, Message> {
        if (auto bytes = bytesOf(folder.filePath(text(name)))) return std::move(*bytes);
        return tl::unexpected(Message{"sitefile.attachment-cannot-read", {std::string(name)}});
    };
    auto site = importSite(*json, ids, attachments);
    if (site) return std::move(*site);
    const auto& problems = site.error();
    const QString first = problems.empty() ? QString() : problemText(problems.front(), words);
    const auto others = static_cast<std::int64_t>(problems.size()) - 1;
    if (others <= 0) return tl::unexpected(first);
    return tl::unexpected(others == 1 ? tr("%1 And one more.").arg(first)
                                      : tr("%1 And %2 more.").arg(first, words.number(others)));
}

tl::expected<void, Message> keep(OpenBook& book, const SiteImport& site) {
    for (const Attachment& each : site.attachments) {
        const auto kept = book.keepAttachment(std::as_bytes(std::span(each.bytes)), each.mediaType);
        if (!kept) return tl::unexpected(kept.error());
    }
    return book.add(site.installation, addedLabel(site.installation.site.name));
}

tl::expected<void, Message> keepPicture(OpenBook& book, const QString& file, Id observation, IdSource& ids) {
    const auto bytes = bytesOf(file);
    if (!bytes) return tl::unexpected(Message{"sitefile.attachment-cannot-read", {utf8(file)}});
    const bool isPng = file.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive);
    const std::string mediaType = isPng ? "image/png" : "image/jpeg";
    const auto digest = book.keepAttachment(std::as_bytes(std::span(*bytes)), mediaType);
    if (!digest) return tl::unexpected(digest.error());
    const Photo photo{ids.next(), observation, *digest, mediaType, {}};
    return book.carryOut({addedLabel(utf8(QFileInfo(file).fileName())), {insertRecord(photo)}});
}

tl::expected<void, Message> keepLog(OpenBook& book, const QString& file, Id circuit, IdSource& ids) {
    const QFileInfo info(file);
    if (info.size() > static_cast<qint64>(overload::largestLog))
        return tl::unexpected(Message{"log.too-large", {}});
    const auto bytes = bytesOf(file);
    if (!bytes) return tl::unexpected(Message{"sitefile.attachment-cannot-read", {utf8(file)}});
    if (const auto read = overload::readCurrentLog(*bytes); !read) return tl::unexpected(read.error());
    const std::string mediaType(overload::logMediaType);
    const auto digest = book.keepAttachment(std::as_bytes(std::span(*bytes)), mediaType);
    if (!digest) return tl::unexpected(digest.error());

    const SiteView& view = *book.view();
    Change change{addedLabel(utf8(info.fileName())), {}};
    CircuitReading fresh{.id = {}, .visit = view.visit, .circuit = circuit};
    const CircuitReading* reading =
        findReading(view.installation.circuitReadings, view.visit, &CircuitReading::circuit, circuit);
    if (!reading) {
        fresh.id = ids.next();
        change.edits.push_back(insertRecord(fresh));
        reading = &fresh;
    }
    const CurrentLog log{ids.next(), reading->id, utf8(info.completeBaseName()), {}, *digest, mediaType, {}};
    change.edits.push_back(insertRecord(log));
    return book.carryOut(change);
}

} // namespace loopwright
