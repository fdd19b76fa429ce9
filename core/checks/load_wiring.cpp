// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/load_current.h"

namespace loopwright {

/// I_b ≤ I_z (IEC 60364-4-43, 433.1, condition 1); for a ring the share of one leg.
Finding checkLoadWiring(const CircuitContext& context) {
    Worksheet sheet(phrasing<"load-wiring">, context, {RecordKind::Circuit, context.circuit.id});
    const bool isRing = context.circuit.topology == Topology::Ring;
    sheet.formula(isRing ? "c I_b ≤ I_z" : "I_b ≤ I_z");
    sheet.clause(isRing ? "ring" : "overload");
    const auto load = loadCurrent(context, context, sheet);
    const auto capacity = wiringCapacity(context, context, sheet);
    if (!load || !capacity) return sheet.conclude();

    const Ratio share = legShare(context.rules, context.circuit);
    Figure<Current> carried = *load;
    if (isRing) {
        carried = rising(load->value * share, *load);
        sheet.show([&] {
            return ruleTerm("c", share, units::ratio, context.rules.sourceOf("ringLeastCapacity_A"),
                            {"check.note.ring-share", {}});
        });
    }
    sheet.compare(Relation::AtMost, isRing ? "c I_b" : "I_b", carried, Figure<Current>{*capacity},
                  units::ampere);
    if (auto doubt = doubtLoad(context, context, share, *capacity, sheet)) return std::move(*doubt);
    return sheet.conclude(measure(carried, units::ampere), measure(*capacity, units::ampere));
}

} // namespace loopwright
