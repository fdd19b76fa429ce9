// SPDX-License-Identifier: GPL-3.0-or-later
// How long it takes to judge the demo site, as a ratio to reading the same rows from SQLite in the same run.
#include "core/assess/assessment.h"
#include "core/reference/embedded.h"
#include "core/sitefile/site_file.h"
#include "db/workbook.h"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace {

using namespace loopwright;

std::string demoText() {
    std::ifstream file(std::filesystem::path(LOOPWRIGHT_SOURCE_DIR) / "resources/demo/oakum-row.site.json");
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

const Installation& demoSite() {
    static const Installation site = [] {
        SequentialIds ids;
        auto import = importSite(demoText(), ids,
                                 [](std::string_view) { return tl::expected<std::string, Message>("-"); });
        if (!import)
            throw std::runtime_error("the demo site cannot be read: " + import.error().front().where);
        return import->installation;
    }();
    return site;
}

void judgeTheSite(benchmark::State& state, Detail detail) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    const std::vector<RuleSet> ruleSets = builtInRuleSets();
    const Installation& site = demoSite();
    const Visit& visit = site.visits.back();
    const RuleSet& rules = ruleSetFor(ruleSets, visit.ruleSet);
    for (auto _ : state)
        benchmark::DoNotOptimize(assess(site, visit.id, tables, rules, detail));
    state.counters["circuits"] = static_cast<double>(site.circuits.size());
}

void readTheSite(benchmark::State& state) {
    const auto folder = std::filesystem::temp_directory_path() / "loopwright-bench";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    RandomIds ids;
    const SystemClock clock;
    auto workbook = Workbook::create(folder / "demo.loopwright", {{"bench"}, clock, ids});
    if (!workbook || !workbook->add(demoSite(), {}))
        throw std::runtime_error("the workbook cannot be written");
    for (auto _ : state)
        benchmark::DoNotOptimize(workbook->load(demoSite().site.id));
    std::filesystem::remove_all(folder);
}

BENCHMARK_CAPTURE(judgeTheSite, verdicts, Detail::VerdictOnly);
BENCHMARK_CAPTURE(judgeTheSite, full, Detail::Full);
BENCHMARK(readTheSite);

} // namespace

BENCHMARK_MAIN();
