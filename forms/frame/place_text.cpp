// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/place_text.h"

#include <QCoreApplication>
#include <QStringList>

namespace loopwright {
namespace {

const QString point = QStringLiteral(" · ");

QString tr(const char* text) {
    return QCoreApplication::translate("Place", text);
}

/// "0.24 Ω"; empty when there is no figure.
template <class Q>
QString figureText(const Entry<Q>& entry, const Unit& unit, const Words& words) {
    return entry.hasFigure() ? words.figure(toText(entry, unit)) + QChar(QChar::Nbsp) + text(unit.symbol)
                             : QString();
}

void addIf(QStringList& facts, const QString& pattern, const QString& value) {
    if (!value.isEmpty()) facts << pattern.arg(value);
}

QString joined(const QString& first, const QString& second, const QString& between) {
    return first.isEmpty() || second.isEmpty() ? first + second : first + between + second;
}

QString feederText(const Installation& installation, const Board& board) {
    const Circuit* feeder = find(installation.circuits, board.fedFrom);
    const Board* above = feeder ? find(installation.boards, feeder->board) : nullptr;
    if (!above) return tr("Fed from the supply");
    return tr("Fed from %1, way %2").arg(text(above->name), text(feeder->way));
}

} // namespace

QString boardTitle(const Board& board) {
    return joined(text(board.name), text(board.description), QStringLiteral(", "));
}

QString circuitTitle(const Circuit& circuit) {
    return joined(text(circuit.way), text(circuit.name), QStringLiteral(" "));
}

QString titleOf(const Installation& installation, const Subject& subject) {
    if (subject.kind == RecordKind::Site) return text(installation.site.name);
    if (subject.kind == RecordKind::Supply) return tr("Supply");
    if (const Board* board = find(installation.boards, subject.id)) return boardTitle(*board);
    if (const Circuit* circuit = find(installation.circuits, subject.id)) return circuitTitle(*circuit);
    if (const Equipment* equipment = find(installation.equipment, subject.id)) return text(equipment->name);
    if (const Visit* visit = find(installation.visits, subject.id)) return text(visit->label);
    if (const Instrument* instrument = find(installation.instruments, subject.id))
        return text(instrument->name);
    return {};
}

Id circuitOf(const Installation& installation, Id record) {
    if (find(installation.circuits, record)) return record;
    if (const Equipment* equipment = find(installation.equipment, record)) return equipment->circuit;
    if (const Observation* seen = find(installation.observations, record)) return seen->circuit;
    if (const CurrentLog* log = find(installation.currentLogs, record)) {
        const CircuitReading* reading = find(installation.circuitReadings, log->reading);
        return reading ? reading->circuit : Id{};
    }
    return {};
}

Id boardOf(const Installation& installation, Id record) {
    if (find(installation.boards, record)) return record;
    if (const Circuit* circuit = find(installation.circuits, circuitOf(installation, record)))
        return circuit->board;
    if (const Observation* seen = find(installation.observations, record)) return seen->board;
    return {};
}

QString boardFacts(const SiteView& view, const Board& board, const Words& words) {
    QStringList facts{feederText(view.installation, board)};
    addIf(facts, QStringLiteral("%1"), figureText(board.ratedCurrent, units::ampere, words));
    const auto* reading =
        findReading(view.installation.boardReadings, view.visit, &BoardReading::board, board.id);
    if (reading) {
        addIf(facts, QStringLiteral("Z_db %1"), figureText(reading->loopImpedance, units::ohm, words));
        addIf(facts, tr("fault %1"), figureText(reading->prospectiveFaultCurrent, units::kiloampere, words));
        addIf(facts, QStringLiteral("R_A %1"), figureText(reading->electrodeResistance, units::ohm, words));
    }
    return facts.join(point);
}

QString circuitFacts(const SiteView& view, const Circuit& circuit, const Words& words) {
    if (circuit.use == CircuitUse::Spare) return words.word("choice.circuit-use.spare");
    const DeviceFamily* family = view.tables ? view.tables->deviceFamily(circuit.device.family) : nullptr;
    const QString device =
        joined(text(family ? family->label : circuit.device.family),
               figureText(circuit.device.ratedCurrent, units::ampere, words), QStringLiteral(", "));
    const Wiring& wiring = circuit.wiring;
    QString cable = words.figure(toText(wiring.lineSize, units::squareMillimetre));
    const QString protective = words.figure(toText(wiring.protectiveSize, units::squareMillimetre));
    cable = joined(cable, protective, QStringLiteral(" / "));
    if (!cable.isEmpty()) cable += QStringLiteral("\u00A0mm²");
    const QString ambient = figureText(wiring.ambient, units::celsius, words);
    if (!ambient.isEmpty()) cable = joined(cable, tr("at %1").arg(ambient), QStringLiteral(" "));
    return joined(device, cable, QStringLiteral("; "));
}

} // namespace loopwright
