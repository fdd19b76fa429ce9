// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/attachment.h"

#include "core/model/digest.h"
#include "core/overload/current_log.h"

#include <algorithm>

#include <sodium.h>

namespace loopwright::sitefile {
namespace {

constexpr int variant = sodium_base64_VARIANT_ORIGINAL;

/// By the first bytes of the file (ISO/IEC 10918-1 and ISO/IEC 15948).
tl::expected<std::string, Message> kindOfPicture(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xD8\xFF")) return "image/jpeg";
    if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return "image/png";
    return tl::unexpected(Message{"sitefile.picture-kind", {}});
}

tl::expected<std::string, Message> mediaTypeOf(RecordKind kind, std::string_view bytes) {
    if (kind != RecordKind::CurrentLog) return kindOfPicture(bytes);
    if (const auto log = overload::readCurrentLog(bytes); !log) return tl::unexpected(log.error());
    return std::string(overload::logMediaType);
}

bool staysInside(std::string_view path) {
    if (path.empty() || path.starts_with('/') || path.find_first_of("\\:") != std::string_view::npos)
        return false;
    for (std::size_t from = 0; from <= path.size();) {
        const std::size_t to = std::min(path.find('/', from), path.size());
        if (path.substr(from, to - from) == "..") return false;
        from = to + 1;
    }
    return true;
}

bool isDigest(std::string_view text) {
    const auto isDigit = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    return text.size() == 64 && std::ranges::all_of(text, isDigit);
}

tl::expected<std::string, Message> bytesOf(const AttachmentOrigin& origin, const AttachmentReader& reader) {
    if (origin.data) {
        if (auto bytes = decodedBase64(*origin.data)) return *std::move(bytes);
        return tl::unexpected(Message{"sitefile.not-base64", {}});
    }
    if (!staysInside(*origin.file))
        return tl::unexpected(Message{"sitefile.attachment-outside", {*origin.file}});
    return reader(*origin.file);
}

} // namespace

std::string encodedBase64(std::string_view bytes) {
    std::string text(sodium_base64_encoded_len(bytes.size(), variant), '\0');
    sodium_bin2base64(text.data(), text.size(), reinterpret_cast<const unsigned char*>(bytes.data()),
                      bytes.size(), variant);
    text.pop_back(); // the closing zero byte
    return text;
}

std::optional<std::string> decodedBase64(std::string_view text) {
    std::string bytes(text.size() / 4 * 3 + 3, '\0');
    std::size_t length = 0;
    if (sodium_base642bin(reinterpret_cast<unsigned char*>(bytes.data()), bytes.size(), text.data(),
                          text.size(), " \r\n", &length, nullptr, variant) != 0)
        return std::nullopt;
    bytes.resize(length);
    return bytes;
}

tl::expected<Attachment, Message> readAttachment(const AttachmentOrigin& origin, RecordKind kind,
                                                 const AttachmentReader& reader) {
    if (!origin.digest.empty() && !isDigest(origin.digest))
        return tl::unexpected(Message{"sitefile.not-a-digest", {}});
    if (origin.file && origin.data) return tl::unexpected(Message{"sitefile.attachment-twice", {}});
    if (!origin.file && !origin.data) {
        if (origin.digest.empty()) return tl::unexpected(Message{"sitefile.attachment-nowhere", {}});
        return Attachment{origin.digest, origin.mediaType, {}};
    }
    auto bytes = bytesOf(origin, reader);
    if (!bytes) return tl::unexpected(bytes.error());
    auto mediaType = mediaTypeOf(kind, *bytes);
    if (!mediaType) return tl::unexpected(mediaType.error());
    if (!origin.mediaType.empty() && origin.mediaType != *mediaType)
        return tl::unexpected(Message{"sitefile.picture-other-kind", {origin.mediaType, *mediaType}});
    std::string digest = digestOf(std::as_bytes(std::span(*bytes)));
    if (!origin.digest.empty() && origin.digest != digest)
        return tl::unexpected(Message{"sitefile.attachment-changed", {}});
    return Attachment{std::move(digest), *std::move(mediaType), *std::move(bytes)};
}

} // namespace loopwright::sitefile
