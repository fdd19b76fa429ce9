// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/assessment.h"

#include "core/assess/visit_records.h"
#include "core/checks/checks.h"
#include "core/checks/needed_readings.h"

#include <algorithm>
#include <unordered_map>

namespace loopwright {
namespace {

/// Runs `checks` and adds what they find, worst first; among equals the order of the registry stays.
template <class Context>
void find(std::span<const RegisteredCheck<Context>> checks, const Context& context,
          std::vector<Finding>& findings) {
    std::vector<Finding> found;
    found.reserve(checks.size());
    for (const RegisteredCheck<Context>& check : checks)
        found.push_back(check.run(context));
    for (const Verdict verdict : worstFirst)
        for (Finding& finding : found)
            if (finding.verdict == verdict) findings.push_back(std::move(finding));
}

} // namespace

Assessment assess(const Installation& installation, Id visit, const ReferenceTables& tables,
                  const RuleSet& rules, Detail detail) {
    Assessment assessment{visit, rules.key, rules.revision, {}};
    const Visit* row = find(installation.visits, visit);
    if (!row) return assessment;

    const VisitRecords records(installation, *row, tables, rules, detail);
    std::vector<Finding>& findings = assessment.findings;
    findings.reserve(installation.circuits.size() * circuitChecks().size() +
                     installation.boards.size() * boardChecks().size() + installation.instruments.size() +
                     supplyChecks().size());
    for (const Supply& supply : installation.supplies)
        find(supplyChecks(), records.forSupply(supply), findings);
    for (const Instrument& instrument : installation.instruments)
        if (instrument.visit == visit) find(instrumentChecks(), records.forInstrument(instrument), findings);
    for (const Board& board : installation.boards) {
        const BoardContext context = records.forBoard(board);
        find(boardChecks(), context, findings);
        for (const Circuit* circuit : records.circuitsOf(board.id)) {
            const CircuitContext circuitContext = records.forCircuit(context, *circuit);
            if (isInUse(*circuit))
                find(circuitChecks(), circuitContext, findings);
            else
                findings.push_back(checkCompleteness(circuitContext));
        }
    }
    return assessment;
}

std::vector<Finding> assessCircuit(const Installation& installation, Id visit, Id circuit,
                                   const ReferenceTables& tables, const RuleSet& rules, Detail detail) {
    std::vector<Finding> findings;
    const Visit* row = find(installation.visits, visit);
    const Circuit* judged = find(installation.circuits, circuit);
    const Board* board = judged ? find(installation.boards, judged->board) : nullptr;
    if (!row || !board || !isInUse(*judged)) return findings;
    const VisitRecords records(installation, *row, tables, rules, detail);
    find(circuitChecks(), records.forCircuit(records.forBoard(*board), *judged), findings);
    return findings;
}

std::vector<Finding> assessAround(const Installation& installation, Id visit, Id circuit,
                                  const ReferenceTables& tables, const RuleSet& rules, Detail detail) {
    std::vector<Finding> findings;
    const Visit* row = find(installation.visits, visit);
    const Circuit* changed = find(installation.circuits, circuit);
    const Board* own = changed ? find(installation.boards, changed->board) : nullptr;
    if (!row || !own) return findings;
    if (std::ranges::find(installation.boards, circuit, &Board::fedFrom) != installation.boards.end()) {
        findings = assess(installation, visit, tables, rules, detail).findings;
        std::erase_if(findings, [&](const Finding& finding) { return finding.subject.id == circuit; });
        return findings;
    }
    const VisitRecords records(installation, *row, tables, rules, detail);
    for (const Supply& supply : installation.supplies)
        find(supplyChecks(), records.forSupply(supply), findings);
    const BoardContext ownContext = records.forBoard(*own);
    for (const Board& board : installation.boards) {
        const bool isThrough =
            &board == own || std::ranges::any_of(ownContext.feeders, [&](const Feeder& feeder) {
                return feeder.board.id == board.id;
            });
        if (!isThrough) continue;
        const BoardContext context = records.forBoard(board);
        find(boardChecks(), context, findings);
        for (const Feeder& feeder : ownContext.feeders)
            if (feeder.board.id == board.id && isInUse(feeder.circuit))
                find(circuitChecks(), records.forCircuit(context, feeder.circuit), findings);
    }
    return findings;
}

std::vector<const Finding*> Assessment::about(Id subject) const {
    std::vector<const Finding*> found;
    for (const Finding& finding : findings)
        if (finding.subject.id == subject) found.push_back(&finding);
    return found;
}

Verdict Assessment::worst(Id subject) const {
    Verdict worst = Verdict::DoesNotApply;
    for (const Finding& finding : findings)
        if (finding.subject.id == subject) worst = std::min(worst, finding.verdict);
    return worst;
}

Tally Assessment::checks() const {
    Tally tally;
    for (const Finding& finding : findings)
        tally.add(finding.verdict);
    return tally;
}

Tally Assessment::circuits(const Installation& installation, Id board) const {
    std::unordered_map<Id, Verdict> worstOf;
    for (const Circuit& circuit : installation.circuits)
        if (circuit.board == board) worstOf.try_emplace(circuit.id, Verdict::DoesNotApply);
    for (const Finding& finding : findings)
        if (const auto circuit = worstOf.find(finding.subject.id); circuit != worstOf.end())
            circuit->second = std::min(circuit->second, finding.verdict);
    Tally tally;
    for (const auto& [circuit, verdict] : worstOf)
        tally.add(verdict);
    return tally;
}

Answer answer(const Installation& installation, const Assessment& assessment) {
    const bool fails = std::ranges::any_of(
        assessment.findings, [](const Finding& finding) { return finding.verdict == Verdict::Fails; });
    const bool observed = std::ranges::any_of(installation.observations, [&](const Observation& observation) {
        return observation.visit == assessment.visit && !observation.putRight &&
               observation.grade != Grade::WorthImproving;
    });
    return fails || observed ? Answer::NotFit : Answer::Fit;
}

namespace {

/// Adds up the cells of every record of one kind.
template <class Record, class Reading>
void count(const std::vector<Record>& records, const std::vector<Reading>& readings, Id visit,
           Id Reading::*subject, Progress& progress) {
    std::unordered_map<Id, const Reading*> readingOf;
    for (const Reading& reading : readings)
        if (reading.visit == visit) readingOf.try_emplace(reading.*subject, &reading);
    for (const Record& record : records) {
        const auto found = readingOf.find(record.id);
        forEachNeeded(record, found == readingOf.end() ? nullptr : found->second,
                      [&](const NeededReading& needed) {
                          if (needed.state == EntryState::NotApplicable) return;
                          ++progress.needed;
                          if (needed.state != EntryState::Missing) ++progress.done;
                      });
    }
}

} // namespace

Progress readingsDone(const Installation& installation, const Assessment& assessment) {
    Progress progress;
    const Id visit = assessment.visit;
    count(installation.supplies, installation.supplyReadings, visit, &SupplyReading::supply, progress);
    count(installation.boards, installation.boardReadings, visit, &BoardReading::board, progress);
    count(installation.circuits, installation.circuitReadings, visit, &CircuitReading::circuit, progress);
    return progress;
}

} // namespace loopwright
