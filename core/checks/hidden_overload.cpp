// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"
#include "core/overload/hidden_overload.h"

#include <algorithm>

namespace loopwright {
namespace {

/// A load on one device: a circuit's, or a piece of equipment's on its plug fuse.
struct Loaded {
    Argument who;
    const DeviceFamily* family;
    Current rated;
    LoadOverTime load;
};

/// Whether a run fills its period as far as anybody could tell from what is said of both.
bool fills(const overload::Stretch& stretch) {
    constexpr Ratio untold = 0.005; // of three digits
    return stretch.period - stretch.above < stretch.period * untold;
}

/// Which of the sentences: how the load runs, and what the earliest sound device does about it.
std::string_view phraseFor(const overload::Load& load, const overload::HiddenOverload& answer) {
    constexpr Time atOnce = seconds(1);
    using Phrases = std::array<std::string_view, 4>; // never, at once, in the first run, in a later one
    static constexpr Phrases steady{"check.hidden-overload.fails", "check.hidden-overload.steady-at-once",
                                    "check.hidden-overload.steady-after",
                                    "check.hidden-overload.steady-after"},
        runs{"check.hidden-overload.runs", "check.hidden-overload.runs-at-once",
             "check.hidden-overload.runs-after", "check.hidden-overload.runs-later"},
        together{"check.hidden-overload.together", "check.hidden-overload.together-at-once",
                 "check.hidden-overload.together-after", "check.hidden-overload.together-later"};
    if (load.isDutyUnknown) return "check.hidden-overload.duty-unknown";
    const Phrases& phrases = load.isSteady || fills(answer.overRating) ? steady
                             : load.isAligned                          ? together
                                                                       : runs;
    const overload::Edge& earliest = answer.earliest;
    if (earliest.operation == physics::Operation::Never) return phrases[0];
    if (!answer.holdsOut || earliest.after < atOnce) return phrases[1];
    return phrases[earliest.run == 1 ? 2 : 3];
}

/// A load that is only known to be at least so much: no sentence may say what a device does about it that a
/// larger load would turn. What is sure of the least is sure of more.
bool isAtLeast(const Loaded& loaded) {
    return loaded.load.current.bound != Bound::Exact;
}

/// What the sentence mentions, in the order of the phrases.
std::vector<Argument> saidOf(const Loaded& loaded, const overload::HiddenOverload& answer,
                             std::string_view phrase) {
    const Current excess = loaded.load.load.peak - loaded.rated;
    std::vector<Argument> said{loaded.who, measure(answer.toDevice, units::ratio),
                               measure(loaded.rated, units::ampere), deviceWord(loaded.family),
                               measure(excess, units::ampere)};
    if (phrase.starts_with("check.hidden-overload.runs")) {
        said.push_back(spanOf(answer.overRating.above));
        said.push_back(spanOf(answer.overRating.period));
    }
    if (phrase.ends_with("-later")) said.emplace_back(static_cast<std::int64_t>(answer.earliest.run));
    if (phrase.ends_with("-later") || phrase.ends_with("-after"))
        said.push_back(noLessThan(answer.earliest.after));
    return said;
}

void showCurrents(const VisitContext& visit, const Loaded& loaded, Worksheet& sheet) {
    const auto currents = visit.tables.conventionalCurrents(*loaded.family, loaded.rated);
    if (!currents) return;
    if (const auto nonOperating = currents->nonOperatingMultiple)
        sheet.show(
            [&] { return tableTerm("I_nf", loaded.rated * *nonOperating, units::ampere, currents->source); });
    sheet.show([&] {
        return tableTerm("I_2", loaded.rated * currents->operatingMultiple, units::ampere, currents->source);
    });
}

void showEdge(std::string_view symbol, const overload::Edge& edge, std::string_view note, Worksheet& sheet) {
    if (edge.operates())
        sheet.showAside([&] {
            const Measure span = spanOf(edge.after);
            return Term{std::string(symbol), span, TermOrigin::Computed, {note, {}}, {}};
        });
}

/// How the answer came about, and where it would turn.
void showAnswer(const VisitContext& visit, const Loaded& loaded, const overload::Question& question,
                const overload::HiddenOverload& answer, Worksheet& sheet) {
    if (!sheet.isFull()) return;
    showCurrents(visit, loaded, sheet);
    const auto aside = [&](std::string_view symbol, Current current, std::string_view note) {
        sheet.showAside([&] { return computedTerm(symbol, current, units::ampere, {note, {}}); });
    };
    sheet.showAside([&] {
        return tableTerm("I_ref", question.device.limits.carries, units::ampere, question.device.source,
                         {"check.note.replica", {}});
    });
    if (isWarm(question)) sheet.showAside([&] { return earliestInWarmth(question); });
    if (isCold(question)) sheet.showAside([&] { return latestInCold(question); });
    if (answer.holdsOut) showEdge("t_may", answer.earliest, "check.note.earliest-device", sheet);
    showEdge("t_must", answer.latest, "check.note.latest-device", sheet);
    if (question.inWarmth) aside("I_may", answer.mayOperateAt, "check.note.may-operate-at");
    if (answer.mustOperateAt) aside("I_must", *answer.mustOperateAt, "check.note.must-operate-at");
    sheet.showAside([&] {
        const auto& shift = visit.tables.band(Band::DeviceShift);
        return assumedTerm("s", shift.value, units::percent, {"check.note.device-shift", {}}, shift.source);
    });
    if (question.inWarmth) aside("I_aged", answer.agedMayOperateAt, "check.note.aged-may-operate-at");
    aside("I_rms", loaded.load.load.rms, "check.note.mean-load");
    const auto share =
        loaded.load.load.isAligned ? overload::shareAbove(loaded.load.pieces, loaded.rated) : std::nullopt;
    if (share)
        sheet.showAside([&] {
            return computedTerm("p", *share, units::percent, {"check.note.share-above", {}});
        });
    sheet.showAside([&] {
        return computedTerm("(I/I_n)^2", answer.contactPeak, units::ratio, {"check.note.contact-heat", {}});
    });
    sheet.showAside([&] {
        return computedTerm("(I_rms/I_n)^2", answer.contactMean, units::ratio,
                            {"check.note.contact-heat-mean", {}});
    });
}

/// Writes down what one load does to its device; the verdict becomes that of this load.
class Judged {
  public:
    Judged(const VisitContext& visit, Worksheet& sheet)
      : visit_(visit)
      , sheet_(sheet) {}

    void judge(const Figure<Current>& load, const DeviceFamily* family, Current rated) {
        sheet_.compareTolerance(Relation::AtMost, "I_b", load, Figure<Current>{rated}, units::ampere);
        if (!sheet_.isFull()) return;
        said_ = {"check.hidden-overload.holds",
                 {measure(load, units::ampere), deviceWord(family), measure(rated, units::ampere)}};
    }
    void judgeOverload(const Loaded& loaded, const overload::Question& question) {
        const overload::Edge sure = overload::sureToOperate(question);
        if (sure.operates()) {
            sheet_.atWorst(Verdict::Close);
            said_ = {
                isAtLeast(loaded) ? "check.hidden-overload.close-at-least" : "check.hidden-overload.close",
                {loaded.who, measure(loaded.load.load.peak / loaded.rated, units::ratio),
                 measure(loaded.rated, units::ampere), deviceWord(loaded.family), noMoreThan(sure.after)}};
        }
        if (!sheet_.isFull()) return;
        const overload::HiddenOverload answer = overload::answer(question);
        showAnswer(visit_, loaded, question, answer, sheet_);
        if (sure.operates()) return;
        const std::string_view phrase =
            isAtLeast(loaded) ? "check.hidden-overload.at-least" : phraseFor(loaded.load.load, answer);
        said_ = {phrase, saidOf(loaded, answer, phrase)};
    }
    Message said() { return std::move(said_); }

  private:
    const VisitContext& visit_;
    Worksheet& sheet_;
    Message said_;
};

/// The circuit's own device under a load above its rating; false where too little is known of it.
bool judgeCircuit(const CircuitContext& context, const Figure<Current>& current, Current rated,
                  Judged& judged, Worksheet& sheet) {
    const DeviceFamily* family = deviceFamily(context, sheet);
    if (!family) return false;
    const Loaded loaded{Word{"check.word.the-load"}, family, rated,
                        loadOverTime(context, context, current, sheet)};
    const auto question = ownOverloadQuestion(context, rated, loaded.load.load, sheet);
    if (!question) {
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return false;
    }
    judged.judgeOverload(loaded, *question);
    return true;
}

} // namespace

/// A load above the rating of its device that no sound device is sure to end: it works, and heats (IEC
/// 60364-4-43, 433.1, condition 1, and what the device's standard leaves open). Looks at the circuit's device
/// and at the fuses of plugs and fused outlets.
Finding checkHiddenOverload(const CircuitContext& context) {
    Worksheet sheet(phrasing<"hidden-overload">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_b ≤ I_n");
    sheet.clause("overload");
    const auto current = loadCurrent(context, context, sheet);
    const auto rated = overloadRating(context, sheet);
    Judged judged(context, sheet);
    if (current && rated) {
        judged.judge(*current, context.family, *rated);
        const bool isOver = sheet.verdict() == Verdict::Fails;
        if (isOver && !judgeCircuit(context, *current, *rated, judged, sheet)) return sheet.cannotTell();
    }
    if (!sheet.hasVerdict() || sheet.verdict() != Verdict::Fails)
        if (auto plugged = worstOnPlugFuse(context)) {
            const Loaded loaded{plugged->equipment->name, plugged->family, plugged->rated,
                                std::move(plugged->load)};
            judged.judge(loaded.load.current, loaded.family, loaded.rated);
            judged.judgeOverload(
                loaded, *overloadQuestion(context, *loaded.family, {}, loaded.rated, loaded.load.load));
        }
    if (current && rated)
        if (auto doubt = doubtLoad(context, context, 1, *rated, sheet)) return std::move(*doubt);
    if (!sheet.hasVerdict() || sheet.verdict() != Verdict::Fails)
        if (const Equipment* unknown = onUnknownPlugFuse(context)) {
            sheet.unpublished(*unknown, "plugFuse_A");
            return sheet.cannotTell();
        }
    return sheet.concludeWith([&] { return judged.said(); });
}

} // namespace loopwright
