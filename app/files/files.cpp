// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/files/files.h"

#include "forms/words/words.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

namespace loopwright {
namespace {

QString sentence(const char* source) {
    return QCoreApplication::translate("Files", source);
}

} // namespace

QString shown(const std::filesystem::path& path) {
    return text(path.string());
}

bool isSameFile(const std::filesystem::path& one, const std::filesystem::path& other) {
    std::error_code oneIsNotThere;
    return std::filesystem::equivalent(one, other, oneIsNotThere);
}

tl::expected<std::string, QString> readFile(const std::filesystem::path& path, std::size_t limit) {
    const QFileInfo info(shown(path));
    if (!info.exists())
        return tl::unexpected(sentence("%1 is not there. Check the name and the folder.").arg(shown(path)));
    if (!info.isFile()) return tl::unexpected(sentence("%1 is not a file.").arg(shown(path)));
    if (static_cast<std::size_t>(info.size()) > limit)
        return tl::unexpected(
            sentence(
                "%1 has %2 MB; at most %3 MB are read. A site file holds one site: check that this is one.")
                .arg(shown(path))
                .arg(static_cast<std::size_t>(info.size()) / bytesPerMegabyte)
                .arg(limit / bytesPerMegabyte));
    QFile file(shown(path));
    if (!file.open(QIODevice::ReadOnly))
        return tl::unexpected(sentence("%1 cannot be read: %2.").arg(shown(path), file.errorString()));
    const QByteArray bytes = file.readAll();
    if (file.error() != QFileDevice::NoError)
        return tl::unexpected(
            sentence("%1 cannot be read to its end: %2.").arg(shown(path), file.errorString()));
    return bytes.toStdString();
}

tl::expected<void, QString> writeFile(const std::filesystem::path& path, std::string_view bytes) {
    const QString name = shown(path);
    if (const QFileInfo there(name); there.exists() && !there.isFile())
        return tl::unexpected(
            sentence("%1 is not a file that can be written over. Choose a name for a file.").arg(name));
    QSaveFile file(name);
    const auto refusal = [&] {
        return tl::unexpected(
            file.error() == QFileDevice::ResourceError
                ? sentence("There is no room left on the disk for %1. Make room, then try again; nothing was "
                           "written.")
                      .arg(name)
                : sentence("%1 cannot be written: %2. Choose another folder, or allow writing there.")
                      .arg(name, file.errorString()));
    };
    // Unbuffered, so that a disk that fills up is noticed here and not in a buffer's last bytes.
    if (!file.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) return refusal();
    while (!bytes.empty()) {
        const qint64 written = file.write(bytes.data(), static_cast<qint64>(bytes.size()));
        if (written <= 0) return refusal();
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    if (!file.commit()) return refusal();
    return {};
}

} // namespace loopwright
