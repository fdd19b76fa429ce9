// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/reference_tables.h"

#include "core/reference/tables.h"

namespace loopwright {

ReferenceTables ReferenceTables::builtIn() {
    return ReferenceTables(std::make_unique<Tables>());
}

ReferenceTables::ReferenceTables(std::unique_ptr<Tables> tables)
  : tables_(std::move(tables)) {}
ReferenceTables::ReferenceTables(ReferenceTables&&) noexcept = default;
ReferenceTables& ReferenceTables::operator=(ReferenceTables&&) noexcept = default;
ReferenceTables::~ReferenceTables() = default;

} // namespace loopwright
