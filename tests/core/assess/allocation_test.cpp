// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/visit_records.h"
#include "core/checks/checks.h"
#include "tests/core/assess/allocations.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <memory>

namespace loopwright {
namespace {

/// Whether the load must be laid out over time, which no check does in place: it rests, or is above a rating.
bool isLaidOut(const CircuitContext& context) {
    return checkLoadDevice(context).verdict == Verdict::Fails ||
           std::ranges::any_of(context.equipment, [](const Equipment* piece) {
               return piece->onTime.hasFigure() || piece->plugFuse.hasFigure();
           });
}
constexpr std::array overTime{std::string_view("hidden-overload"), std::string_view("early-operation"),
                              std::string_view("conductor-heat"), std::string_view("plug-fuse")};

/// Runs each check of the list and tells of those that allocate on the way to a bare verdict.
template <class Context>
void expectNone(std::span<const RegisteredCheck<Context>> checks, const Context& context,
                const std::string& about, bool laidOut = false) {
    for (const RegisteredCheck<Context>& check : checks) {
        if (laidOut && std::ranges::find(overTime, check.key) != overTime.end()) continue;
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
            for (const Circuit* circuit : records.circuitsOf(board.id)) {
                const CircuitContext own = records.forCircuit(context, *circuit);
                expectNone(circuitChecks(), own, pathOf(installation, *circuit), isLaidOut(own));
            }
        }
    }
}

/// What the releases of a breaker are set to is put together once for its circuit, and what its place does to
/// one that is not set as well.
TEST(Allocation, NeitherSettingsNorWarmthAllocateInAVerdict) {
    test::Fixture set, warm;
    set.circuit().device = {"60947-2", test::typed(amperes(100)), test::typed(kiloamperes(36))};
    set.circuit().device.thermalSetting = test::typed(amperes(80));
    set.circuit().device.instantaneousSetting = test::typed(amperes(800));
    warm.board().ambient = test::typed(celsius(50));
    for (test::Fixture* fixture : {&set, &warm}) {
        const VisitRecords records(fixture->installation, fixture->visit(), test::tables(), fixture->ruleSet,
                                   Detail::VerdictOnly);
        const BoardContext board = records.forBoard(fixture->board());
        expectNone(circuitChecks(), records.forCircuit(board, fixture->circuit()),
                   fixture == &set ? "a set breaker" : "a warm board");
    }
}

TEST(Allocation, TheCounterCounts) {
    const std::size_t before = test::allocations();
    const auto made = std::make_unique<std::string>(100, 'x');
    EXPECT_EQ(test::allocations(), before + 2) << *made;
}

} // namespace
} // namespace loopwright
