// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/core/fixture.h"

#include <rapidcheck/gtest.h>

/// Installations in which anything may stand in any field, for tests of what must hold whatever is recorded.
namespace loopwright::test {

/// One of `values`, or a figure that is missing, limited, not applicable, beyond range, or not a figure at
/// all.
template <class Q>
Entry<Q> anyEntry(std::initializer_list<double> values, double unit = 1) {
    const double value = *rc::gen::elementOf(std::vector<double>(values)) * unit;
    const int kind = *rc::gen::inRange(0, 24);
    switch (kind) {
    case 0:
    case 1:
        return {};
    case 2:
        return limited<Q>("locked");
    case 3:
        return notApplicable<Q>();
    case 4:
        return above(Q(value));
    case 5:
        return below(Q(value));
    case 6:
        return Entry<Q>::of(Q(std::numeric_limits<double>::quiet_NaN()), 1);
    case 7:
        return Entry<Q>::of(Q(0), 0);
    default:
        return Entry<Q>::of(Q(value), 1, static_cast<Origin>(kind % 5));
    }
}
template <class E>
E anyOf(std::initializer_list<E> values) {
    return *rc::gen::elementOf(std::vector<E>(values));
}
inline bool chance(int oneIn) {
    return *rc::gen::inRange(0, oneIn) == 0;
}

inline ResidualDevice anyResidual() {
    return {chance(2), anyEntry<Current>({0.03, 0.1, 0.3}), ResidualType::A,
            chance(4) ? ResidualDelay::Delayed : ResidualDelay::General};
}
inline Device anyDevice() {
    Device device{anyOf<std::string>({"60898-B", "60898-C", "61009-B", "88-2", "88-3", "1361", "3036",
                                      "3871-2", "1362", "60947-2", ""}),
                  anyEntry<Current>({5, 6, 10, 16, 20, 30, 32, 45, 63, 33.3}),
                  anyEntry<Current>({1, 3, 6, 10, 80}, 1000)};
    if (device.family != "60947-2") return device;
    device.thermalSetting = anyEntry<Current>({16, 40, 63});
    device.thermalDelay = anyEntry<Time>({2, 8});
    device.shortTimeSetting = anyEntry<Current>({200, 500});
    device.shortTimeDelay = anyEntry<Time>({0, 0.1, 0.3});
    device.instantaneousSetting = anyEntry<Current>({300, 1000});
    return device;
}
inline Wiring anyWiring() {
    using enum InstallationMethod;
    Wiring wiring;
    wiring.material = chance(5) ? Material::Aluminium : Material::Copper;
    wiring.insulation = chance(3) ? Insulation::Xlpe90 : Insulation::Pvc70;
    wiring.method = anyOf({Unknown, A1, B1, B2, C, D1, E, Flat101, Flat103});
    wiring.lineSize = anyEntry<CrossSection>({1, 1.5, 2.5, 4, 6, 10, 16, 35, 2.7});
    wiring.protectiveSize = anyEntry<CrossSection>({1, 1.5, 2.5, 4, 16});
    wiring.protectiveConductor =
        anyOf({ProtectiveConductor::InCable, ProtectiveConductor::Separate, ProtectiveConductor::Armour});
    wiring.length = anyEntry<Length>({5, 20, 80, 300});
    if (chance(3)) wiring.ambient = anyEntry<Temperature>({-5, 20, 35, 45, 90});
    if (chance(3)) wiring.groupedCircuits = anyEntry<Ratio>({1, 2, 4, 7, 40});
    if (chance(4)) wiring.insulatedLength = anyEntry<Length>({0, 0.1, 0.4, 3});
    if (chance(3)) wiring.soilResistivity = anyEntry<ThermalResistivity>({0.4, 1, 2.5, 2.8, 4});
    if (chance(6)) wiring.parallelConductors = anyEntry<Ratio>({1, 2});
    return wiring;
}
inline TestOutcome anyOutcome() {
    using enum TestOutcome;
    return anyOf({NotDone, Correct, Correct, Correct, Wrong, Limited, NotApplicable});
}

/// Changes whatever a check may look at.
inline void scramble(Fixture& fixture) {
    Circuit& circuit = fixture.circuit();
    circuit.use = static_cast<CircuitUse>(*rc::gen::inRange(0, 5));
    circuit.topology = chance(3) ? Topology::Ring : Topology::Radial;
    circuit.phases = chance(3) ? Phases::Three : Phases::L2;
    circuit.device = anyDevice();
    circuit.residual = anyResidual();
    circuit.wiring = anyWiring();
    circuit.load = anyEntry<Current>({3, 13, 25, 32, 60});
    circuit.outdoors = chance(4);
    circuit.generalSockets = !chance(4);
    if (chance(2)) {
        Equipment& equipment = fixture.addEquipment("Heater", watts(3000));
        equipment.kind = static_cast<EquipmentKind>(*rc::gen::inRange(0, 15));
        equipment.count = anyEntry<Ratio>({1, 2, 5});
        equipment.power = anyEntry<Power>({500, 3600, 12000});
        equipment.ratedVoltage = anyEntry<Voltage>({230, 240, 400});
        if (chance(2)) equipment.onTime = anyEntry<Time>({5, 240, 3600});
        if (chance(2)) equipment.offTime = anyEntry<Time>({1, 600, 86400});
        equipment.current = chance(2) ? anyEntry<Current>({4, 14}) : Entry<Current>{};
        equipment.efficiency = anyEntry<Ratio>({0.8, 1, 85});
        equipment.powerFactor = anyEntry<Ratio>({0.8, 1, 95});
        equipment.startMultiple = anyEntry<Ratio>({2, 6, 12});
        equipment.plugFuse = anyEntry<Current>({3, 5, 13});
    }
    fixture.installation.site.occupancy = static_cast<Occupancy>(*rc::gen::inRange(0, 4));
    if (chance(4)) circuit.demand = anyEntry<Current>({0, 8, 50});
    fixture.supply().fuse = anyDevice();
    fixture.supply().tails = anyEntry<CrossSection>({10, 25, 95, 26});
    if (chance(4)) fixture.supply().demand = anyEntry<Current>({0, 40, 70});
    fixture.supply().earthing = static_cast<Earthing>(*rc::gen::inRange(0, 4));
    fixture.supply().nominalVoltage = anyEntry<Voltage>({120, 230, 240, 600});
    fixture.board().earthing = chance(4) ? BoardEarthing::OwnElectrode : BoardEarthing::FromSupply;
    fixture.board().residual = anyResidual();
    fixture.board().phases = chance(2) ? Phases::Three : Phases::L1;
    fixture.board().withstandCurrent = anyEntry<Current>({2, 10}, 1000);
    fixture.board().ratedCurrent = anyEntry<Current>({32, 63, 100});
    if (chance(2)) fixture.board().ambient = anyEntry<Temperature>({-5, 25, 35, 45, 55, 90});

    CircuitReading& reading = fixture.reading();
    for (const auto member : {&CircuitReading::ringLine, &CircuitReading::ringNeutral,
                              &CircuitReading::ringProtective, &CircuitReading::continuity})
        reading.*member = anyEntry<Resistance>({0.26, 0.4, 0.65, 2});
    for (const auto member : {&CircuitReading::insulationLive, &CircuitReading::insulationEarth})
        reading.*member = anyEntry<Resistance>({0.3, 1.02, 80, 999}, 1e6);
    for (const auto member : {&CircuitReading::residualTime, &CircuitReading::residualTimeFive})
        reading.*member = anyEntry<Time>({20, 39, 140, 295, 600}, 1e-3);
    reading.polarity = anyOutcome();
    reading.residualButton = anyOutcome();
    reading.loopImpedance = anyEntry<Resistance>({0.05, 0.3, 0.9, 1.7, 4, 120});
    reading.prospectiveFaultCurrent = chance(2) ? anyEntry<Current>({0.4, 2, 9}, 1000) : Entry<Current>{};
    reading.measuredLoad = chance(2) ? anyEntry<Current>({2, 18, 40}) : Entry<Current>{};

    BoardReading& board = fixture.boardReading();
    board.loopImpedance = anyEntry<Resistance>({0.1, 0.4});
    if (chance(2)) board.neutralLoopImpedance = anyEntry<Resistance>({0.08, 0.3});
    board.prospectiveFaultCurrent = anyEntry<Current>({1, 4, 12}, 1000);
    board.electrodeResistance = anyEntry<Resistance>({20, 198, 900});
    board.residualTime = anyEntry<Time>({0.02, 0.4});
    board.polarity = board.phaseSequence = anyOutcome();
    SupplyReading& supply = fixture.supplyReading();
    supply.externalLoopImpedance = anyEntry<Resistance>({0.1, 0.34, 0.7});
    supply.prospectiveFaultCurrent = anyEntry<Current>({1, 4, 12}, 1000);
    supply.electrodeResistance = anyEntry<Resistance>({20, 198, 2000});
    supply.polarity = supply.phaseSequence = anyOutcome();
    if (chance(5)) fixture.installation.circuitReadings.clear();
    if (chance(5)) fixture.installation.boardReadings.clear();
    if (chance(8)) fixture.installation.supplies.clear();
    if (chance(2)) {
        Circuit& second = fixture.addCircuit(static_cast<Phases>(*rc::gen::inRange(0, 4)), amperes(10));
        second.use = static_cast<CircuitUse>(*rc::gen::inRange(0, 5));
        second.load = anyEntry<Current>({0, 9, 40});
        second.takenOut = chance(4);
    }
    if (chance(2)) {
        Circuit& feeder = fixture.nest();
        feeder.device = anyDevice();
        feeder.wiring = anyWiring();
        feeder.load = anyEntry<Current>({10, 40});
        if (chance(3)) feeder.demand = anyEntry<Current>({0, 20, 80});
        if (chance(3)) feeder.phases = Phases::L2;
        feeder.residual = anyResidual();
    }
    fixture.ruleSet = rules(chance(2) ? "iec-60364" : "bs-7671-2018");
    if (chance(3)) fixture.ruleSet.loopRule = LoopRule::CorrectedReading;
}

} // namespace loopwright::test
