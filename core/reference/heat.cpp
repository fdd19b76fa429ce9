// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>

// What heat does: devices as replicas, the warmth that cables take up, the ageing of insulation.
namespace loopwright {

namespace {

Insulation insulationOf(const csv::Row& row) {
    for (const Insulation insulation : {Insulation::Pvc70, Insulation::Xlpe90})
        if (row.text("insulation") == choiceKey(insulation)) return insulation;
    row.complain("insulation", "no such insulation");
}

} // namespace

HeatTables HeatTables::read() {
    HeatTables tables;
    csv::read("conductor_heat.csv",
              std::array{"insulation", "size_mm2", "around_J_per_Km", "basis", "source"},
              [&](const csv::Row& row) {
                  tables.around.push_back({insulationOf(row),
                                           squareMillimetres(row.number("size_mm2")),
                                           {row.number("around_J_per_Km"), csv::sourceOf(row, "basis")}});
              });
    csv::read("insulation_life.csv",
              std::array{"insulation", "low_kJ_per_mol", "high_kJ_per_mol", "basis", "source"},
              [&](const csv::Row& row) {
                  constexpr double kilojoules = 1000;
                  tables.lives[static_cast<std::size_t>(insulationOf(row))] = {
                      {row.number("low_kJ_per_mol") * kilojoules, row.number("high_kJ_per_mol") * kilojoules},
                      csv::sourceOf(row, "basis")};
              });
    return tables;
}

std::optional<Sourced<double>> ReferenceTables::heatAroundConductor(Insulation insulation,
                                                                    CrossSection size) const {
    for (const auto& row : tables_->heat.around)
        if (row.insulation == insulation && row.size == size) return row.heat;
    return std::nullopt;
}

const Sourced<InsulationLife>& ReferenceTables::insulationLife(Insulation insulation) const {
    return tables_->heat.lives[static_cast<std::size_t>(insulation)];
}

const ThermalDevice* ReferenceTables::thermalDevice(const DeviceFamily& family, Current rated,
                                                    std::optional<Time> delay) const {
    if (!family.adjustable && !isRating(family, rated)) return nullptr;
    KnownThermalDevices& known = tables_->thermalDevices;
    const std::lock_guard lock(known.mutex);
    auto& device = known.devices[{family.key, rated.base(), delay ? delay->base() : 0}];
    if (!device) {
        const bool isBreaker = family.kind == DeviceKind::Breaker || family.kind == DeviceKind::Rcbo;
        const auto elements = isBreaker ? physics::Elements::One : physics::Elements::Two;
        auto [limits, source] = thermalLimits(family, rated, delay);
        auto replicas = physics::conformingReplicas(limits, elements);
        device = std::make_unique<const ThermalDevice>(
            ThermalDevice{std::move(limits), elements, std::move(replicas), std::move(source)});
    }
    return device.get();
}

} // namespace loopwright
