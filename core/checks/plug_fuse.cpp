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
/// decides.
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
        if (sheet.compare(Relation::AtMost, "I", drawn->each, Figure<Current>{*rated}, units::ampere)) {
            deciding = equipment;
            load = drawn->each;
            rating = *rated;
        }
    }
    static const std::string nobody;
    const std::string& name = deciding ? deciding->name : nobody;
    const Measure drawn = measure(load, units::ampere), rated = measure(rating, units::ampere);
    if (!sheet.isFull() || !deciding || sheet.verdict() != Verdict::Fails ||
        !needNeverOperate(context, *deciding, rating))
        return sheet.conclude(name, drawn, rated);
    sheet.phrase(Verdict::Fails, "check.plug-fuse.fails-carried");
    const Ratio times = load.value / rating;
    return sheet.conclude(name, drawn, rated, measure(times * times, units::ratio));
}

} // namespace loopwright
