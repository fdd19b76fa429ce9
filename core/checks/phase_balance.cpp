// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

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
