// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/checks/random_site.h"

/// More of what burdens a circuit never makes a verdict better, and more copper never makes it worse.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

/// A circuit whose figures are all exact, so that every verdict is told but that on a breaker's energy.
Fixture anyExact() {
    Fixture fixture;
    Circuit& circuit = fixture.circuit();
    circuit.use = test::anyOf({CircuitUse::Fixed, CircuitUse::Sockets, CircuitUse::Lighting});
    circuit.device.family = test::anyOf<std::string>({"60898-B", "60898-C", "88-2", "3036"});
    circuit.device.ratedCurrent =
        typed(amperes(circuit.device.family == "3036" ? test::anyOf({5.0, 15.0, 20.0, 30.0})
                                                      : test::anyOf({6.0, 10.0, 16.0, 20.0, 32.0})));
    circuit.wiring.method =
        test::anyOf({InstallationMethod::B1, InstallationMethod::C, InstallationMethod::A1});
    circuit.wiring.lineSize = typed(squareMillimetres(test::anyOf({1.5, 2.5, 4.0, 6.0, 10.0})), 1);
    if (test::chance(2))
        circuit.residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    fixture.ruleSet = test::rules(test::chance(2) ? "iec-60364" : "bs-7671-2018");
    if (test::chance(2)) fixture.ruleSet.loopRule = LoopRule::CorrectedReading;
    return fixture;
}

double anyBetween(int low, int high) {
    return *rc::gen::inRange(low * 100, high * 100 + 1) / 100.0;
}

void expectNoBetter(const Finding& less, const Finding& more) {
    if (more.verdict > less.verdict)
        RC_FAIL("less: " + testing::PrintToString(less) + "more: " + testing::PrintToString(more));
}

RC_GTEST_PROP(Direction, AHigherLoopIsNeverBetter, ()) {
    Fixture fixture = anyExact();
    const double low = anyBetween(1, 40) / 10, high = low + anyBetween(0, 4000);
    for (const char* check : {"loop", "disconnection"}) {
        fixture.reading().loopImpedance = read(ohms(low));
        const Finding less = fixture.find(check);
        RC_ASSERT(less.verdict != Verdict::CannotTell);
        fixture.reading().loopImpedance = read(ohms(high));
        expectNoBetter(less, fixture.find(check));
    }
}

RC_GTEST_PROP(Direction, AHigherElectrodeIsNeverBetter, ()) {
    Fixture fixture = anyExact();
    fixture.makeTt();
    const double low = anyBetween(1, 1500), high = low + anyBetween(0, 1000);
    fixture.supplyReading().electrodeResistance = read(ohms(low));
    const Finding less = fixture.find("residual-touch");
    fixture.supplyReading().electrodeResistance = read(ohms(high));
    expectNoBetter(less, fixture.find("residual-touch"));
}

RC_GTEST_PROP(Direction, MoreLoadIsNeverBetter, ()) {
    Fixture fixture = anyExact();
    const double low = anyBetween(1, 40), high = low + anyBetween(0, 40);
    for (const char* check : {"load-device", "load-wiring", "drop"}) {
        fixture.circuit().load = typed(amperes(low), 2);
        const Finding less = fixture.find(check);
        fixture.circuit().load = typed(amperes(high), 2);
        expectNoBetter(less, fixture.find(check));
    }
}

RC_GTEST_PROP(Direction, MoreLengthIsNeverBetter, ()) {
    Fixture fixture = anyExact();
    const double low = anyBetween(1, 100), high = low + anyBetween(0, 200);
    fixture.wiring().length = typed(metres(low), 2);
    const Finding less = fixture.find("drop");
    fixture.wiring().length = typed(metres(high), 2);
    expectNoBetter(less, fixture.find("drop"));
}

RC_GTEST_PROP(Direction, WarmerAndMoreCrowdedIsNeverBetter, ()) {
    Fixture fixture = anyExact();
    const double cool = *rc::gen::inRange(5, 12) * 5,
                 warm = std::min(60.0, cool + *rc::gen::inRange(0, 5) * 5);
    const double few = *rc::gen::inRange(1, 6), many = few + *rc::gen::inRange(0, 4);
    for (const char* check : {"device-wiring", "load-wiring", "conventional"}) {
        fixture.wiring().ambient = typed(celsius(cool));
        fixture.wiring().groupedCircuits = typed(few);
        const Finding less = fixture.find(check);
        fixture.wiring().ambient = typed(celsius(warm));
        fixture.wiring().groupedCircuits = typed(many);
        expectNoBetter(less, fixture.find(check));
    }
}

RC_GTEST_PROP(Direction, AWarmerBoardIsNeverBetterForItsDevices, ()) {
    Fixture fixture = anyExact();
    fixture.circuit().load = typed(amperes(anyBetween(1, 40)), 2);
    const double cool = anyBetween(-10, 60), warm = cool + anyBetween(0, 60);
    fixture.board().ambient = typed(celsius(cool), 2);
    const Finding less = fixture.find("load-device");
    fixture.board().ambient = typed(celsius(warm), 2);
    expectNoBetter(less, fixture.find("load-device"));
}

RC_GTEST_PROP(Direction, MoreCopperIsNeverWorse, ()) {
    Fixture fixture = anyExact();
    const std::vector<double> sizes{1.5, 2.5, 4, 6, 10, 16};
    const auto smaller = *rc::gen::inRange<std::size_t>(0, sizes.size() - 1);
    const auto larger = *rc::gen::inRange<std::size_t>(smaller, sizes.size());
    // So low that every device ends the fault while its heat is still in the conductor.
    fixture.reading().loopImpedance = read(ohms(anyBetween(1, 6) / 10));
    for (const char* check :
         {"adiabatic-line", "adiabatic-protective", "drop", "device-wiring", "load-wiring"}) {
        const auto with = [&](double size) {
            fixture.wiring().lineSize = fixture.wiring().protectiveSize = typed(squareMillimetres(size), 1);
            return fixture.find(check);
        };
        expectNoBetter(with(sizes[larger]), with(sizes[smaller]));
    }
}

RC_GTEST_PROP(Direction, BetterInsulationIsNeverWorse, ()) {
    Fixture fixture;
    const double low = anyBetween(0, 3), high = low + anyBetween(0, 10);
    fixture.reading().insulationEarth = read(megohms(high));
    const Finding better = fixture.find("insulation");
    fixture.reading().insulationEarth = read(megohms(low));
    expectNoBetter(better, fixture.find("insulation"));
}

} // namespace
} // namespace loopwright
