// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"

namespace loopwright {
namespace {

/// The earliest sound device operates: when, and from which load on.
struct Early {
    overload::Edge edge;
    bool isTimed = false;
    Current from;
};

std::string_view phraseFor(const Early& early) {
    constexpr Time atOnce = seconds(1);
    return early.isTimed && early.edge.after >= atOnce ? "check.early-operation.close"
                                                       : "check.early-operation.at-once";
}

} // namespace

/// Whether a sound device may operate in normal use: the load against the current at which the earliest that
/// its standard allows operates in the same runs. Below its rating every sound device carries the load.
Finding checkEarlyOperation(const CircuitContext& context) {
    Worksheet sheet(phrasing<"early-operation">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_b ≤ I_may");
    sheet.clause("overload");
    const auto current = loadCurrent(context, context, sheet);
    const auto rated = overloadRating(context, sheet);
    if (!current || !rated) return sheet.conclude();
    const Measure shown = measure(*current, units::ampere);
    if (current->value <= *rated) {
        sheet.compareTolerance(Relation::AtMost, "I_b", *current, Figure<Current>{*rated}, units::ampere);
        return sheet.conclude(shown, deviceWord(context.family), measure(*rated, units::ampere));
    }
    const DeviceFamily* family = deviceFamily(context, sheet);
    if (!family) return sheet.conclude();
    const LoadOverTime load = loadOverTime(context, context, *current, sheet);
    const auto question = overloadQuestion(context, *family, context.circuit.device, *rated, load.load);
    if (!question) {
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return sheet.conclude();
    }
    const Current from = overload::mayOperateAt(*question);
    sheet.show([&] { return computedTerm("I_may", from, units::ampere, {"check.note.may-operate-at", {}}); });
    sheet.source(question->device.source);
    sheet.compareTolerance(Relation::AtMost, "I_b", *current, Figure<Current>{from}, units::ampere);
    if (sheet.verdict() == Verdict::Fails) sheet.atWorst(Verdict::Close);
    sheet.phrase(Verdict::Holds, "check.early-operation.holds-in-runs");
    if (!sheet.isFull() || sheet.verdict() != Verdict::Close)
        return sheet.conclude(shown, deviceWord(family), measure(*rated, units::ampere));
    const overload::HiddenOverload answer = overload::answer(*question);
    const Early early{answer.earliest, answer.holdsOut, from};
    const std::string_view phrase = phraseFor(early);
    return sheet.concludeWith([&] {
        std::vector<Argument> said{shown, measure(*rated, units::ampere), deviceWord(family),
                                   measure(early.from, units::ampere)};
        if (phrase.ends_with("close")) said.push_back(noLessThan(early.edge.after));
        return Message{phrase, std::move(said)};
    });
}

} // namespace loopwright
