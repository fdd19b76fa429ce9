// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/visit_records.h"
#include "tests/core/assess/allocations.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <memory>

namespace loopwright {
namespace {

/// Runs each check of the list and tells of those that allocate on the way to a bare verdict.
template <class Context>
void expectNone(std::span<const RegisteredCheck<Context>> checks, const Context& context,
                const std::string& about) {
    for (const RegisteredCheck<Context>& check : checks) {
        check.run(context); // what tables work out when they are first asked, they keep
        const std::size_t before = test::allocations();
        const Finding finding = check.run(context);
        EXPECT_EQ(test::allocations(), before)
            << check.key << " of " << about << ", " << verdictKey(finding.verdict);
    }
}

TEST(Allocation, ABareVerdictAllocatesNothing) {
    const Installation installation = test::importedDemo().installation;
    for (const Visit& visit : installation.visits) {
        const VisitRecords records(installation, visit, test::tables(), test::rules(visit.ruleSet),
                                   Detail::VerdictOnly);
        for (const Supply& supply : installation.supplies)
            expectNone(supplyChecks(), records.forSupply(supply), "the supply");
        for (const Instrument& instrument : installation.instruments)
            expectNone(instrumentChecks(), records.forInstrument(instrument), instrument.name);
        for (const Board& board : installation.boards) {
            const BoardContext context = records.forBoard(board);
            expectNone(boardChecks(), context, board.name);
            for (const Circuit* circuit : records.circuitsOf(board.id))
                expectNone(circuitChecks(), records.forCircuit(context, *circuit),
                           pathOf(installation, *circuit));
        }
    }
}

TEST(Allocation, TheCounterCounts) {
    const std::size_t before = test::allocations();
    const auto made = std::make_unique<std::string>(100, 'x');
    EXPECT_EQ(test::allocations(), before + 2) << *made;
}

} // namespace
} // namespace loopwright
