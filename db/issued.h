// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/id.h"
#include "core/phrases/message.h"

#include <SQLiteCpp/Database.h>

#include <cstddef>
#include <span>
#include <string>
#include <vector>

/// An issued visit never changes. Whether a change touches one is asked of its changeset, which holds
/// whatever the change has led to, belongings that went with a removed record included.
namespace loopwright {

struct IssuedVisit {
    Id id;
    std::string label;
};

std::vector<IssuedVisit> issuedVisits(SQLite::Database& database);

/// The issued visit, if any, of which the changeset touches the visit itself or something recorded in it. The
/// changeset has been carried out already; `issued` was asked before. With `mayGoWhole` a visit that is
/// removed with everything in it is not counted: so goes a visit that came in issued, when its coming in is
/// taken back.
const IssuedVisit* issuedVisitTouched(SQLite::Database& database, std::span<const IssuedVisit> issued,
                                      std::span<const std::byte> changeset, bool mayGoWhole);

} // namespace loopwright
