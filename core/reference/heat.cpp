// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>
#include <cmath>

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

namespace {

/// The limits of a device, as those of one that carries 1 A, without what rounding did to them.
physics::ThermalLimits perAmpere(physics::ThermalLimits limits) {
    const Current carries = limits.carries;
    const auto divide = [carries](Current& current) {
        constexpr double steps = 1e9; // of the multiple
        current = amperes(std::round(current / carries * steps) / steps);
    };
    for (auto* list : {&limits.notBefore, &limits.operatedBy})
        for (physics::TimeCurrent& limit : *list)
            divide(limit.current);
    if (limits.warm) {
        divide(limits.warm->before.current);
        divide(limits.warm->operatedBy.current);
    }
    limits.carries = amperes(1);
    return limits;
}

/// Equal for equal limits.
std::vector<double> figuresOf(const physics::ThermalLimits& limits) {
    std::vector<double> figures;
    const auto add = [&](const physics::TimeCurrent& limit) {
        figures.push_back(limit.current.base());
        figures.push_back(limit.time.base());
    };
    for (const auto* list : {&limits.notBefore, &limits.operatedBy}) {
        figures.push_back(static_cast<double>(list->size()));
        std::ranges::for_each(*list, add);
    }
    if (limits.warm) {
        add(limits.warm->before);
        add(limits.warm->operatedBy);
    }
    return figures;
}

physics::ReplicaSet scaled(physics::ReplicaSet set, Ratio factor) {
    for (auto* replicas : {&set.early, &set.late})
        for (physics::ThermalReplica& replica : *replicas)
            replica.reference = replica.reference * factor;
    return set;
}

physics::ReplicaSet replicasOf(KnownThermalDevices& known, const physics::ThermalLimits& limits) {
    const physics::ThermalLimits each = perAmpere(limits);
    const auto [at, isNew] = known.ofOneAmpere.try_emplace(figuresOf(each));
    if (isNew) at->second = physics::conformingReplicas(each, physics::Elements::Two);
    return scaled(at->second, limits.carries.base());
}

} // namespace

const ThermalDevice* ReferenceTables::thermalDevice(const DeviceFamily& family, Current rated,
                                                    std::optional<Time> delay,
                                                    std::optional<Current> frame) const {
    // Plug fuses of every rating are held to the same multiples, though zones are printed of two only.
    const bool isPlugFuse = family.kind == DeviceKind::PlugFuse && conventionalCurrents(family, rated);
    if (!family.adjustable && !isPlugFuse && !isRating(family, rated)) return nullptr;
    KnownThermalDevices& known = tables_->thermalDevices;
    const std::lock_guard lock(known.mutex);
    const Current listed = frame.value_or(rated);
    auto& device = known.devices[{family.key, rated.base(), delay ? delay->base() : 0, listed.base()}];
    if (!device) {
        auto [limits, source] = thermalLimits(family, rated, delay, listed);
        auto replicas = replicasOf(known, limits);
        device = std::make_unique<const ThermalDevice>(
            ThermalDevice{std::move(limits), physics::Elements::Two, std::move(replicas), std::move(source)});
    }
    return device.get();
}

} // namespace loopwright
