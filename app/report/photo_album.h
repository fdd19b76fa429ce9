// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report_input.h"

#include <QImage>
#include <QSizeF>

#include <map>

namespace loopwright::report {

/// Photos as they are printed: turned upright and no finer than paper shows.
class PhotoAlbum {
  public:
    explicit PhotoAlbum(AttachmentSource source)
      : source_(std::move(source)) {}

    /// To be shown within `place` (hundredths of a millimetre). A null picture when the workbook does not
    /// hold it or it cannot be read.
    QImage picture(const std::string& digest, const QSizeF& place) const;

  private:
    AttachmentSource source_;
    mutable std::map<std::string, QImage>
        pictures_; // a cache: content-addressed, so a digest stays the same picture
};

} // namespace loopwright::report
