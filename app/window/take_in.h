// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/open_book.h"
#include "core/sitefile/site_file.h"
#include "forms/words/words.h"

#include <QString>

namespace loopwright {

/// Reads a site file with the pictures that lie beside it. The refusal is what a person reads: the first
/// thing that is not as it must be, and how many more there are.
tl::expected<SiteImport, QString> readSiteFile(const QString& path, IdSource& ids, const Words& words);

/// Keeps a site that was read, its pictures first, and shows it.
tl::expected<void, Message> keep(OpenBook& book, const SiteImport& site);

/// Keeps a picture file with an observation.
tl::expected<void, Message> keepPicture(OpenBook& book, const QString& file, Id observation, IdSource& ids);

/// Keeps the file of a log with the circuit's readings in the visit that is shown; makes them where there are
/// none. What cannot be read as a log is refused and not kept.
tl::expected<void, Message> keepLog(OpenBook& book, const QString& file, Id circuit, IdSource& ids);

} // namespace loopwright
