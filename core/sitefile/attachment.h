// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"
#include "core/sitefile/site_file.h"

#include <type_traits>

namespace loopwright::sitefile {

/// Where a photo or a log of the file says that its bytes are; empty where it does not say so.
struct AttachmentOrigin {
    std::optional<std::string> file;
    std::optional<std::string> data; ///< base64
    std::string digest;
    std::string mediaType;
};

/// Whether records of this kind have bytes beside the text.
template <class Record>
inline constexpr bool hasAttachment = std::is_same_v<Record, Photo> || std::is_same_v<Record, CurrentLog>;

/// The attachment with digest and media type worked out; without bytes when the digest is all that is known.
/// Refuses as a photo what is neither JPEG nor PNG, as a current log what cannot be read as one, a path that
/// leads out of the file's folder, and bytes that are not what the digest says.
tl::expected<Attachment, Message> readAttachment(const AttachmentOrigin& origin, RecordKind kind,
                                                 const AttachmentReader& reader);

/// Base64 of RFC 4648 with padding.
std::string encodedBase64(std::string_view bytes);
std::optional<std::string> decodedBase64(std::string_view text);

} // namespace loopwright::sitefile
