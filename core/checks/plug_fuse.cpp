// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"

#include <algorithm>

namespace loopwright {
namespace {

bool hasPlugFuse(const Equipment* equipment) {
    return !equipment->plugFuse.isMissing() && equipment->plugFuse.state != EntryState::NotApplicable;
}

/// Whether it is known to run for hours: by its duty, or by what it is for where nobody recorded one.
bool isContinuous(const VisitContext& visit, const Equipment& equipment) {
    if (const auto on = usable(equipment.onTime))
        return *on >= hours(visit.tables.band(Band::ContinuousTime).value);
    switch (equipment.kind) {
    case EquipmentKind::StoredHeater:
    case EquipmentKind::SpaceHeating:
    case EquipmentKind::StorageHeating:
    case EquipmentKind::FloorHeating:
    case EquipmentKind::EvCharging:
        return true;
    default:
        return false;
    }
}

/// The share of the rating that is kept free before anything is remarked on.
Ratio keptFree(const VisitContext& visit, const Equipment& equipment, Worksheet& sheet) {
    if (!isContinuous(visit, equipment)) return visit.rules.closeBand;
    const auto& share = visit.tables.band(Band::ContinuousShare);
    sheet.showAside([&] {
        return tableTerm("c", share.value, units::percent, share.source,
                         {"check.note.continuous-share", {equipment.name}});
    });
    return std::max(visit.rules.closeBand, 1 - share.value);
}

/// Whether no sound fuse is sure to end what overloads it (BS 1362).
bool needNeverOperate(const CircuitContext& context, const Equipment& equipment, Current rated) {
    const DeviceFamily* family = context.tables.deviceFamily("1362");
    const auto load = loadAbove(rated, context, context.circuit, equipment);
    if (!family || !load) return false;
    const auto question = overloadQuestion(context, *family, {}, rated, load->load);
    return question && !overload::sureToOperate(*question).operates();
}

} // namespace

/// I ≤ I_n of the fuse in a plug or fused outlet, for each piece of equipment that has one; the worst
/// decides. What runs for hours is close to its limit sooner, because plug and outlet are then as hot as they
/// get.
Finding checkPlugFuse(const CircuitContext& context) {
    Worksheet sheet(phrasing<"plug-fuse">, context, {RecordKind::Circuit, context.circuit.id});
    if (std::ranges::none_of(context.equipment, hasPlugFuse))
        return sheet.doesNotApply("check.plug-fuse.none");
    sheet.formula("I ≤ I_n");
    sheet.clause("overload");

    const Equipment* deciding = nullptr;
    Figure<Current> load;
    Current rating;
    for (const Equipment* equipment : context.equipment) {
        if (!hasPlugFuse(equipment)) continue;
        const auto drawn = equipmentCurrent(context, context.circuit, *equipment, sheet);
        const auto rated = sheet.exact("I_n", *equipment, equipment->plugFuse, "plugFuse_A");
        if (!drawn || !rated) continue;
        sheet.show([&] {
            return computedTerm("I", drawn->each.value, units::ampere,
                                {"check.note.equipment", {equipment->name}});
        });
        if (sheet.compareWithin(keptFree(context, *equipment, sheet), Relation::AtMost, "I", drawn->each,
                                Figure<Current>{*rated}, units::ampere)) {
            deciding = equipment;
            load = drawn->each;
            rating = *rated;
        }
    }
    static const std::string nobody;
    const std::string& name = deciding ? deciding->name : nobody;
    const Measure drawn = measure(load, units::ampere), rated = measure(rating, units::ampere);
    if (deciding && isContinuous(context, *deciding))
        sheet.phrase(Verdict::Close, "check.plug-fuse.continuous");
    if (!sheet.isFull() || !deciding || sheet.verdict() != Verdict::Fails ||
        !needNeverOperate(context, *deciding, rating))
        return sheet.conclude(name, drawn, rated);
    sheet.phrase(Verdict::Fails, "check.plug-fuse.fails-carried");
    const Ratio times = load.value / rating;
    return sheet.conclude(name, drawn, rated, measure(times * times, units::ratio));
}

} // namespace loopwright
