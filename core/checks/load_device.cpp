// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"

namespace loopwright {
namespace {

/// What an overload of this size means for the device, which need not operate just above its rating.
std::string_view overloadPhrase(const CircuitContext& context, Current load, Current rated,
                                Worksheet& sheet) {
    if (!context.family) return "check.load-device.fails";
    const auto currents = context.tables.conventionalCurrents(*context.family, rated);
    if (!currents) return "check.load-device.fails";
    const Current operating = rated * currents->operatingMultiple;
    const auto nonOperating = currents->nonOperatingMultiple;
    sheet.show([&] { return tableTerm("I_2", operating, units::ampere, currents->source); });
    if (nonOperating)
        sheet.show([&] { return tableTerm("I_nf", rated * *nonOperating, units::ampere, currents->source); });
    if (nonOperating && load <= rated * *nonOperating) return "check.load-device.fails-carried";
    return load < operating ? "check.load-device.fails-unsure" : "check.load-device.fails";
}

} // namespace

/// I_b ≤ I_n (IEC 60364-4-43, 433.1, condition 1); of an adjustable breaker I_n is the current that it is set
/// to (note 1 there).
Finding checkLoadDevice(const CircuitContext& context) {
    Worksheet sheet(phrasing<"load-device">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_b ≤ I_n");
    sheet.clause("overload");
    const auto load = loadCurrent(context, context, sheet);
    const auto rated = overloadRating(context, sheet);
    if (!load || !rated) return sheet.conclude();

    sheet.compare(Relation::AtMost, "I_b", *load, Figure<Current>{*rated}, units::ampere);
    if (auto doubt = doubtLoad(context, context, 1, *rated, sheet)) return std::move(*doubt);
    if (sheet.isFull() && sheet.verdict() == Verdict::Fails)
        sheet.phrase(Verdict::Fails, overloadPhrase(context, load->value, *rated, sheet));
    return sheet.conclude(measure(*load, units::ampere), deviceWord(context.family),
                          measure(*rated, units::ampere));
}

} // namespace loopwright
