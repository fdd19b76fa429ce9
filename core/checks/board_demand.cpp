// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/demand.h"
#include "core/checks/load_over_time.h"
#include "core/checks/surroundings.h"

namespace loopwright {
namespace {

/// The limit that is nearest to what is asked for, and how a sentence calls it.
struct Nearest {
    Measure limit;
    Word word{"check.word.board-rating"};
};

void hold(const Figure<Current>& demand, const std::optional<Figure<Current>>& limit, std::string_view word,
          Worksheet& sheet, Nearest& nearest) {
    if (!limit) return;
    if (sheet.compare(Relation::AtMost, "I_d", demand, *limit, units::ampere))
        nearest = {measure(limit->value, units::ampere), {word}};
}

/// What the feeder's device carries where it sits.
std::optional<Figure<Current>> carriedBy(const VisitContext& visit, const Feeder& feeder, Worksheet& sheet) {
    const auto rated = overloadRating(feeder, sheet);
    if (!rated) return std::nullopt;
    const Figure<Ratio> share = shareInWarmth(visit, feeder.board, feeder.family, *rated, sheet);
    return Figure<Current>{*rated * share.value, share.bound};
}

std::optional<Figure<Current>> exactly(const std::optional<Current>& limit) {
    return limit ? std::optional(Figure<Current>{*limit}) : std::nullopt;
}

} // namespace

/// The demand of a board in its most loaded line against what the board is rated for, and against device and
/// wiring of the circuit that feeds it (IEC 60364-1, 311; IEC 61439-1, 5.3.1; IEC 60364-4-43, 433.1).
Finding checkBoardDemand(const BoardContext& context) {
    const Board& board = context.board;
    Worksheet sheet(phrasing<"board-demand">, context, {RecordKind::Board, board.id});
    sheet.formula("I_d ≤ I_nA; I_d ≤ I_n; I_d ≤ I_z");
    sheet.clause("board-demand");
    const Demand demand = demandOfBoard(context, sheet);
    if (demand.circuits == 0) return sheet.doesNotApply("check.board-demand.no-circuits");
    const std::size_t line = demand.most();
    const Figure<Current>& asked = demand.lines[line];
    sheet.show([&] {
        return computedTerm("I_d", asked.value, units::ampere, {"check.note.demand-most", {lineWord(line)}});
    });

    Nearest nearest;
    if (board.ratedCurrent.state != EntryState::NotApplicable)
        hold(asked, exactly(sheet.exact("I_nA", board, board.ratedCurrent, "ratedCurrent_A")),
             "check.word.board-rating", sheet, nearest);
    if (!context.feeders.empty()) {
        const Feeder& feeder = context.feeders.front();
        hold(asked, carriedBy(context, feeder, sheet), "check.word.feeder-device", sheet, nearest);
        hold(asked, exactly(wiringCapacity(context, feeder, sheet)), "check.word.feeder-wiring", sheet,
             nearest);
    }
    if (!sheet.hasVerdict() && board.ratedCurrent.state == EntryState::NotApplicable)
        return sheet.doesNotApply("check.board-demand.no-rating");
    return sheet.conclude(measure(asked, units::ampere), lineWord(line), nearest.limit, nearest.word);
}

} // namespace loopwright
