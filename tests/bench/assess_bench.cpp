// SPDX-License-Identifier: GPL-3.0-or-later
// How long it takes to judge the demo site, as a ratio to reading the same rows from SQLite in the same run.
#include "app/demo/demo_site.h"
#include "core/assess/assessment.h"
#include "db/workbook.h"

#include <benchmark/benchmark.h>

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

void readTheSite(benchmark::State& state) {
    const auto folder = std::filesystem::temp_directory_path() / "loopwright-bench";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    RandomIds ids;
    const SystemClock clock;
    auto workbook = Workbook::create(folder / "demo.loopwright", {{"bench"}, clock, ids});
    if (!workbook || !workbook->add(site(), {})) throw std::runtime_error("the workbook cannot be written");
    for (auto _ : state)
        benchmark::DoNotOptimize(workbook->load(site().site.id));
    std::filesystem::remove_all(folder);
}

BENCHMARK_CAPTURE(judgeTheSite, verdicts, Detail::VerdictOnly);
BENCHMARK_CAPTURE(judgeTheSite, full, Detail::Full);
BENCHMARK(readTheSite);

} // namespace

BENCHMARK_MAIN();
