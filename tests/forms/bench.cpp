// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench.h"

#include <algorithm>

namespace loopwright {
namespace {

template <class Q>
Entry<Q> entry(const char* typed, const Unit& unit) {
    return fromText<Q>(parseEntry(typed, unit).value(), unit);
}

Finding judged(const Circuit& circuit, std::string_view check, const Entry<Resistance>& reading,
               const Unit& unit, double limit, bool atMost, std::string_view field, Id readingId) {
    Finding finding{{RecordKind::Circuit, circuit.id}, check};
    if (!reading.hasFigure()) {
        finding.verdict = Verdict::CannotTell;
        finding.missing = {{RecordKind::CircuitReading, readingId, field}};
        finding.sentence = {"check.bench.missing", {}};
        return finding;
    }
    const double value = in(reading.value, unit);
    const double margin = atMost ? 1 - value / limit : 1 - limit / value;
    finding.verdict = margin < 0 ? Verdict::Fails : margin < 0.05 ? Verdict::Close : Verdict::Holds;
    finding.margin = margin;
    finding.result = Measure{value, unit, 2};
    finding.limit = Measure{limit, unit, 2};
    Working& working = finding.working.write();
    working.formula = "Z_s ≤ Z_s,max";
    working.terms = {{"Z_s", *finding.result, TermOrigin::Read, {}, {}},
                     {"Z_s,max", *finding.limit, TermOrigin::Table, {}, {"a bench table", "seen"}}};
    working.resultSymbol = "Z_s";
    working.result = finding.result;
    working.limit = finding.limit;
    finding.sentence = {"check.bench.judged", {}};
    return finding;
}

/// Stand-in limits: a loop of 40 V over the rating, 1 MΩ, the rating.
std::vector<Finding> judge(const Circuit& circuit, const CircuitReading& reading) {
    std::vector<Finding> findings;
    const double rating = in(circuit.device.ratedCurrent.value, units::ampere);
    findings.push_back(judged(circuit, "loop", reading.loopImpedance, units::ohm, 40 / rating, true,
                              "loopImpedance_ohm", reading.id));
    findings.push_back(judged(circuit, "insulation", reading.insulationEarth, units::megohm, 1, false,
                              "insulationEarth_Mohm", reading.id));
    Finding load{{RecordKind::Circuit, circuit.id}, "load-device"};
    const double drawn = in(circuit.load.value, units::ampere);
    load.margin = 1 - drawn / rating;
    load.verdict = *load.margin < 0 ? Verdict::Fails : Verdict::Holds;
    load.result = Measure{drawn, units::ampere, 1};
    load.limit = Measure{rating, units::ampere, 0};
    load.sentence = {"check.bench.load", {}};
    findings.push_back(load);
    Finding ring{{RecordKind::Circuit, circuit.id}, "ring"};
    ring.sentence = {"check.bench.ring", {}};
    findings.push_back(ring);
    std::ranges::stable_sort(findings, {}, &Finding::verdict);
    return findings;
}

} // namespace

Bench::Bench() {
    installation.site = {ownIds_.next(), "Oakum Row Works"};
    visit = ownIds_.next();
    installation.visits = {{visit, installation.site.id, "2026, periodic"}};
    board = ownIds_.next();
    installation.boards = {{board, installation.site.id, "Board C", "kiln room and long walk"}};
    addCircuit("1", "Lights, long walk east", "60898-B", 6, 0, 1.5, 1.0, "42", "2.1", "1.27", ">999", "1.52",
               "", "");
    addCircuit("3", "Escape lights", "60898-B", 6, 0, 1.5, 1.0, "58 (carried)", "0.6", "1.75", "412", "1.98",
               "", "");
    addCircuit("4", "Ring, print shop", "61009-B", 32, 30, 2.5, 1.5, "54", "14.8 (typed)", "0.26", ">999",
               "0.51", "24", "");
    addCircuit("6", "Sockets, joinery", "61009-B", 32, 30, 4.0, 1.5, "52", "19.6", "0.87", ">999", "1.22",
               "22", "");
    addCircuit("12", "Glue pots, drying press", "60898-B", 16, 30, 2.5, 1.5, "22", "8.3 (computed)", "0.43",
               "0.8", "0.68", "26", "");
    addCircuit("14", "Dishwasher, canteen", "60898-B", 20, 30, 2.5, 1.5, "21", "12.2 (computed)", "0.41",
               ">999", "", "", "");
    addCircuit("F1", "Kiln, glaze room", "1361", 30, 0, 4.0, 1.5, "18", "41.7 (computed)", "0.30", ">999",
               "0.54", "", "Old fuse ways, beside the board, on the same bar");
    addSpare("F4", "Old fuse ways, beside the board, on the same bar");
    installation.circuits[2].topology = Topology::Ring;
    refresh();
}

void Bench::addCircuit(const char* way, const char* name, const char* family, double rating, double residual,
                       double line, double protective, const char* length, const char* load,
                       const char* continuity, const char* insulation, const char* loop,
                       const char* residualTime, const char* section) {
    Circuit circuit;
    circuit.id = ownIds_.next();
    circuit.board = board;
    circuit.way = way;
    circuit.name = name;
    circuit.section = section;
    circuit.device = {family, Entry<Current>::of(amperes(rating), 0), {}};
    circuit.residual.fitted = residual > 0;
    if (residual > 0) circuit.residual.residualCurrent = Entry<Current>::of(milliamperes(residual), 0);
    circuit.wiring.lineSize = Entry<CrossSection>::of(squareMillimetres(line), 1);
    circuit.wiring.protectiveSize = Entry<CrossSection>::of(squareMillimetres(protective), 1);
    circuit.wiring.length = entry<Length>(length, units::metre);
    circuit.load = entry<Current>(load, units::ampere);
    installation.circuits.push_back(circuit);

    CircuitReading reading;
    reading.id = ownIds_.next();
    reading.visit = visit;
    reading.circuit = circuit.id;
    reading.continuity = entry<Resistance>(continuity, units::ohm);
    reading.insulationEarth = entry<Resistance>(insulation, units::megohm);
    reading.polarity = TestOutcome::Correct;
    reading.loopImpedance = entry<Resistance>(loop, units::ohm);
    reading.residualTime = entry<Time>(residualTime, units::millisecond);
    installation.circuitReadings.push_back(reading);
}

void Bench::addSpare(const char* way, const char* section) {
    Circuit spare;
    spare.id = ownIds_.next();
    spare.board = board;
    spare.way = way;
    spare.name = "Spare";
    spare.section = section;
    spare.use = CircuitUse::Spare;
    installation.circuits.push_back(spare);
}

ChangeDoor Bench::door() {
    return [this](const Change& change) -> tl::expected<void, Message> {
        if (auto done = apply(installation, change); !done) return done;
        changes.push_back(change);
        refresh();
        if (changed) changed(view_);
        return {};
    };
}

void Bench::refresh() {
    auto view = std::make_shared<SiteView>();
    view->installation = installation;
    view->visit = visit;
    view->tables = &tables_;
    view->rules = &rules_.front();
    view->assessment.visit = visit;
    for (const Circuit& circuit : installation.circuits) {
        if (circuit.use == CircuitUse::Spare) continue;
        const auto* reading =
            findReading(installation.circuitReadings, visit, &CircuitReading::circuit, circuit.id);
        const auto findings = judge(circuit, reading ? *reading : CircuitReading{});
        view->assessment.findings.insert(view->assessment.findings.end(), findings.begin(), findings.end());
    }
    view_ = std::move(view);
}

Id Bench::circuit(const char* way) const {
    return std::ranges::find(installation.circuits, way, &Circuit::way)->id;
}

const CircuitReading* Bench::reading(const char* way) const {
    return findReading(installation.circuitReadings, visit, &CircuitReading::circuit, circuit(way));
}

} // namespace loopwright
