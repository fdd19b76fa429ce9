// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

#include <array>

namespace loopwright {
namespace {

/// A reading of the operating time at a multiple of the rated residual current.
struct TimeTest {
    double multiple;
    std::string_view symbol, most, least;
    std::optional<Figure<Time>> time;
};

/// The figures that a sentence mentions: those of the comparison that decides.
struct Deciding {
    Figure<Time> time;
    Time limit;
};

void compareTest(const VisitContext& visit, ResidualDelay delay, const TimeTest& test, Worksheet& sheet,
                 Deciding& deciding) {
    const auto limit = visit.tables.residualLimit(delay, test.multiple);
    if (!limit || !test.time) return;
    const auto compare = [&](Relation relation, Time bound, std::string_view symbol,
                             std::string_view failure) {
        sheet.show([&] { return tableTerm(symbol, bound, units::millisecond, limit->source); });
        if (!sheet.compare(relation, test.symbol, *test.time, Figure<Time>{bound}, units::millisecond))
            return;
        sheet.phrase(Verdict::Fails, failure);
        deciding = {*test.time, bound};
    };
    if (limit->atMost) compare(Relation::AtMost, *limit->atMost, test.most, "check.residual-time.fails");
    if (limit->atLeast)
        compare(Relation::AtLeast, *limit->atLeast, test.least, "check.residual-time.fails-soon");
}

/// The test at five times is judged where somebody made it and is not asked for otherwise.
template <class Reading>
std::optional<Figure<Time>> timeAtFive(const Reading* reading, Worksheet& sheet) {
    if (!reading || !reading->residualTimeFive.hasFigure()) return std::nullopt;
    return sheet.figure("t_5", reading, &Reading::residualTimeFive, "residualTimeFive_ms");
}

template <class Reading>
Finding residualTimes(const VisitContext& visit, const ResidualDevice& device, const Reading* reading,
                      Worksheet&& sheet) {
    if (!device.fitted) return sheet.doesNotApply("check.residual-time.none");
    sheet.formula("t ≤ t_max");
    sheet.clause("residual-time");
    const std::array tests{TimeTest{1, "t_1", "t_1,max", "t_1,min",
                                    sheet.figure("t_1", reading, &Reading::residualTime, "residualTime_ms")},
                           TimeTest{5, "t_5", "t_5,max", "t_5,min", timeAtFive(reading, sheet)}};
    Deciding deciding;
    for (const TimeTest& test : tests)
        if (sheet.verdict() != Verdict::Fails) // a slower one at five times adds nothing
            compareTest(visit, device.delay, test, sheet, deciding);
    return sheet.conclude(measure(deciding.time, units::millisecond),
                          measure(deciding.limit, units::millisecond));
}

} // namespace

/// Operating times of the circuit's own residual current device against IEC 61008-1, and its test button.
Finding checkResidualTime(const CircuitContext& context) {
    Worksheet sheet(phrasing<"residual-time">, context, {RecordKind::Circuit, context.circuit.id});
    const bool buttonFails = context.circuit.residual.fitted && context.reading &&
                             context.reading->residualButton == TestOutcome::Wrong;
    if (buttonFails) {
        sheet.clause("residual-time");
        sheet.decide(Verdict::Fails);
        sheet.phrase(Verdict::Fails, "check.residual-time.button");
        return sheet.conclude();
    }
    return residualTimes(context, context.circuit.residual, context.reading, std::move(sheet));
}

/// The same for the device that serves a whole board.
Finding checkBoardResidualTime(const BoardContext& context) {
    return residualTimes(
        context, context.board.residual, context.boardReading,
        Worksheet(phrasing<"residual-time">, context, {RecordKind::Board, context.board.id}));
}

} // namespace loopwright
