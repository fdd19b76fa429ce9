// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/prospective.h"

namespace loopwright {
namespace {

/// At the circuit's own device, where somebody read it there; otherwise the board's.
std::optional<Figure<Current>> prospective(const CircuitContext& context, Worksheet& sheet) {
    if (context.reading && context.reading->prospectiveFaultCurrent.hasFigure())
        return sheet.figure("I_pf", context.reading, &CircuitReading::prospectiveFaultCurrent,
                            "prospectiveFaultCurrent_kA");
    return prospectiveCurrent(context, sheet, "I_pf", usable(context.circuit.device.breakingCapacity));
}

/// What is marked on the device. Where nobody recorded it, the least of its family, which it may well exceed.
std::optional<Figure<Current>> capacity(const CircuitContext& context, Worksheet& sheet) {
    const Entry<Current>& marked = context.circuit.device.breakingCapacity;
    if (marked.isMissing() && context.family)
        if (const auto least = context.tables.leastBreakingCapacity(*context.family)) {
            sheet.show([&] {
                return assumedTerm("I_cn", least->value, units::kiloampere,
                                   {"check.note.least-of-family", {}}, least->source);
            });
            sheet.leansOn(context.circuit, "device.breakingCapacity_kA");
            return Figure<Current>{least->value, Bound::OrMore};
        }
    return sheet.figure("I_cn", context.circuit, marked, "device.breakingCapacity_kA");
}

/// The nearest fuse between the circuit's own device and the supply.
struct FuseUpstream {
    const Device* device = nullptr;
    const DeviceFamily* family = nullptr;
    bool isAtSupply = false;
};
std::optional<FuseUpstream> fuseUpstream(const CircuitContext& context) {
    for (const Feeder& feeder : context.feeders)
        if (feeder.family && isFuse(*feeder.family))
            return FuseUpstream{&feeder.circuit.device, feeder.family, false};
    if (!context.supply) return std::nullopt;
    const DeviceFamily* family = context.tables.deviceFamily(context.supply->fuse.family);
    if (!family || !isFuse(*family)) return std::nullopt;
    return FuseUpstream{&context.supply->fuse, family, true};
}

/// What device and supply fuse break together in a board that hangs on the supply itself and whose maker
/// declares that it may be used at this current.
std::optional<Sourced<Current>> backedUp(const CircuitContext& context, const FuseUpstream& fuse,
                                         const Figure<Current>& current) {
    const auto rated = usable(fuse.device->ratedCurrent), capacity = usable(fuse.device->breakingCapacity);
    const auto declared = usable(context.board.withstandCurrent);
    if (!fuse.isAtSupply || !context.feeders.empty() || !rated || !capacity || !declared) return std::nullopt;
    auto combined = context.tables.backedUpCapacity(*fuse.family, *rated, *capacity);
    if (!combined || current.value > combined->value || current.value > *declared) return std::nullopt;
    return combined;
}

/// A device that breaks too little alone. With a fuse before it the two may do together what it cannot, which
/// only a table of its maker says.
Finding breaksTooLittle(const CircuitContext& context, const Figure<Current>& current,
                        const Figure<Current>& limit, Worksheet& sheet) {
    const Word own = deviceWord(context.family);
    const auto fuse = fuseUpstream(context);
    const auto combined = fuse ? backedUp(context, *fuse, current) : std::nullopt;
    if (combined) {
        sheet.show([&] {
            return tableTerm("I_cc", combined->value, units::kiloampere, combined->source,
                             {"check.note.backed-up", {}});
        });
        sheet.compare(Relation::AtMost, "I_pf", current, Figure<Current>{combined->value}, units::kiloampere);
        sheet.decide(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.breaking-capacity.backed-up");
        return sheet.conclude(measure(current, units::kiloampere), own, measure(limit, units::kiloampere),
                              measure(combined->value, units::kiloampere));
    }
    sheet.compare(Relation::AtMost, "I_pf", current, limit, units::kiloampere);
    const auto rated = fuse ? usable(fuse->device->ratedCurrent) : std::nullopt;
    if (!rated)
        return sheet.conclude(measure(current, units::kiloampere), own, measure(limit, units::kiloampere));
    sheet.phrase(Verdict::Fails, "check.breaking-capacity.fails-behind-fuse");
    return sheet.conclude(measure(current, units::kiloampere), own, measure(limit, units::kiloampere),
                          measure(*rated, units::ampere));
}

} // namespace

/// I_pf ≤ I_cn, or what device and the fuse before it break together (IEC 60364-4-43, 434.5.1).
Finding checkBreakingCapacity(const CircuitContext& context) {
    Worksheet sheet(phrasing<"breaking-capacity">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_pf ≤ I_cn");
    sheet.clause("breaking-capacity");
    const auto current = prospective(context, sheet);
    const auto limit = capacity(context, sheet);
    if (!current || !limit) return sheet.conclude();
    if (current->value > limit->value) return breaksTooLittle(context, *current, *limit, sheet);
    sheet.compare(Relation::AtMost, "I_pf", *current, *limit, units::kiloampere);
    return sheet.conclude(measure(*current, units::kiloampere), deviceWord(context.family),
                          measure(*limit, units::kiloampere));
}

} // namespace loopwright
