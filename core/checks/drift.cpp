// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/load_current.h"
#include "core/checks/worksheet.h"

#include <algorithm>

// Readings against those of the visit before. A drift is no fault: the worst verdict is close.
namespace loopwright {
namespace {

/// A pair of readings, the older first.
template <class Q>
struct Pair {
    const Entry<Q>& before;
    const Entry<Q>& now;
};

/// The sentence's figures: those of the reading that drifts most.
struct Deciding {
    Measure before;
    Measure now;
};

template <class Q>
bool bothRead(const Pair<Q>& pair) {
    return pair.before.hasFigure() && pair.now.hasFigure() && isUsable(pair.before.value) &&
           isUsable(pair.now.value);
}

/// A loop that has risen by more than instruments may differ.
void compareLoop(const VisitContext& visit, const Pair<Resistance>& pair, Band multiple,
                 std::string_view symbol, std::string_view said, Worksheet& sheet, Deciding& deciding) {
    if (!bothRead(pair) || pair.now.state != EntryState::Value) return;
    const auto& times = visit.tables.band(multiple);
    const auto& least = visit.tables.band(Band::DriftAllowance);
    const Resistance most = std::max(pair.before.value * times.value, pair.before.value + ohms(least.value));
    sheet.showAside([&] {
        return recordedTerm(symbol, pair.before, units::ohm, {"check.note.visit-before", {}});
    });
    sheet.showAside([&] { return recordedTerm(symbol, pair.now, units::ohm); });
    sheet.showAside([&] { return tableTerm("m", times.value, units::ratio, times.source); });
    if (!sheet.compareTolerance(Relation::AtMost, symbol, Figure<Resistance>{pair.now.value},
                                Figure<Resistance>{most}, units::ohm))
        return;
    deciding = {measure(pair.before.value, units::ohm, pair.before.decimals),
                measure(pair.now.value, units::ohm, pair.now.decimals)};
    sheet.phrase(Verdict::Close, said);
}

/// Insulation falls by about the same factor in the same time. Where another interval like the last would
/// bring it below the minimum, somebody must look before.
void compareInsulation(const Pair<Resistance>& pair, Resistance minimum, std::string_view symbol,
                       Worksheet& sheet, Deciding& deciding) {
    if (!bothRead(pair) || pair.now.state == EntryState::Above) return;
    // Below the minimum already: the check of insulation says so.
    if (pair.now.value < minimum) return;
    const Resistance ahead = pair.now.value * std::min(1.0, pair.now.value / pair.before.value);
    sheet.showAside([&] {
        return recordedTerm(symbol, pair.before, units::megohm, {"check.note.visit-before", {}});
    });
    sheet.showAside([&] { return recordedTerm(symbol, pair.now, units::megohm); });
    sheet.showAside([&] {
        return computedTerm("R_ahead", ahead, units::megohm, {"check.note.insulation-ahead", {}});
    });
    if (!sheet.compareTolerance(Relation::AtLeast, "R_ahead", Figure<Resistance>{ahead},
                                Figure<Resistance>{minimum}, units::megohm))
        return;
    deciding = {measure(pair.before.value, units::megohm, pair.before.decimals),
                measure(pair.now.value, units::megohm, pair.now.decimals)};
    sheet.phrase(Verdict::Close, "check.drift.insulation");
}

Finding concluded(Worksheet& sheet, const Deciding& deciding) {
    if (!sheet.hasVerdict()) return sheet.doesNotApply("check.drift.nothing-before");
    sheet.atWorst(Verdict::Close);
    return sheet.conclude(deciding.before, deciding.now);
}

} // namespace

/// Loop, continuity and insulation of a circuit since the visit before.
Finding checkDrift(const CircuitContext& context) {
    Worksheet sheet(phrasing<"drift">, context, {RecordKind::Circuit, context.circuit.id});
    if (!context.before || !context.reading) return sheet.doesNotApply("check.drift.nothing-before");
    const CircuitReading& before = *context.before;
    const CircuitReading& now = *context.reading;
    Deciding deciding;
    // A loop through an electrode follows the electrode, which is judged at its board.
    if (context.earthing != Earthing::Tt)
        compareLoop(context, {before.loopImpedance, now.loopImpedance}, Band::DriftLoop, "Z_s",
                    "check.drift.loop", sheet, deciding);
    compareLoop(context, {before.continuity, now.continuity}, Band::DriftLoop, "R_1+R_2",
                "check.drift.continuity", sheet, deciding);
    const auto minimum = context.tables.insulationMinimum(highestVoltage(context));
    if (minimum) {
        compareInsulation({before.insulationEarth, now.insulationEarth}, minimum->value, "R_E", sheet,
                          deciding);
        compareInsulation({before.insulationLive, now.insulationLive}, minimum->value, "R_L", sheet,
                          deciding);
    }
    return concluded(sheet, deciding);
}

/// Loop and electrode of a board since the visit before.
Finding checkBoardDrift(const BoardContext& context) {
    Worksheet sheet(phrasing<"drift">, context, {RecordKind::Board, context.board.id});
    if (!context.boardBefore || !context.boardReading)
        return sheet.doesNotApply("check.drift.nothing-before");
    const BoardReading& before = *context.boardBefore;
    const BoardReading& now = *context.boardReading;
    Deciding deciding;
    if (context.earthing != Earthing::Tt)
        compareLoop(context, {before.loopImpedance, now.loopImpedance}, Band::DriftLoop, "Z_db",
                    "check.drift.loop", sheet, deciding);
    compareLoop(context, {before.electrodeResistance, now.electrodeResistance}, Band::DriftElectrode, "R_A",
                "check.drift.electrode", sheet, deciding);
    return concluded(sheet, deciding);
}

} // namespace loopwright
