// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/context.h"

#include <array>

/// Which published allowance goes with what.
namespace loopwright {

/// A kind of loads that the published allowances have a row for, or none: then all of it counts.
struct LoadKind {
    std::string_view key;    ///< its row of demand_allowances.csv; empty: counts in full
    std::string_view phrase; ///< how a reader calls it
};
inline constexpr std::array loadKinds{
    LoadKind{"", "check.word.in-full"},
    LoadKind{"lighting", "sum.load.lighting"},
    LoadKind{"heating-and-power", "sum.load.heating-and-power"},
    LoadKind{"cooking-appliances", "sum.load.cooking-appliances"},
    LoadKind{"motors-other-than-lifts", "sum.load.motors-other-than-lifts"},
    LoadKind{"instantaneous-water-heaters", "sum.load.instantaneous-water-heaters"},
    LoadKind{"thermostatic-water-heaters", "sum.load.thermostatic-water-heaters"},
    LoadKind{"floor-warming", "sum.load.floor-warming"},
    LoadKind{"thermal-storage-heating", "sum.load.thermal-storage-heating"},
    LoadKind{"standard-final-circuits", "sum.load.standard-final-circuits"},
    LoadKind{"sockets-and-stationary-equipment", "sum.load.sockets-and-stationary-equipment"},
};

/// The kind of a piece of equipment, as a place among loadKinds: our own reading of the table's headings.
/// What has no heading, or is not known, counts in full.
std::size_t loadKindOf(EquipmentKind equipment);

/// The kind of a circuit, which counts as one load. A circuit of unlike equipment counts in full, and so does
/// what was measured: not everything ran at once, and an allowance would take that off twice.
std::size_t loadKindOf(const CircuitRecords& circuit);

/// The allowance for a kind in the site's premises; nothing where none is published, or nobody says what the
/// premises are.
std::optional<Sourced<physics::Allowance>> publishedAllowance(const VisitContext& visit, std::size_t kind);

} // namespace loopwright
