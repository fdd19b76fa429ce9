// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/checks/load_over_time.h"

namespace loopwright {
namespace {

/// A ring is fed from both ends, so its legs may be smaller than the device: I_n ≤ 32 A, S ≥ 2.5 mm2 and
/// I_z ≥ 20 A.
Finding ringAllowance(const CircuitContext& context, Current rated, Current capacity, Worksheet& sheet) {
    const RuleSet& rules = context.rules;
    sheet.formula("I_n ≤ I_r, I_z ≥ I_z,min");
    sheet.clause("ring");
    sheet.show([&] {
        return ruleTerm("I_r", rules.ringRatedCurrent, units::ampere, rules.sourceOf("ringRatedCurrent_A"));
    });
    sheet.show([&] {
        return ruleTerm("I_z,min", rules.ringLeastCapacity, units::ampere,
                        rules.sourceOf("ringLeastCapacity_A"));
    });
    if (rated > rules.ringRatedCurrent) {
        sheet.compareRatings(Relation::AtMost, "I_n", rated, rules.ringRatedCurrent, units::ampere);
        sheet.phrase(Verdict::Fails, "check.device-wiring.fails-ring-device");
        return sheet.conclude(deviceWord(context.family), measure(rated, units::ampere),
                              measure(rules.ringRatedCurrent, units::ampere));
    }
    const auto size = usable(context.circuit.wiring.lineSize);
    if (size && *size < rules.ringLeastSize) {
        sheet.show([&] {
            return ruleTerm("S_min", rules.ringLeastSize, units::squareMillimetre,
                            rules.sourceOf("ringLeastSize_mm2"));
        });
        sheet.compareRatings(Relation::AtLeast, "S", *size, rules.ringLeastSize, units::squareMillimetre);
        sheet.phrase(Verdict::Fails, "check.device-wiring.fails-ring-size");
        return sheet.conclude(measure(*size, units::squareMillimetre),
                              measure(rules.ringLeastSize, units::squareMillimetre));
    }
    sheet.compare(Relation::AtLeast, "I_z", Figure<Current>{capacity},
                  Figure<Current>{rules.ringLeastCapacity}, units::ampere);
    sheet.phrase(Verdict::Holds, "check.device-wiring.holds-ring");
    sheet.phrase(Verdict::Close, "check.device-wiring.close-ring");
    sheet.phrase(Verdict::Fails, "check.device-wiring.fails-ring");
    return sheet.conclude(measure(capacity, units::ampere), measure(rules.ringLeastCapacity, units::ampere));
}

} // namespace

/// I_n ≤ I_z (IEC 60364-4-43, 433.1, condition 1); of an adjustable breaker I_n is the current that it is set
/// to (note 1 there).
Finding checkDeviceWiring(const CircuitContext& context) {
    Worksheet sheet(phrasing<"device-wiring">, context, {RecordKind::Circuit, context.circuit.id});
    const bool isRing = context.circuit.topology == Topology::Ring;
    const bool isLowered = !isRing && isLoweredForOverload(context, context.circuit);
    sheet.formula(isLowered ? "I_n ≤ C_c I_z" : "I_n ≤ I_z");
    sheet.clause("overload");
    const auto rated = overloadRating(context, sheet);
    const auto capacity =
        isRing ? wiringCapacity(context, context, sheet) : protectedCapacity(context, context, sheet);
    if (!rated || !capacity) return sheet.conclude();
    if (isRing) return ringAllowance(context, *rated, *capacity, sheet);

    if (isLowered) {
        sheet.phrase(Verdict::Holds, "check.device-wiring.holds-buried");
        sheet.phrase(Verdict::Close, "check.device-wiring.close-buried");
        sheet.phrase(Verdict::Fails, "check.device-wiring.fails-buried");
    }
    sheet.compare(Relation::AtMost, "I_n", Figure<Current>{*rated}, Figure<Current>{*capacity},
                  units::ampere);
    return sheet.conclude(deviceWord(context.family), measure(*rated, units::ampere),
                          measure(*capacity, units::ampere));
}

} // namespace loopwright
