// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/message.h"

#include <SQLiteCpp/Exception.h>

#include <filesystem>
#include <tl/expected.hpp>
#include <type_traits>

namespace loopwright {

/// What SQLite's refusal means to the person whose workbook lies at `path`.
Message messageFor(const SQLite::Exception& refusal, const std::filesystem::path& path);

/// A message about the workbook at `path`, which fills the first place.
Message about(std::string_view key, const std::filesystem::path& path);

/// Does `work`, whose result is a tl::expected, and turns what SQLite throws into its message.
template <class Work>
std::invoke_result_t<Work> guarded(const std::filesystem::path& path, Work&& work) {
    try {
        return work();
    } catch (const SQLite::Exception& refusal) {
        return tl::unexpected(messageFor(refusal, path));
    }
}

} // namespace loopwright
