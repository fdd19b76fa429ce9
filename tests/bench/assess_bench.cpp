// SPDX-License-Identifier: GPL-3.0-or-later
// How long it takes to judge the demo site, and one of its circuits, as a ratio to reading the same rows from
// SQLite in the same run.
#include "app/demo/demo_site.h"
#include "core/assess/assessment.h"
#include "core/assess/visit_records.h"
#include "core/checks/checks.h"
#include "db/workbook.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <benchmark/benchmark.h>

#include <chrono>
#include <filesystem>
#include <stdexcept>

namespace {

using namespace loopwright;

const Installation& site() {
    static const Installation made = [] {
        SequentialIds ids;
        return demoSite(ids).installation;
    }();
    return made;
}

void judgeTheSite(benchmark::State& state, Detail detail) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    const std::vector<RuleSet> ruleSets = builtInRuleSets();
    const Visit& visit = site().visits.back();
    const RuleSet& rules = ruleSetFor(ruleSets, visit.ruleSet);
    for (auto _ : state)
        benchmark::DoNotOptimize(assess(site(), visit.id, tables, rules, detail));
    state.counters["circuits"] = static_cast<double>(site().circuits.size());
}

/// The demo site in a workbook, for as long as this lives.
class Written {
  public:
    Written()
      : folder_(std::filesystem::temp_directory_path() / "loopwright-bench") {
        std::filesystem::remove_all(folder_);
        std::filesystem::create_directories(folder_);
        workbook = Workbook::create(file(), {{"bench"}, clock_, ids_});
        if (!workbook || !workbook->add(site(), {}))
            throw std::runtime_error("the workbook cannot be written");
    }
    ~Written() { std::filesystem::remove_all(folder_); }
    Written(const Written&) = delete;
    Written& operator=(const Written&) = delete;

    std::filesystem::path file() const { return folder_ / "demo.loopwright"; }

  private:
    std::filesystem::path folder_;
    RandomIds ids_;
    const SystemClock clock_;

  public:
    tl::expected<Workbook, Message> workbook = tl::unexpected(Message{});
};

void readTheSite(benchmark::State& state) {
    Written written;
    for (auto _ : state)
        benchmark::DoNotOptimize(written.workbook->load(site().site.id));
}

/// Reads the rows of one circuit after the other: its own, and its readings of the visit.
class CircuitRows {
  public:
    explicit CircuitRows(const std::filesystem::path& file)
      : database_(file.string(), SQLite::OPEN_READONLY)
      , circuit_(database_, "SELECT * FROM circuit WHERE id = ?")
      , reading_(database_, "SELECT * FROM circuit_reading WHERE circuit = ? AND visit = ?") {}

    std::size_t read(Id circuit, Id visit) {
        circuit_.bind(1, circuit.text());
        reading_.bind(1, circuit.text());
        reading_.bind(2, visit.text());
        return lengthOf(circuit_) + lengthOf(reading_);
    }

  private:
    static std::size_t lengthOf(SQLite::Statement& rows) {
        std::size_t length = 0;
        while (rows.executeStep())
            for (int column = 0; column < rows.getColumnCount(); ++column)
                length += rows.getColumn(column).getString().size();
        rows.reset();
        return length;
    }

    SQLite::Database database_;
    SQLite::Statement circuit_, reading_;
};

/// All checks of every circuit, verdict only, with the contexts at hand, and all the rows in turn.
void judgeACircuit(benchmark::State& state) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    const std::vector<RuleSet> ruleSets = builtInRuleSets();
    const Visit& visit = site().visits.back();
    const VisitRecords records(site(), visit, tables, ruleSetFor(ruleSets, visit.ruleSet),
                               Detail::VerdictOnly);
    std::vector<BoardContext> boards;
    std::vector<CircuitContext> circuits;
    boards.reserve(site().boards.size());
    circuits.reserve(site().circuits.size());
    for (const Board& board : site().boards) {
        boards.push_back(records.forBoard(board));
        for (const Circuit* circuit : records.circuitsOf(board.id))
            if (isInUse(*circuit)) circuits.push_back(records.forCircuit(boards.back(), *circuit));
    }
    const Written written;
    CircuitRows rows(written.file());
    const auto seconds = [](auto&& work) {
        const auto begin = std::chrono::steady_clock::now();
        work();
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    };
    double judged = 0, read = 0;
    for (auto _ : state) {
        judged += seconds([&] {
            for (const CircuitContext& circuit : circuits)
                for (const RegisteredCheck<CircuitContext>& check : circuitChecks())
                    benchmark::DoNotOptimize(check.run(circuit).verdict);
        });
        read += seconds([&] {
            for (const CircuitContext& circuit : circuits)
                benchmark::DoNotOptimize(rows.read(circuit.circuit.id, visit.id));
        });
    }
    const double each = static_cast<double>(state.iterations()) * static_cast<double>(circuits.size());
    state.counters["us_a_circuit"] = judged / each * 1e6;
    state.counters["us_to_read_its_rows"] = read / each * 1e6;
    state.counters["times_reading_its_rows"] = judged / read;
}

BENCHMARK_CAPTURE(judgeTheSite, verdicts, Detail::VerdictOnly);
BENCHMARK_CAPTURE(judgeTheSite, full, Detail::Full);
BENCHMARK(readTheSite);
BENCHMARK(judgeACircuit);

} // namespace
