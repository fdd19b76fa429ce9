// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/residual_path.h"

namespace loopwright {

/// Two residual current devices in series: only the nearer one operates on a fault here if the other is
/// delayed and rated at least three times as high (IEC 60364-5-53, 536.4). Otherwise more goes out than need,
/// which is no danger in itself, so that the worst verdict is close.
Finding checkResidualSeries(const CircuitContext& context) {
    Worksheet sheet(phrasing<"residual-series">, context, {RecordKind::Circuit, context.circuit.id});
    const ResidualDevice& own = context.circuit.residual;
    const auto upstream = own.fitted ? nextResidualUpstream(context) : std::nullopt;
    if (!upstream) return sheet.doesNotApply("check.residual-series.single");
    sheet.formula("I_Δn,up ≥ 3 I_Δn");
    sheet.clause("residual-series");
    const auto near =
        sheet.exact("I_Δn", context.circuit, own.residualCurrent, "residual.residualCurrent_mA");
    const auto far = residualCurrent(*upstream, sheet);
    if (!near || !far) return sheet.conclude();

    const auto& ratio = context.tables.selectiveResidualRatio();
    sheet.show([&] { return tableTerm("m", ratio.value, units::ratio, ratio.source); });
    sheet.compareRatings(Relation::AtLeast, "I_Δn,up", *far, *near * ratio.value, units::milliampere);
    if (upstream->device->delay != ResidualDelay::Delayed) {
        sheet.decide(Verdict::Fails);
        sheet.phrase(Verdict::Close, "check.residual-series.not-delayed");
    } else {
        sheet.phrase(Verdict::Close, "check.residual-series.too-near");
    }
    sheet.atWorst(Verdict::Close);
    return sheet.conclude(measure(*near, units::milliampere), measure(*far, units::milliampere));
}

} // namespace loopwright
