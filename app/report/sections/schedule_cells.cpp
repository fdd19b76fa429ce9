// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/schedule_cells.h"

#include "core/checks/answering_field.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report::cells {
namespace {

/// The worst of what the checks that this cell answers for say.
Verdict verdictIn(const ScheduleRow& row, AnsweringField field) {
    Verdict worst = Verdict::DoesNotApply;
    for (const Finding* finding : row.findings)
        if (finding->verdict != Verdict::CannotTell && answeringField(*finding) == field)
            worst = std::min(worst, finding->verdict);
    return worst;
}

bool isMissing(const ScheduleRow& row, AnsweringField field) {
    return std::ranges::any_of(row.findings, [&](const Finding* finding) {
        return finding->verdict == Verdict::CannotTell &&
               std::ranges::any_of(finding->missing, [&](const MissingInput& missing) {
                   return missing.kind == field.kind && missing.field == field.key;
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
ScheduleCell limited() {
    ScheduleCell cell{QStringLiteral("LIM"), soft};
    cell.isLimited = true;
    return cell;
}

ScheduleCell figureCell(const ScheduleRow& row, const EntryText& entry) {
    switch (entry.state) {
    case EntryState::Missing:
        return {};
    case EntryState::Limited:
        return limited();
    case EntryState::NotApplicable:
        return {QStringLiteral("N/A"), soft};
    default:
        return signedFigure(row.input.words.figure(entry), entry.origin);
    }
}

ScheduleCell entryCell(const ScheduleRow& row, const EntryText& entry, AnsweringField field) {
    ScheduleCell result = figureCell(row, entry);
    result.isMissing = entry.state == EntryState::Missing && isMissing(row, field);
    result.verdict = verdictIn(row, field);
    return result;
}

const Finding* findingOf(const ScheduleRow& row, std::string_view check) {
    const auto found =
        std::ranges::find_if(row.findings, [&](const Finding* finding) { return finding->check == check; });
    return found == row.findings.end() ? nullptr : *found;
}

} // namespace

ScheduleCell ofCircuit(const ScheduleRow& row, const EntryText& entry, std::string_view field) {
    return entryCell(row, entry, {RecordKind::Circuit, field});
}

ScheduleCell ofReading(const ScheduleRow& row, const EntryText& entry, std::string_view field) {
    return entryCell(row, entry, {RecordKind::CircuitReading, field});
}

ScheduleCell ofTest(const ScheduleRow& row, TestOutcome CircuitReading::*member, std::string_view field) {
    ScheduleCell result;
    switch (row.reading ? row.reading->*member : TestOutcome::NotDone) {
    case TestOutcome::Correct:
        result.said = QStringLiteral("+");
        break;
    case TestOutcome::Wrong:
        result.said = QStringLiteral("\u2212");
        break;
    case TestOutcome::Limited:
        result = limited();
        break;
    case TestOutcome::NotApplicable:
        result = {QStringLiteral("N/A"), soft};
        break;
    case TestOutcome::NotDone:
        result.isMissing = isMissing(row, {RecordKind::CircuitReading, field});
        break;
    }
    result.verdict = verdictIn(row, {RecordKind::CircuitReading, field});
    return result;
}

ScheduleCell deviceType(const ScheduleRow& row) {
    const std::string& key = row.circuit.device.family;
    const DeviceFamily* family = row.input.tables.deviceFamily(key);
    ScheduleCell cell{text(family ? family->shortLabel : key), plain};
    cell.isMissing = key.empty() && isMissing(row, {RecordKind::Circuit, "device.family"});
    return cell;
}

ScheduleCell residualRating(const ScheduleRow& row) {
    ScheduleCell cell =
        row.circuit.residual.fitted
            ? figureCell(row, toText(row.circuit.residual.residualCurrent, units::milliampere))
            : ScheduleCell{};
    cell.isMissing =
        cell.said.isEmpty() && isMissing(row, {RecordKind::Circuit, "residual.residualCurrent_mA"});
    cell.verdict = verdictIn(row, {RecordKind::Circuit, "residual.residualCurrent_mA"});
    // A mark alone would seem to belong to the figure beside it.
    if (!row.circuit.residual.fitted && isLoud(cell.verdict))
        cell.said = QCoreApplication::translate("Report", "none", "residual current device");
    return cell;
}

ScheduleCell method(const ScheduleRow& row) {
    const InstallationMethod method = row.circuit.wiring.method;
    ScheduleCell cell{method == InstallationMethod::Unknown ? QString() : text(choiceKey(method)), plain};
    cell.isMissing = cell.said.isEmpty() && isMissing(row, {RecordKind::Circuit, "wiring.method"});
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
    cell.isMissing = cell.said.isEmpty() && isMissing(row, {RecordKind::Circuit, "load_A"});
    cell.verdict = verdictIn(row, {RecordKind::Circuit, "load_A"});
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
