// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_site.h"

#include "core/reference/embedded.h"

#include <span>
#include <stdexcept>

extern "C" {
extern const loopwright::EmbeddedFile loopwright_demo_files[];
extern const loopwright::EmbeddedFile loopwright_demo_files_end[];
}

namespace loopwright {

SiteImport demoSite(IdSource& ids) {
    const std::span<const EmbeddedFile> files{loopwright_demo_files, loopwright_demo_files_end};
    auto import = importSite(embeddedFile(files, "oakum-row.site.json"), ids, [&](std::string_view path) {
        return tl::expected<std::string, Message>(embeddedFile(files, path));
    });
    if (!import) throw std::logic_error("The demo site is refused at " + import.error().front().where);
    return std::move(*import);
}

} // namespace loopwright
