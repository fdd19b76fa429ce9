// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/assessment.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <algorithm>

/// Assessing a part of a site answers as assessing the whole of it does.
namespace loopwright {
namespace {

TEST(PartAndWhole, ACircuitAloneIsJudgedAsInItsSite) {
    const Installation site = test::importedDemo().installation;
    for (const Visit& visit : site.visits) {
        const RuleSet& rules = test::rules(visit.ruleSet);
        for (const Detail detail : {Detail::VerdictOnly, Detail::Full}) {
            const Assessment whole = assess(site, visit.id, test::tables(), rules, detail);
            for (const Circuit& circuit : site.circuits) {
                if (!isInUse(circuit)) continue;
                std::vector<Finding> inWhole;
                for (const Finding& finding : whole.findings)
                    if (finding.subject == Subject{RecordKind::Circuit, circuit.id})
                        inWhole.push_back(finding);
                EXPECT_EQ(assessCircuit(site, visit.id, circuit.id, test::tables(), rules, detail), inWhole)
                    << pathOf(site, circuit) << " in " << visit.label;
            }
        }
    }
}

TEST(PartAndWhole, WhatStandsElsewhereOnTheSiteDoesNotCount) {
    const Installation whole = test::importedDemo().installation;
    const Visit& visit = whole.visits.back();
    const RuleSet& rules = test::rules(visit.ruleSet);
    // A board that feeds no other, by itself with its way to the supply, against the same board in the site.
    for (const Board& board : whole.boards) {
        Installation part = whole;
        std::erase_if(part.circuits, [&](const Circuit& circuit) {
            if (circuit.board == board.id) return false;
            return std::ranges::none_of(whole.boards,
                                        [&](const Board& fed) { return fed.fedFrom == circuit.id; });
        });
        const Assessment all = assess(whole, visit.id, test::tables(), rules, Detail::VerdictOnly);
        const Assessment alone = assess(part, visit.id, test::tables(), rules, Detail::VerdictOnly);
        for (const Circuit& circuit : whole.circuits) {
            const bool feeds = std::ranges::any_of(
                whole.boards, [&](const Board& fed) { return fed.fedFrom == circuit.id; });
            if (circuit.board != board.id || feeds) continue;
            const auto expected = all.about(circuit.id), got = alone.about(circuit.id);
            ASSERT_EQ(expected.size(), got.size()) << pathOf(whole, circuit);
            for (std::size_t i = 0; i < got.size(); ++i)
                EXPECT_EQ(got[i]->verdict, expected[i]->verdict)
                    << pathOf(whole, circuit) << " " << got[i]->check;
        }
    }
}

} // namespace
} // namespace loopwright
