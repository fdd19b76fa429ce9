// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/schedule_cells.h"

#include <algorithm>

namespace loopwright::report::cells {
namespace {

/// Which check speaks in which cell. Where a check judges several readings, `symbol` is what its working
/// calls this one.
struct CellCheck {
    std::string_view cell;
    std::string_view check;
    std::string_view symbol;
};
constexpr std::array cellChecks{
    CellCheck{"rated", "device-wiring", ""},
    CellCheck{"rated", "conventional", ""},
    CellCheck{"capacity", "breaking-capacity", ""},
    CellCheck{"residual", "additional-protection", ""},
    CellCheck{"residual", "residual-touch", ""},
    CellCheck{"line", "adiabatic-line", ""},
    CellCheck{"protective", "adiabatic-protective", ""},
    CellCheck{"length", "drop", ""},
    CellCheck{"load", "load-device", ""},
    CellCheck{"load", "load-wiring", ""},
    CellCheck{"load", "plug-fuse", ""},
    CellCheck{"ringLine", "ring", "r_1"},
    CellCheck{"ringNeutral", "ring", "r_n"},
    CellCheck{"ringProtective", "ring", "r_2"},
    CellCheck{"continuity", "ring", "R_1+R_2"},
    CellCheck{"insulationLive", "insulation", "R_L"},
    CellCheck{"insulationEarth", "insulation", "R_E"},
    CellCheck{"polarity", "polarity", ""},
    CellCheck{"loop", "loop", ""},
    CellCheck{"residualTime", "residual-time", "t_1"},
    CellCheck{"residualTimeFive", "residual-time", "t_5"},
};

/// The worst of what the checks that speak here say.
Verdict verdictIn(const ScheduleRow& row, std::string_view cell) {
    Verdict worst = Verdict::DoesNotApply;
    for (const Finding* finding : row.findings)
        for (const CellCheck& each : cellChecks)
            if (each.cell == cell && each.check == finding->check &&
                finding->verdict != Verdict::CannotTell &&
                (each.symbol.empty() || each.symbol == finding->working.resultSymbol))
                worst = std::min(worst, finding->verdict);
    return worst;
}

bool isMissing(const ScheduleRow& row, RecordKind kind, std::string_view field) {
    return std::ranges::any_of(row.findings, [&](const Finding* finding) {
        return finding->verdict == Verdict::CannotTell &&
               std::ranges::any_of(finding->missing, [&](const MissingInput& missing) {
                   return missing.kind == kind && missing.field == field;
               });
    });
}

/// The sign of where a figure came from, and how it is set.
ScheduleCell signedFigure(const QString& figure, Origin origin) {
    switch (origin) {
    case Origin::Typed:
        return {QStringLiteral("·\u2009") + figure, plain};
    case Origin::Carried:
        return {QStringLiteral("‹\u2009") + figure, carried};
    case Origin::Computed:
        return {QStringLiteral("=\u2009") + figure, soft};
    case Origin::Assumed:
        return {QStringLiteral("~\u2009") + figure, soft};
    case Origin::Read:
        break;
    }
    return {figure, plain};
}

/// "LIM" stands for the reason, which is told below the table.
ScheduleCell figureCell(const ScheduleRow& row, const EntryText& entry) {
    switch (entry.state) {
    case EntryState::Missing:
        return {};
    case EntryState::Limited:
        return {QStringLiteral("LIM"), soft};
    case EntryState::NotApplicable:
        return {QStringLiteral("N/A"), soft};
    default:
        return signedFigure(row.input.words.figure(entry), entry.origin);
    }
}

ScheduleCell entryCell(const ScheduleRow& row, const EntryText& entry, RecordKind kind,
                       std::string_view field, std::string_view cell) {
    ScheduleCell result = figureCell(row, entry);
    result.isMissing = entry.state == EntryState::Missing && isMissing(row, kind, field);
    result.verdict = verdictIn(row, cell);
    return result;
}

const Finding* findingOf(const ScheduleRow& row, std::string_view check) {
    const auto found =
        std::ranges::find_if(row.findings, [&](const Finding* finding) { return finding->check == check; });
    return found == row.findings.end() ? nullptr : *found;
}

} // namespace

ScheduleCell ofCircuit(const ScheduleRow& row, const EntryText& entry, std::string_view field,
                       std::string_view cell) {
    return entryCell(row, entry, RecordKind::Circuit, field, cell);
}

ScheduleCell ofReading(const ScheduleRow& row, const EntryText& entry, std::string_view field,
                       std::string_view cell) {
    return entryCell(row, entry, RecordKind::CircuitReading, field, cell);
}

ScheduleCell ofTest(const ScheduleRow& row, TestOutcome CircuitReading::*member, std::string_view field,
                    std::string_view cell) {
    ScheduleCell result;
    switch (row.reading ? row.reading->*member : TestOutcome::NotDone) {
    case TestOutcome::Correct:
        result.said = QStringLiteral("+");
        break;
    case TestOutcome::Wrong:
        result.said = QStringLiteral("\u2212");
        break;
    case TestOutcome::Limited:
        result = {QStringLiteral("LIM"), soft};
        break;
    case TestOutcome::NotApplicable:
        result = {QStringLiteral("N/A"), soft};
        break;
    case TestOutcome::NotDone:
        result.isMissing = isMissing(row, RecordKind::CircuitReading, field);
        break;
    }
    result.verdict = verdictIn(row, cell);
    return result;
}

ScheduleCell deviceType(const ScheduleRow& row) {
    const std::string& key = row.circuit.device.family;
    const DeviceFamily* family = row.input.tables.deviceFamily(key);
    ScheduleCell cell{text(family ? family->shortLabel : key), plain};
    cell.isMissing = key.empty() && isMissing(row, RecordKind::Circuit, "device.family");
    return cell;
}

ScheduleCell residualRating(const ScheduleRow& row) {
    ScheduleCell cell =
        row.circuit.residual.fitted
            ? figureCell(row, toText(row.circuit.residual.residualCurrent, units::milliampere))
            : ScheduleCell{};
    cell.isMissing =
        cell.said.isEmpty() && isMissing(row, RecordKind::Circuit, "residual.residualCurrent_mA");
    cell.verdict = verdictIn(row, "residual");
    return cell;
}

ScheduleCell method(const ScheduleRow& row) {
    const InstallationMethod method = row.circuit.wiring.method;
    ScheduleCell cell{method == InstallationMethod::Unknown ? QString() : text(choiceKey(method)), plain};
    cell.isMissing = cell.said.isEmpty() && isMissing(row, RecordKind::Circuit, "wiring.method");
    return cell;
}

ScheduleCell load(const ScheduleRow& row) {
    ScheduleCell cell;
    if (row.reading && row.reading->measuredLoad.hasFigure())
        cell = figureCell(row, toText(row.reading->measuredLoad, units::ampere));
    else if (!row.circuit.load.isMissing())
        cell = figureCell(row, toText(row.circuit.load, units::ampere));
    else if (const Finding* finding = findingOf(row, "load-device"); finding && finding->result) {
        const double amperes = finding->result->value;
        cell = signedFigure(row.input.words.number(amperes, amperes < 100 ? 1 : 0), Origin::Computed);
    }
    cell.isMissing = cell.said.isEmpty() && isMissing(row, RecordKind::Circuit, "load_A");
    cell.verdict = verdictIn(row, "load");
    return cell;
}

ScheduleCell loopLimit(const ScheduleRow& row) {
    const Finding* finding = findingOf(row, "loop");
    if (!finding || !finding->limit) return {};
    const double limit = finding->limit->value;
    return {row.input.words.number(limit, limit < 100 ? 2 : 0), soft};
}

ScheduleCell worst(const ScheduleRow& row) {
    Verdict verdict = Verdict::DoesNotApply;
    for (const Finding* finding : row.findings)
        verdict = std::min(verdict, finding->verdict);
    ScheduleCell cell{row.input.words.word(wordKey(verdict)), isLoud(verdict) ? strong : plain, verdict};
    cell.style.ink = inkOf(verdict);
    return cell;
}

} // namespace loopwright::report::cells
