// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/places.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

Place placeOfCircuit(const Installation& installation, Id id) {
    Place place;
    place.circuit = find(installation.circuits, id);
    if (place.circuit) place.board = find(installation.boards, place.circuit->board);
    return place;
}

QString wayOf(const Circuit& circuit) {
    return text(circuit.way.empty() ? circuit.name : circuit.way);
}

} // namespace

Id Place::id() const {
    return equipment ? equipment->id : circuit ? circuit->id : board ? board->id : Id{};
}

Place placeOf(const Installation& installation, const Subject& subject) {
    Place place;
    if (subject.kind == RecordKind::Circuit) return placeOfCircuit(installation, subject.id);
    if (subject.kind == RecordKind::Board) place.board = find(installation.boards, subject.id);
    if (subject.kind == RecordKind::Equipment) {
        const Equipment* equipment = find(installation.equipment, subject.id);
        if (equipment) place = placeOfCircuit(installation, equipment->circuit);
        place.equipment = equipment;
    }
    return place;
}

Place placeOf(const Installation& installation, const Observation& observation) {
    if (!observation.circuit.isNone()) return placeOfCircuit(installation, observation.circuit);
    Place place;
    place.board = find(installation.boards, observation.board);
    return place;
}

QString addressOf(const Installation& installation, const Place& place) {
    if (!place.board) return text(installation.site.name);
    QString board = text(place.board->name);
    if (!place.circuit) return board;
    return QCoreApplication::translate("Report", "%1, way\u00A0%2").arg(board, wayOf(*place.circuit));
}

QString fullNameOf(const Installation& installation, const Place& place) {
    const QString address = addressOf(installation, place);
    const std::string name = place.equipment ? place.equipment->name
                             : place.circuit ? place.circuit->name
                             : place.board   ? place.board->description
                                             : std::string();
    return name.empty() ? address : QStringLiteral("%1: %2").arg(address, text(name));
}

QString nameOf(const Board& board) {
    return board.description.empty()
               ? text(board.name)
               : QStringLiteral("%1, %2").arg(text(board.name), text(board.description));
}

std::vector<const Circuit*> circuitsOf(const Installation& installation, Id board) {
    std::vector<const Circuit*> circuits;
    for (const Circuit& circuit : installation.circuits)
        if (circuit.board == board) circuits.push_back(&circuit);
    return circuits;
}

Verdict worstOf(const ReportInput& input, const Circuit& circuit) {
    Verdict worst = input.assessment.worst(circuit.id);
    for (const Equipment& equipment : input.installation.equipment)
        if (equipment.circuit == circuit.id) worst = std::min(worst, input.assessment.worst(equipment.id));
    return worst;
}

std::vector<const Observation*> observationsOf(const ReportInput& input) {
    std::vector<const Observation*> found;
    for (const Observation& observation : input.installation.observations)
        if (observation.visit == input.assessment.visit) found.push_back(&observation);
    std::ranges::stable_sort(found, {}, [](const Observation* each) { return each->grade; });
    return found;
}

namespace {

/// What is found about a piece of equipment is seen at its circuit.
Id observedPlace(const Place& place) {
    return place.circuit ? place.circuit->id : place.id();
}

} // namespace

std::vector<std::size_t> findingsAt(const ReportInput& input, const Observation& observation,
                                    Verdict verdict) {
    const Id place = observedPlace(placeOf(input.installation, observation));
    std::vector<std::size_t> found;
    for (std::size_t index = 0; index < input.assessment.findings.size(); ++index) {
        const Finding& finding = input.assessment.findings[index];
        if (finding.verdict == verdict &&
            observedPlace(placeOf(input.installation, finding.subject)) == place)
            found.push_back(index);
    }
    return found;
}

std::vector<std::size_t> unmentionedFailures(const ReportInput& input) {
    std::vector<Id> seen;
    for (const Observation* observation : observationsOf(input))
        seen.push_back(observedPlace(placeOf(input.installation, *observation)));
    std::vector<std::size_t> found;
    for (std::size_t index = 0; index < input.assessment.findings.size(); ++index) {
        const Finding& finding = input.assessment.findings[index];
        if (finding.verdict == Verdict::Fails &&
            std::ranges::find(seen, observedPlace(placeOf(input.installation, finding.subject))) ==
                seen.end())
            found.push_back(index);
    }
    return found;
}

} // namespace loopwright::report
