// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"
#include "core/checks/surroundings.h"
#include "core/physics/overload.h"

namespace loopwright {
namespace {

/// What an overload means for a device: it is sure to operate, may be carried for ever, or neither is sure.
struct OverloadPhrases {
    std::string_view sure;
    std::string_view carried;
    std::string_view unsure;
    std::string_view note; ///< beside its conventional currents
};
constexpr OverloadPhrases asRated{"check.load-device.fails", "check.load-device.fails-carried",
                                  "check.load-device.fails-unsure", ""};
/// Warmth makes it operate sooner: what is sure where it was calibrated is sure here, and nothing else is.
constexpr OverloadPhrases inWarmth{"check.load-device.fails-warm", "check.load-device.fails-warm-unsure",
                                   "check.load-device.fails-warm-unsure", "check.note.where-calibrated"};

/// Which of them it is for an overload of this size; a device need not operate just above its rating.
std::string_view overloadPhrase(const CircuitContext& context, Current load, Current rated,
                                const OverloadPhrases& phrases, Worksheet& sheet) {
    if (!context.family) return phrases.sure;
    const auto currents = context.tables.conventionalCurrents(*context.family, rated);
    if (!currents) return phrases.sure;
    const auto show = [&](std::string_view symbol, Current current) {
        sheet.show([&] {
            return tableTerm(symbol, current, units::ampere, currents->source, {phrases.note, {}});
        });
    };
    const Current operating = rated * currents->operatingMultiple;
    const auto nonOperating = currents->nonOperatingMultiple;
    show("I_2", operating);
    if (nonOperating) show("I_nf", rated * *nonOperating);
    if (nonOperating && load <= rated * *nonOperating) return phrases.carried;
    const auto cold = shareInCold(context.tables, context.board, context.family);
    return cold && load >= operating * *cold ? phrases.sure : phrases.unsure;
}

/// The finding where the board is, or may be, so warm that the device carries less than its rating there.
Finding concludeInWarmth(const CircuitContext& context, const Figure<Current>& load, Current rated,
                         Current carried, Worksheet& sheet) {
    sheet.formula("I_b ≤ C_a I_n");
    sheet.show([&] {
        return computedTerm("I_d", carried, units::ampere, {"check.note.carried-in-warmth", {}});
    });
    sheet.phrase(Verdict::Holds, "check.load-device.holds-warm");
    sheet.phrase(Verdict::Close, "check.load-device.close-warm");
    if (sheet.isFull() && sheet.verdict() == Verdict::Fails)
        sheet.phrase(Verdict::Fails, overloadPhrase(context, load.value, rated, inWarmth, sheet));
    const Entry<Temperature>& around = context.board.ambient;
    return sheet.conclude(measure(load, units::ampere), deviceWord(context.family),
                          measure(rated, units::ampere), measure(carried, units::ampere),
                          measure(around.value, units::celsius, around.decimals, boundOf(around.state)));
}

} // namespace

/// I_b ≤ I_n (IEC 60364-4-43, 433.1, condition 1); of an adjustable breaker I_n is the current that it is set
/// to (note 1 there). In a warm board a thermal-magnetic breaker is held to what it carries there, by the
/// tables of makers.
Finding checkLoadDevice(const CircuitContext& context) {
    Worksheet sheet(phrasing<"load-device">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_b ≤ I_n");
    sheet.clause("overload");
    const auto load = loadCurrent(context, context, sheet);
    const auto rated = overloadRating(context, sheet);
    if (!load || !rated) return sheet.conclude();

    const Figure<Ratio> share = shareUnder(context, load->value, *rated, sheet);
    const Current carried = physics::deratedCurrent(*rated, share.value, 1);
    sheet.compare(Relation::AtMost, "I_b", *load, Figure<Current>{carried, share.bound}, units::ampere);
    if (auto doubt = doubtLoad(context, context, 1, carried, sheet)) return std::move(*doubt);
    if (share.value < 1 || share.bound != Bound::Exact)
        return concludeInWarmth(context, *load, *rated, carried, sheet);
    if (sheet.isFull() && sheet.verdict() == Verdict::Fails)
        sheet.phrase(Verdict::Fails, overloadPhrase(context, load->value, *rated, asRated, sheet));
    return sheet.conclude(measure(*load, units::ampere), deviceWord(context.family),
                          measure(*rated, units::ampere));
}

} // namespace loopwright
