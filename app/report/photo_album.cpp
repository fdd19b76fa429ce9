// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/photo_album.h"

#include "app/report/ink.h"

#include <QBuffer>
#include <QImageReader>

namespace loopwright::report {
namespace {

constexpr double dotsPerInch = 250;
constexpr double millimetresPerInch = 25.4;

QImage read(QByteArray bytes, const QSizeF& place) {
    QBuffer buffer(&bytes);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    const QSize most = (place / mm * dotsPerInch / millimetresPerInch).toSize();
    // Turned pictures are read in their own direction, so neither side may be the limit before they are
    // upright.
    const int longest = std::max(most.width(), most.height());
    if (const QSize size = reader.size();
        size.isValid() && (size.width() > longest || size.height() > longest))
        reader.setScaledSize(size.scaled(longest, longest, Qt::KeepAspectRatio));
    QImage picture = reader.read();
    if (picture.width() > most.width() || picture.height() > most.height())
        picture = picture.scaled(most, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    return picture;
}

} // namespace

QImage PhotoAlbum::picture(const std::string& digest, const QSizeF& place) const {
    if (const auto found = pictures_.find(digest); found != pictures_.end()) return found->second;
    const std::optional<std::string> bytes = source_ ? source_(digest) : std::nullopt;
    return pictures_[digest] = bytes ? read(QByteArray::fromStdString(*bytes), place) : QImage();
}

} // namespace loopwright::report
