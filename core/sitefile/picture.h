// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/site_file.h"

namespace loopwright::sitefile {

/// Where a photo of the file says that its bytes are; empty where it does not say so.
struct PictureOrigin {
    std::optional<std::string> file;
    std::optional<std::string> data; ///< base64
    std::string digest;
    std::string mediaType;
};

/// The picture with digest and media type worked out; without bytes when the digest is all that is known.
/// Refuses what is neither JPEG nor PNG, a path that leads out of the file's folder, and bytes that are not
/// what the digest says.
tl::expected<SitePicture, Message> readPicture(const PictureOrigin& origin, const PhotoReader& reader);

/// Base64 of RFC 4648 with padding.
std::string encodedBase64(std::string_view bytes);
std::optional<std::string> decodedBase64(std::string_view text);

} // namespace loopwright::sitefile
