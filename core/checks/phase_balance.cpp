// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/demand.h"
#include "core/physics/demand.h"

namespace loopwright {
namespace {

/// All lines at the same power factor: the figures of a demand carry none. Harmonics of the third order,
/// which lamps and electronics feed into the neutral, add to it.
Current neutralOf(const Demand& demand) {
    std::array<physics::LineLoad, 3> lines;
    for (std::size_t line = 0; line < lines.size(); ++line)
        lines[line].current = demand.lines[line].value;
    return physics::neutralCurrent(lines);
}

/// What the neutral of the board's feeder carries for ever: nothing is recorded of it, so that it is taken to
/// be as large as the lines (IEC 60364-5-52, 524.2.1). Shown beside the neutral's current and not held
/// against it: without harmonics that is never above the line that is asked most of, which the demand of the
/// board is judged by, and of harmonics nothing is recorded either.
void showNeutralCapacity(const BoardContext& context, Worksheet& sheet) {
    if (!sheet.isFull() || context.feeders.empty()) return;
    VisitContext unseen = context;
    unseen.detail = Detail::VerdictOnly;
    Worksheet scratch(phrasing<"phase-balance">, unseen, {RecordKind::Board, context.board.id});
    const auto capacity = wiringCapacity(unseen, context.feeders.front(), scratch);
    if (!capacity) return;
    sheet.showAside([&] {
        return assumedTerm("I_z,N", *capacity, units::ampere, {"check.note.neutral-as-line", {}});
    });
}

} // namespace

/// How evenly the demand of a three-phase board lies on its lines: u ≤ u_max, by our own choice of a share
/// and of an amount that any small board may reach; no standard sets a limit. Unevenness is no danger in
/// itself, so that the worst verdict is close.
Finding checkPhaseBalance(const BoardContext& context) {
    Worksheet sheet(phrasing<"phase-balance">, context, {RecordKind::Board, context.board.id});
    if (context.board.phases != Phases::Three) return sheet.doesNotApply("check.phase-balance.one-phase");
    sheet.formula("u = max |I_L / I_mean − 1| ≤ u_max");
    sheet.clause("phase-balance");
    const Demand demand = demandOfCircuits(context, context.board, sheet);
    const std::array<Current, 3> lines{demand.lines[0].value, demand.lines[1].value, demand.lines[2].value};
    const Current mean = (lines[0] + lines[1] + lines[2]) / 3;
    const bool isKnown = combined(demand.lines[0].bound,
                                  combined(demand.lines[1].bound, demand.lines[2].bound)) == Bound::Exact;
    if (mean == Current() && isKnown) return sheet.doesNotApply("check.phase-balance.no-load");

    const auto& share = context.tables.band(Band::ImbalanceShare);
    const auto& allowance = context.tables.band(Band::ImbalanceAllowance);
    const Current neutral = neutralOf(demand);
    constexpr std::array symbols{"I_L1", "I_L2", "I_L3"};
    for (std::size_t line = 0; line < lines.size(); ++line)
        sheet.show([&] {
            return computedTerm(symbols[line], lines[line], units::ampere,
                                {"check.note.demand-of-line", {lineWord(line)}});
        });
    sheet.showAside([&] {
        return computedTerm("I_N", neutral, units::ampere, {"check.note.neutral-current", {}});
    });
    showNeutralCapacity(context, sheet);
    sheet.show([&] { return tableTerm("u_0", share.value, units::percent, share.source); });
    sheet.show([&] { return tableTerm("I_0", amperes(allowance.value), units::ampere, allowance.source); });
    const Bound bound = isKnown ? Bound::Exact : Bound::Open;
    if (mean > Current()) {
        const Ratio most = share.value + amperes(allowance.value) / mean;
        sheet.compareTolerance(Relation::AtMost, "u", Figure<Ratio>{physics::imbalance(lines), bound},
                               Figure<Ratio>{most}, units::percent);
    }
    if (sheet.verdict() == Verdict::Fails) sheet.atWorst(Verdict::Close);
    return sheet.conclude(measure(lines[demand.most()], units::ampere), lineWord(demand.most()),
                          measure(mean, units::ampere), measure(neutral, units::ampere));
}

} // namespace loopwright
