// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/installation.h"
#include "core/phrases/message.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

/// The site file (`*.site.json`): one site with everything recorded about it, as text that another program or
/// a person can write. resources/schema/site.schema.json describes it.
namespace loopwright {

/// The largest site file that is read, in bytes. Whoever opens a file compares its size before reading it.
inline constexpr std::size_t siteFileSizeLimit = std::size_t{256} * 1024 * 1024;

/// Why a site file was refused: one thing that is not as it must be.
struct SiteFileProblem {
    std::string where; ///< "boards, 3rd, circuits, 2nd, wiring, lineSize_mm2"; empty: the file as a whole
    Message what;
    friend bool operator==(const SiteFileProblem&, const SiteFileProblem&) = default;
};

/// What a site file brought along beside its text: a picture or a log. `digest` is what Photo::digest and
/// CurrentLog::digest refer to.
struct Attachment {
    std::string digest;
    std::string mediaType; ///< "image/jpeg", "image/png" or "text/csv"
    std::string bytes;
    friend bool operator==(const Attachment&, const Attachment&) = default;
};

struct SiteImport {
    Installation installation;
    std::vector<Attachment> attachments; ///< each once
};

/// Gives the bytes of an attachment by its path from the site file's folder, or says why it cannot. The path
/// has been checked: it is relative and does not lead out of that folder.
using AttachmentReader = std::function<tl::expected<std::string, Message>(std::string_view path)>;
/// Gives the bytes of an attachment by its digest, or nothing where they are not at hand.
using AttachmentSource = std::function<std::optional<std::string>(std::string_view digest)>;

/// Reads a site file. Ids that it leaves out come from `ids`. Nothing is read in part: either the whole site,
/// or every problem that was found (at most a screenful) in the order of the file.
tl::expected<SiteImport, std::vector<SiteFileProblem>> importSite(std::string_view json, IdSource& ids,
                                                                  const AttachmentReader& attachments);

/// Writes a site file that importSite reads back to the same installation, with rows grouped by what they
/// belong to
/// (`groupedByOwner`). The same installation gives the same bytes. What `attachments` does not have is named
/// by its digest alone.
std::string exportSite(const Installation& installation, const AttachmentSource& attachments);

/// The installation with its circuits in the order of the boards, equipment in the order of the circuits, and
/// so on: the order in which a site file lists them. What a person sees does not depend on it.
Installation groupedByOwner(const Installation& installation);

} // namespace loopwright
