// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"
#include "core/checks/surroundings.h"

namespace loopwright {
namespace {

/// What is said of the earliest sound device, which operates from the load `from` on, where its board leaves
/// it a share of its rating.
Message saidOf(const overload::HiddenOverload& answer, Current from, const Figure<Ratio>& share,
               const CircuitContext& context, std::vector<Argument> said) {
    constexpr Time atOnce = seconds(1);
    const Entry<Temperature>& around = context.board.ambient;
    const Measure place = measure(around.value, units::celsius, around.decimals, boundOf(around.state));
    if (share.bound == Bound::OrLess) {
        said.emplace_back(place);
        return {"check.early-operation.unsure-warm", std::move(said)};
    }
    const bool isTimed = answer.holdsOut && answer.earliest.after >= atOnce;
    said.emplace_back(measure(from, units::ampere));
    if (isTimed) said.emplace_back(noLessThan(answer.earliest.after));
    if (share.value < 1) {
        said.emplace_back(place);
        return {isTimed ? "check.early-operation.close-warm" : "check.early-operation.at-once-warm",
                std::move(said)};
    }
    return {isTimed ? "check.early-operation.close" : "check.early-operation.at-once", std::move(said)};
}

} // namespace

/// Whether a sound device may operate in normal use: the load against the current at which the earliest that
/// its standard allows operates in the same runs. Below its rating every sound device carries the load; of a
/// breaker in a warm board that is what it carries there, by the tables of makers.
Finding checkEarlyOperation(const CircuitContext& context) {
    Worksheet sheet(phrasing<"early-operation">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_b ≤ I_may");
    sheet.clause("overload");
    const auto current = loadCurrent(context, context, sheet);
    const auto rated = overloadRating(context, sheet);
    if (!current || !rated) return sheet.conclude();
    const Measure shown = measure(*current, units::ampere);
    const Figure<Ratio> share = shareUnder(context, current->value, *rated, sheet);
    const Figure<Current> carried{*rated * share.value, share.bound};
    if (current->value <= carried.value) {
        sheet.compareTolerance(Relation::AtMost, "I_b", *current, carried, units::ampere);
        if (auto doubt = doubtLoad(context, context, 1, carried.value, sheet)) return std::move(*doubt);
        return sheet.conclude(shown, deviceWord(context.family), measure(*rated, units::ampere));
    }
    const DeviceFamily* family = deviceFamily(context, sheet);
    if (!family) return sheet.conclude();
    const LoadOverTime load = loadOverTime(context, context, *current, sheet);
    Worksheet aside(phrasing<"early-operation">, context, {RecordKind::Circuit, context.circuit.id});
    auto question = ownOverloadQuestion(context, *rated, load.load, aside);
    if (!question) {
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return sheet.conclude();
    }
    // The most that warmth may leave: where that is a bound, so is the load that follows from it.
    question->inWarmth = share.value;
    if (isWarm(*question)) sheet.show([&] { return earliestInWarmth(*question); });
    const Current from = overload::mayOperateAt(*question);
    sheet.show([&] { return computedTerm("I_may", from, units::ampere, {"check.note.may-operate-at", {}}); });
    sheet.source(question->device.source);
    sheet.compareTolerance(Relation::AtMost, "I_b", *current, Figure<Current>{from, share.bound},
                           units::ampere);
    if (sheet.verdict() == Verdict::Fails) sheet.atWorst(Verdict::Close);
    if (sheet.verdict() == Verdict::Holds)
        if (auto doubt = doubtLoad(context, context, 1, from, sheet)) return std::move(*doubt);
    sheet.phrase(Verdict::Holds, "check.early-operation.holds-in-runs");
    if (!sheet.isFull() || sheet.verdict() != Verdict::Close)
        return sheet.conclude(shown, deviceWord(family), measure(*rated, units::ampere));
    const overload::HiddenOverload answer = overload::answer(*question);
    return sheet.concludeWith([&] {
        return saidOf(answer, from, share, context,
                      {shown, measure(*rated, units::ampere), deviceWord(family)});
    });
}

} // namespace loopwright
