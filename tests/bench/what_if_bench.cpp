// SPDX-License-Identifier: GPL-3.0-or-later
// What a person waits for who tries a change on a circuit: every check before and after, and the panel with
// them painted anew, in frames of a sixtieth of a second.
#include "app/demo/demo_site.h"
#include "core/remedy/what_if.h"
#include "forms/frame/appearance.h"
#include "forms/look/style.h"
#include "forms/overload/trial_panel.h"
#include "forms/records/field_editor.h"

#include <benchmark/benchmark.h>

#include <QApplication>

#include <algorithm>
#include <chrono>
#include <stdexcept>

namespace {

using namespace loopwright;

/// The demo site as it is shown, and a circuit of it whose overload nobody notices.
struct Shown {
    ReferenceTables tables = ReferenceTables::builtIn();
    std::vector<RuleSet> ruleSets = builtInRuleSets();
    SiteViewPtr view;
    Id circuit;

    Shown() {
        SequentialIds ids;
        SiteView made;
        made.installation = demoSite(ids).installation;
        const Visit& visit = made.installation.visits.back();
        made.visit = visit.id;
        made.tables = &tables;
        made.rules = &ruleSetFor(ruleSets, visit.ruleSet);
        made.assessment = assess(made.installation, made.visit, tables, *made.rules);
        const auto hidden = std::ranges::find_if(made.assessment.findings, [](const Finding& finding) {
            return finding.check == "hidden-overload" && finding.verdict == Verdict::Fails;
        });
        if (hidden == made.assessment.findings.end()) throw std::runtime_error("no overload is hidden here");
        circuit = hidden->subject.id;
        view = std::make_shared<const SiteView>(std::move(made));
    }

    /// The circuit's own load, a little further on each time.
    Change otherLoad(int turn) const {
        Edit edit;
        edit.kind = RecordKind::Circuit;
        edit.id = circuit;
        edit.values = {{"load_A", std::to_string(20 + turn % 20)}};
        Change change;
        change.edits.push_back(std::move(edit));
        return change;
    }
};

void whatIfOfACircuit(benchmark::State& state) {
    const Shown shown;
    int turn = 0;
    for (auto _ : state) {
        const auto result = whatIf(shown.view->installation, shown.view->visit, shown.circuit,
                                   shown.otherLoad(++turn), shown.tables, *shown.view->rules);
        if (!result) throw std::runtime_error("the change is refused");
        benchmark::DoNotOptimize(result->circuit.data());
    }
}

void whatIfRepainted(benchmark::State& state) {
    const Shown shown;
    const Appearance appearance{QLocale::c()};
    applyLook(*qApp, appearance.look(), appearance.type);
    TrialPanel panel(appearance, [](const Change&) { return tl::expected<void, Message>(); });
    panel.resize(900, 900);
    panel.setVisible(true);
    panel.show(shown.view, shown.circuit);
    FieldEditor* load = panel.editor(RecordKind::Circuit, shown.circuit, "load_A");
    if (!load) throw std::runtime_error("the panel has no field for the load");
    int turn = 0;
    using Clock = std::chrono::steady_clock;
    std::chrono::duration<double> taken{}, longest{};
    for (auto _ : state) {
        const auto begin = Clock::now();
        emit load->entered(QString::number(20 + ++turn % 20));
        QCoreApplication::processEvents();
        benchmark::DoNotOptimize(panel.grab());
        const std::chrono::duration<double> each = Clock::now() - begin;
        taken += each;
        longest = std::max(longest, each);
    }
    constexpr double frame = 0.016; // s
    state.counters["frames"] = taken.count() / static_cast<double>(state.iterations()) / frame;
    state.counters["longest_frames"] = longest.count() / frame;
}

BENCHMARK(whatIfOfACircuit)->Unit(benchmark::kMillisecond);
BENCHMARK(whatIfRepainted)->Unit(benchmark::kMillisecond);

} // namespace
