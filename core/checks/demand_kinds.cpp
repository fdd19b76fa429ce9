// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/demand_kinds.h"

#include <algorithm>

namespace loopwright {
namespace {

constexpr std::size_t inFull = 0;

consteval std::size_t kindCalled(std::string_view key) {
    for (std::size_t kind = 0; kind < loadKinds.size(); ++kind)
        if (loadKinds[kind].key == key) return kind;
    throw "no allowance is called so";
}

/// The column of the published allowances; empty where nobody says what the premises are.
std::string_view premisesOf(Occupancy occupancy) {
    switch (occupancy) {
    case Occupancy::Dwelling:
        return "household";
    case Occupancy::SmallBusiness:
        return "shop-or-office";
    case Occupancy::Lodging:
        return "hotel-or-guest-house";
    case Occupancy::Unknown:
        return {};
    }
    return {};
}

} // namespace

std::size_t loadKindOf(EquipmentKind equipment) {
    switch (equipment) {
    case EquipmentKind::Lighting:
        return kindCalled("lighting");
    // From memory: the table's row for heating and power excepts by name what has rows of its own further
    // down: water heaters, floor warming, thermal storage. Direct heating has none, so that it stays here;
    // its thermostats do not all call at once, while storage heaters are all switched on together.
    case EquipmentKind::General:
    case EquipmentKind::SpaceHeating:
        return kindCalled("heating-and-power");
    case EquipmentKind::SocketFed:
        return kindCalled("sockets-and-stationary-equipment");
    case EquipmentKind::Cooker:
    case EquipmentKind::InductionHob:
        return kindCalled("cooking-appliances");
    case EquipmentKind::InstantaneousHeater:
        return kindCalled("instantaneous-water-heaters");
    case EquipmentKind::StoredHeater:
        return kindCalled("thermostatic-water-heaters");
    case EquipmentKind::StorageHeating:
        return kindCalled("thermal-storage-heating");
    case EquipmentKind::FloorHeating:
        return kindCalled("floor-warming");
    case EquipmentKind::Motor:
    case EquipmentKind::Drive:
        return kindCalled("motors-other-than-lifts");
    case EquipmentKind::EvCharging:
    case EquipmentKind::PvInverter:
    case EquipmentKind::Unknown:
        return inFull;
    }
    return inFull;
}

std::size_t loadKindOf(const CircuitRecords& records) {
    if (records.reading && records.reading->measuredLoad.hasFigure()) return inFull;
    switch (records.circuit.use) {
    case CircuitUse::Lighting:
        return kindCalled("lighting");
    case CircuitUse::Sockets:
        return records.circuit.topology == Topology::Ring ? kindCalled("standard-final-circuits")
                                                          : kindCalled("sockets-and-stationary-equipment");
    case CircuitUse::Fixed:
        break;
    case CircuitUse::Distribution:
    case CircuitUse::Spare:
        return inFull;
    }
    if (records.equipment.empty()) return inFull;
    const std::size_t kind = loadKindOf(records.equipment.front()->kind);
    const bool areAlike = std::ranges::all_of(
        records.equipment, [&](const Equipment* equipment) { return loadKindOf(equipment->kind) == kind; });
    return areAlike ? kind : inFull;
}

std::optional<Sourced<physics::Allowance>> publishedAllowance(const VisitContext& visit, std::size_t kind) {
    return visit.tables.allowance(premisesOf(visit.installation.site.occupancy), loadKinds[kind].key);
}

} // namespace loopwright
