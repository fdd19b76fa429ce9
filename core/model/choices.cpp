// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/choices.h"

#include <array>

namespace loopwright {
namespace {

template <class E>
constexpr Choice choice(E value, std::string_view key) {
    return {static_cast<std::uint8_t>(value), key};
}

} // namespace

#define LOOPWRIGHT_CHOICES(ENUM, NAME, ...)                                                                  \
    template <>                                                                                              \
    const ChoiceList& choicesOf<ENUM>() {                                                                    \
        using enum ENUM;                                                                                     \
        static constexpr std::array choices{__VA_ARGS__};                                                    \
        static constexpr ChoiceList list{NAME, choices};                                                     \
        return list;                                                                                         \
    }

LOOPWRIGHT_CHOICES(Earthing, "earthing", choice(Unknown, "unknown"), choice(TnS, "tn-s"),
                   choice(TnCS, "tn-c-s"), choice(Tt, "tt"))
LOOPWRIGHT_CHOICES(BoardEarthing, "board-earthing", choice(FromSupply, "from-supply"),
                   choice(OwnElectrode, "own-electrode"))
LOOPWRIGHT_CHOICES(Phases, "phases", choice(L1, "L1"), choice(L2, "L2"), choice(L3, "L3"),
                   choice(Three, "three"))
LOOPWRIGHT_CHOICES(CircuitUse, "circuit-use", choice(Sockets, "sockets"), choice(Fixed, "fixed"),
                   choice(Lighting, "lighting"), choice(Distribution, "distribution"), choice(Spare, "spare"))
LOOPWRIGHT_CHOICES(EquipmentKind, "equipment-kind", choice(Unknown, "unknown"), choice(General, "general"),
                   choice(Lighting, "lighting"), choice(SocketFed, "socket-fed"), choice(Cooker, "cooker"),
                   choice(InductionHob, "induction-hob"), choice(InstantaneousHeater, "instantaneous-heater"),
                   choice(StoredHeater, "stored-heater"), choice(SpaceHeating, "space-heating"),
                   choice(StorageHeating, "storage-heating"), choice(FloorHeating, "floor-heating"),
                   choice(Motor, "motor"), choice(Drive, "drive"), choice(EvCharging, "ev-charging"),
                   choice(PvInverter, "pv-inverter"))
LOOPWRIGHT_CHOICES(Topology, "topology", choice(Radial, "radial"), choice(Ring, "ring"))
LOOPWRIGHT_CHOICES(Material, "material", choice(Copper, "copper"), choice(Aluminium, "aluminium"))
LOOPWRIGHT_CHOICES(Insulation, "insulation", choice(Pvc70, "pvc-70"), choice(Xlpe90, "xlpe-90"))
LOOPWRIGHT_CHOICES(ProtectiveConductor, "protective-conductor", choice(InCable, "in-cable"),
                   choice(Separate, "separate"), choice(Armour, "armour"), choice(Conduit, "conduit"))
LOOPWRIGHT_CHOICES(InstallationMethod, "method", choice(Unknown, "unknown"), choice(A1, "A1"),
                   choice(A2, "A2"), choice(B1, "B1"), choice(B2, "B2"), choice(C, "C"), choice(D1, "D1"),
                   choice(D2, "D2"), choice(E, "E"), choice(Flat100, "100"), choice(Flat101, "101"),
                   choice(Flat102, "102"), choice(Flat103, "103"))
LOOPWRIGHT_CHOICES(ResidualType, "residual-type", choice(Unknown, "unknown"), choice(AC, "AC"),
                   choice(A, "A"), choice(F, "F"), choice(B, "B"))
LOOPWRIGHT_CHOICES(ResidualDelay, "residual-delay", choice(General, "general"), choice(Delayed, "delayed"))
LOOPWRIGHT_CHOICES(Occupancy, "occupancy", choice(Unknown, "unknown"), choice(Dwelling, "dwelling"),
                   choice(SmallBusiness, "small-business"), choice(Lodging, "lodging"))
LOOPWRIGHT_CHOICES(VisitKind, "visit-kind", choice(Periodic, "periodic"), choice(First, "first"),
                   choice(AfterAlteration, "after-alteration"))
LOOPWRIGHT_CHOICES(VisitState, "visit-state", choice(Open, "open"), choice(Issued, "issued"))
LOOPWRIGHT_CHOICES(TestOutcome, "test-outcome", choice(NotDone, "not-done"), choice(Correct, "correct"),
                   choice(Wrong, "wrong"), choice(Limited, "limited"),
                   choice(NotApplicable, "not-applicable"))
LOOPWRIGHT_CHOICES(InspectionResult, "inspection-result", choice(NotLooked, "not-looked"),
                   choice(InOrder, "in-order"), choice(Observed, "observed"), choice(Limited, "limited"),
                   choice(NotApplicable, "not-applicable"))
LOOPWRIGHT_CHOICES(Grade, "grade", choice(MakeSafe, "make-safe"), choice(PutRight, "put-right"),
                   choice(LookFurther, "look-further"), choice(WorthImproving, "worth-improving"))

} // namespace loopwright
