// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/digest.h"

#include <array>

#include <fmt/format.h>
#include <sodium.h>

namespace loopwright {

std::string digestOf(std::span<const std::byte> bytes) {
    std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
    crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    return fmt::format("{:02x}", fmt::join(hash, ""));
}

} // namespace loopwright
