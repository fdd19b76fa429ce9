// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/cells.h"

#include "forms/look/mark.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright {

CellSign signOf(Origin origin) {
    switch (origin) {
    case Origin::Read:
        break;
    case Origin::Typed:
        return CellSign::Typed;
    case Origin::Carried:
        return CellSign::Carried;
    case Origin::Computed:
        return CellSign::Computed;
    case Origin::Assumed:
        return CellSign::Assumed;
    }
    return CellSign::None;
}

CellSign signOf(TermOrigin origin) {
    switch (origin) {
    case TermOrigin::Read:
        break;
    case TermOrigin::Typed:
        return CellSign::Typed;
    case TermOrigin::Carried:
        return CellSign::Carried;
    case TermOrigin::Computed:
        return CellSign::Computed;
    case TermOrigin::Assumed:
        return CellSign::Assumed;
    case TermOrigin::Table:
    case TermOrigin::Rule:
        return CellSign::Table;
    }
    return CellSign::None;
}

std::string storedText(const RowFacts& facts, RecordKind kind, std::string_view field) {
    const Id id = kind == RecordKind::Circuit ? facts.circuit.id : facts.reading ? facts.reading->id : Id{};
    if (id.isNone()) return {};
    return fieldText(facts.view.installation, kind, id, field).value_or(std::string());
}

namespace cells {
namespace {

constexpr char16_t thinSpace = u'\u2009';

const Finding* findingOf(const RowFacts& facts, std::string_view check) {
    const auto found = std::ranges::find(facts.findings, check, &Finding::check);
    return found == facts.findings.end() ? nullptr : *found;
}

/// The figure alone with its sign; the verdict is laid on afterwards.
template <class Q>
SheetCell shown(const Entry<Q>& entry, const Unit& unit, const Words& words) {
    return {words.figure(toText(entry, unit)), entry.isMissing() ? CellSign::None : signOf(entry.origin)};
}

} // namespace

SheetCell text(const RowFacts& facts, const SheetColumn& column) {
    const ColumnField& field = column.fields.front();
    return {loopwright::text(storedText(facts, field.kind, field.key))};
}

SheetCell figure(const RowFacts& facts, const SheetColumn& column) {
    const ColumnField& field = column.fields.front();
    const FieldInfo* info = fieldInfo(field.kind, field.key);
    const auto entry = parseEntry(storedText(facts, field.kind, field.key), info->unit);
    if (!entry || entry->state == EntryState::Missing) return {};
    // A reason is too long for a cell; Reasons and the status line say it whole.
    if (entry->state == EntryState::Limited) return {QStringLiteral("LIM"), signOf(entry->origin)};
    return {facts.words.figure(*entry), signOf(entry->origin)};
}

QString outcomeText(TestOutcome outcome) {
    switch (outcome) {
    case TestOutcome::NotDone:
        break;
    case TestOutcome::Correct:
        return QStringLiteral("+");
    case TestOutcome::Wrong:
        return QStringLiteral("\u2212");
    case TestOutcome::Limited:
        return QStringLiteral("LIM");
    case TestOutcome::NotApplicable:
        return QStringLiteral("N/A");
    }
    return {};
}

SheetCell outcome(const RowFacts& facts, const SheetColumn& column) {
    const ColumnField& field = column.fields.front();
    const std::string stored = storedText(facts, field.kind, field.key);
    for (const Choice& choice : choicesOf<TestOutcome>().choices)
        if (choice.key == stored) return {outcomeText(static_cast<TestOutcome>(choice.value))};
    return {};
}

QString familyName(const DeviceFamily& family) {
    return loopwright::text(family.kind == DeviceKind::Rcbo ? family.tripType : family.shortLabel);
}

QString deviceText(const Device& device, const RowFacts& facts) {
    const DeviceFamily* family = facts.view.tables ? facts.view.tables->deviceFamily(device.family) : nullptr;
    const QString name = family ? familyName(*family) : loopwright::text(device.family);
    const QString rating = facts.words.figure(toText(device.ratedCurrent, units::ampere));
    if (name.isEmpty() || rating.isEmpty()) return name + rating;
    // "B32" is one word in the trade; a family that is a number needs to be told from the rating.
    if (name.back().isDigit()) return name + u' ' + rating + QChar(QChar::Nbsp) + u'A';
    return name.size() > 1 ? name + u' ' + rating : name + rating;
}

SheetCell device(const RowFacts& facts, const SheetColumn&) {
    SheetCell cell{deviceText(facts.circuit.device, facts)};
    const ResidualDevice& residual = facts.circuit.residual;
    if (residual.fitted && residual.residualCurrent.hasFigure())
        cell.text += u'·' + facts.words.figure(toText(residual.residualCurrent, units::milliampere));
    else if (residual.fitted)
        cell.text += QStringLiteral("·?");
    if (!facts.circuit.device.ratedCurrent.isMissing())
        cell.sign = signOf(facts.circuit.device.ratedCurrent.origin);
    // What a person reads off a device is the usual case and needs no sign here.
    if (cell.sign == CellSign::Typed) cell.sign = CellSign::None;
    return cell;
}

SheetCell sizes(const RowFacts& facts, const SheetColumn&) {
    const Wiring& wiring = facts.circuit.wiring;
    if (wiring.lineSize.isMissing() && wiring.protectiveSize.isMissing()) return {};
    const SheetCell line = shown(wiring.lineSize, units::squareMillimetre, facts.words);
    const SheetCell protective = shown(wiring.protectiveSize, units::squareMillimetre, facts.words);
    const auto orUnknown = [](const QString& text) { return text.isEmpty() ? QStringLiteral("?") : text; };
    SheetCell cell{orUnknown(line.text) + QStringLiteral(" / ") + orUnknown(protective.text)};
    const bool needsNoSign = line.sign == CellSign::None || line.sign == CellSign::Typed;
    cell.sign = needsNoSign ? CellSign::None : line.sign;
    return cell;
}

SheetCell load(const RowFacts& facts, const SheetColumn& column) {
    SheetCell cell = figure(facts, column);
    const Circuit& circuit = facts.circuit;
    if (cell.text.isEmpty()) cell = shown(circuit.load, units::ampere, facts.words);
    const Finding* finding = findingOf(facts, "load-device");
    if (!finding || !finding->result) return cell;
    if (cell.text.isEmpty()) {
        const Measure& load = *finding->result;
        cell.text = facts.words.number(load.value, load.decimals < 0 ? 1 : load.decimals);
        cell.sign = finding->working->restsOnAssumption ? CellSign::Assumed : CellSign::Computed;
    }
    if (finding->limit && finding->limit->value > 0)
        cell.loadShare = finding->result->value / finding->limit->value;
    return cell;
}

SheetCell loopLimit(const RowFacts& facts, const SheetColumn&) {
    const Finding* finding = findingOf(facts, "loop");
    if (!finding || !finding->limit) return {};
    const Measure& limit = *finding->limit;
    // A loop behind a residual device may be hundreds of ohms; two decimals would be noise and too wide.
    const int decimals = limit.value >= 100 ? 0 : limit.value >= 10 ? 1 : 2;
    return {facts.words.number(limit.value, decimals).remove(thinSpace), CellSign::Table};
}

SheetCell verdict(const RowFacts& facts, const SheetColumn&) {
    if (facts.isSpare())
        return {QCoreApplication::translate("Sheet", "no circuit"), CellSign::None, Verdict::DoesNotApply};
    if (facts.circuit.takenOut)
        return {QCoreApplication::translate("Sheet", "out of use"), CellSign::None, Verdict::DoesNotApply};
    if (facts.findings.empty()) return {};
    const Verdict worst = facts.findings.front()->verdict;
    return {facts.words.word(wordKey(worst)), CellSign::None, worst};
}

} // namespace cells
} // namespace loopwright
