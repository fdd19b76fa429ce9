// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/assessment.h"
#include "core/model/installation.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"

#include <gtest/gtest.h>

#include <iomanip>
#include <ostream>
#include <stdexcept>
#include <variant>

namespace loopwright::test {

inline const ReferenceTables& tables() {
    static const ReferenceTables built = ReferenceTables::builtIn();
    return built;
}
inline const RuleSet& rules(std::string_view key = "bs-7671-2018") {
    static const std::vector<RuleSet> sets = builtInRuleSets();
    return ruleSetFor(sets, key);
}

/// A figure that was read.
template <class Q>
Entry<Q> read(Q value, int decimals = 2) {
    return Entry<Q>::of(value, decimals);
}
/// A figure off a plate or drawing.
template <class Q>
Entry<Q> typed(Q value, int decimals = 0) {
    return Entry<Q>::of(value, decimals, Origin::Typed);
}
template <class Q>
Entry<Q> above(Q value) {
    return {EntryState::Above, Origin::Read, 0, value, {}};
}
template <class Q>
Entry<Q> below(Q value) {
    return {EntryState::Below, Origin::Read, 2, value, {}};
}
template <class Q>
Entry<Q> limited(std::string reason) {
    return {EntryState::Limited, Origin::Read, 0, {}, std::move(reason)};
}
template <class Q>
Entry<Q> notApplicable() {
    return {EntryState::NotApplicable, Origin::Read, 0, {}, {}};
}

/// One supply, one board, one circuit, and a visit in which everything was read and every check holds or does
/// not apply. Tests change what they are about.
struct Fixture {
    Installation installation;
    RuleSet ruleSet = rules();

    Fixture() {
        installation.site = {.id = ids.next(), .name = "Site"};
        installation.supplies.push_back({.id = ids.next(),
                                         .site = installation.site.id,
                                         .earthing = Earthing::TnCS,
                                         .nominalVoltage = typed(volts(230)),
                                         .fuse = {"88-2", typed(amperes(100)), typed(kiloamperes(80))},
                                         .tails = typed(squareMillimetres(25)),
                                         .earthingConductor = typed(squareMillimetres(16)),
                                         .mainBonding = typed(squareMillimetres(10))});
        installation.boards.push_back({.id = ids.next(),
                                       .site = installation.site.id,
                                       .name = "Board A",
                                       .ratedCurrent = typed(amperes(100)),
                                       .withstandCurrent = typed(kiloamperes(10))});
        installation.circuits.push_back({.id = ids.next(),
                                         .board = board().id,
                                         .way = "1",
                                         .name = "Water heater",
                                         .device = {"60898-B", typed(amperes(20)), typed(kiloamperes(6))},
                                         .wiring = {.method = InstallationMethod::C,
                                                    .lineSize = typed(squareMillimetres(2.5), 1),
                                                    .protectiveSize = typed(squareMillimetres(1.5), 1),
                                                    .length = typed(metres(18))},
                                         .load = typed(amperes(13))});
        installation.visits.push_back({.id = ids.next(),
                                       .site = installation.site.id,
                                       .label = "Visit",
                                       .started = Date{std::chrono::year{2026} / 3 / 10}});
        const Entry<Ratio> fivePercent = typed(0.05);
        installation.instruments.push_back({.id = ids.next(),
                                            .visit = visit().id,
                                            .name = "Tester 1",
                                            .calibrationDue = Date{std::chrono::year{2026} / 9 / 30},
                                            .continuityUncertainty = fivePercent,
                                            .insulationUncertainty = fivePercent,
                                            .loopUncertainty = fivePercent,
                                            .residualTimeUncertainty = fivePercent,
                                            .electrodeUncertainty = fivePercent,
                                            .currentUncertainty = fivePercent});
        installation.supplyReadings.push_back({.id = ids.next(),
                                               .visit = visit().id,
                                               .supply = supply().id,
                                               .externalLoopImpedance = read(ohms(0.14)),
                                               .prospectiveFaultCurrent = read(kiloamperes(3.2), 1),
                                               .polarity = TestOutcome::Correct,
                                               .phaseSequence = TestOutcome::Correct});
        installation.boardReadings.push_back({.id = ids.next(),
                                              .visit = visit().id,
                                              .board = board().id,
                                              .loopImpedance = read(ohms(0.18)),
                                              .prospectiveFaultCurrent = read(kiloamperes(2.6), 1),
                                              .polarity = TestOutcome::Correct,
                                              .phaseSequence = TestOutcome::Correct});
        installation.circuitReadings.push_back({.id = ids.next(),
                                                .visit = visit().id,
                                                .circuit = circuit().id,
                                                .continuity = read(ohms(0.35)),
                                                .insulationLive = above(megohms(999)),
                                                .insulationEarth = read(megohms(310), 0),
                                                .polarity = TestOutcome::Correct,
                                                .loopImpedance = read(ohms(0.53))});
    }

    Supply& supply() { return installation.supplies.front(); }
    SupplyReading& supplyReading() { return installation.supplyReadings.front(); }
    Board& board() { return installation.boards.front(); }
    BoardReading& boardReading() { return installation.boardReadings.front(); }
    Circuit& circuit() { return installation.circuits.front(); }
    Wiring& wiring() { return circuit().wiring; }
    CircuitReading& reading() { return installation.circuitReadings.front(); }
    Visit& visit() { return installation.visits.front(); }
    Instrument& instrument() { return installation.instruments.front(); }

    Equipment& addEquipment(std::string name, Power power) {
        installation.equipment.push_back(
            {.id = ids.next(), .circuit = circuit().id, .name = std::move(name), .power = typed(power)});
        return installation.equipment.back();
    }
    /// Another circuit of the board like the first, but nothing of it was read.
    Circuit& addCircuit(Phases phases, Current load) {
        Circuit more = circuit();
        more.id = ids.next();
        more.way = std::to_string(installation.circuits.size() + 1);
        more.phases = phases;
        more.load = typed(load);
        installation.circuits.push_back(more);
        return installation.circuits.back();
    }
    /// A 32 A ring of 2.5/1.5 mm2 behind a 30 mA RCBO, 54 m of cable (r_1 = 7.41 mohm/m, IEC 60228).
    void makeRing() {
        circuit().use = CircuitUse::Sockets;
        circuit().topology = Topology::Ring;
        circuit().device = {"61009-B", typed(amperes(32)), typed(kiloamperes(6))};
        circuit().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
        wiring().length = typed(metres(54));
        reading().ringLine = read(ohms(0.40));
        reading().ringNeutral = read(ohms(0.40));
        reading().ringProtective = read(ohms(0.65));
        reading().continuity = read(ohms(0.26));
        reading().loopImpedance = read(ohms(0.44));
        reading().residualTime = read(milliseconds(28), 0);
        reading().residualTimeFive = read(milliseconds(14), 0);
        reading().residualButton = TestOutcome::Correct;
    }
    /// The supply comes without an earth; an electrode and a 30 mA device on the board take its place.
    void makeTt() {
        supply().earthing = Earthing::Tt;
        supplyReading().electrodeResistance = read(ohms(90), 0);
        board().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
        boardReading().residualTime = read(milliseconds(25), 0);
        boardReading().loopImpedance = read(ohms(90.6), 1);
        reading().loopImpedance = read(ohms(91), 0);
    }
    /// Puts a board between the supply and the first board, fed and read like it; returns the circuit that
    /// feeds it.
    Circuit& nest() {
        Board main = board();
        main.id = ids.next();
        main.name = "Main board";
        Circuit feeder = circuit();
        feeder.id = ids.next();
        feeder.board = main.id;
        feeder.way = "M1";
        feeder.use = CircuitUse::Distribution;
        feeder.phases = Phases::Three;
        feeder.device = {"88-2", typed(amperes(63)), typed(kiloamperes(80))};
        feeder.wiring.lineSize = typed(squareMillimetres(16));
        feeder.wiring.protectiveSize = typed(squareMillimetres(16));
        feeder.wiring.length = typed(metres(30));
        feeder.load = typed(amperes(40));
        board().fedFrom = feeder.id;
        installation.boards.push_back(main);
        installation.circuits.push_back(feeder);
        return installation.circuits.back();
    }

    Assessment assess(Detail detail = Detail::Full) const {
        return loopwright::assess(installation, installation.visits.front().id, tables(), ruleSet, detail);
    }
    Finding find(std::string_view check, Id subject, Detail detail = Detail::Full) const {
        for (Finding& finding : assess(detail).findings)
            if (finding.check == check && finding.subject.id == subject) return std::move(finding);
        throw std::runtime_error("no finding of " + std::string(check));
    }
    /// What the check finds about the circuit.
    Finding find(std::string_view check) const { return find(check, installation.circuits.front().id); }
    Finding onBoard(std::string_view check) const { return find(check, installation.boards.front().id); }
    Finding onSupply(std::string_view check) const { return find(check, installation.supplies.front().id); }

  private:
    SequentialIds ids;
};

inline std::string missingFields(const Finding& finding) {
    std::string fields;
    for (const MissingInput& input : finding.missing)
        fields.append(fields.empty() ? "" : " ").append(input.field);
    return fields;
}

} // namespace loopwright::test

namespace loopwright {

/// Findings in failure messages: the verdict with its figures, the sentence's key, the working.
inline void PrintTo(const Measure& measure, std::ostream* out) {
    *out << measure.value << " " << measure.unit.symbol;
}
inline void PrintTo(Verdict verdict, std::ostream* out) {
    *out << verdictKey(verdict);
}
inline void PrintTo(const Finding& finding, std::ostream* out) {
    *out << finding.check << " " << verdictKey(finding.verdict) << " (" << finding.sentence.key << ")";
    if (finding.result) *out << " result " << finding.result->value << " " << finding.result->unit.symbol;
    if (finding.limit) *out << " limit " << finding.limit->value;
    if (finding.margin) *out << " margin " << *finding.margin;
    *out << " missing [" << test::missingFields(finding) << "]";
    for (const Term& term : finding.working->terms)
        *out << "\n    " << std::setw(10) << term.symbol << " = " << term.value.value << " "
             << term.value.unit.symbol << "  " << term.note.key << "  " << term.source.title;
    *out << "\n";
}

} // namespace loopwright
