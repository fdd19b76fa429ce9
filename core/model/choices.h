// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace loopwright {

/// How the exposed parts are earthed (IEC 60364-1, 312.2).
enum class Earthing : std::uint8_t { Unknown, TnS, TnCS, Tt };
/// How a board takes its earth.
enum class BoardEarthing : std::uint8_t { FromSupply, OwnElectrode };
enum class Phases : std::uint8_t { L1, L2, L3, Three };
/// What a circuit is for; decides the disconnection time and which checks apply.
enum class CircuitUse : std::uint8_t {
    Sockets,      ///< a final circuit with socket-outlets
    Fixed,        ///< a final circuit that feeds only fixed equipment
    Lighting,     ///< a final circuit for lights
    Distribution, ///< feeds another board
    Spare,        ///< a way without a circuit
};
/// What equipment is, as far as published demand allowances and the kind of residual current that it can feed
/// depend on it.
enum class EquipmentKind : std::uint8_t {
    Unknown,
    General, ///< none of those below
    Lighting,
    SocketFed, ///< an appliance on a plug
    Cooker,
    InductionHob,
    InstantaneousHeater, ///< heats water as it runs
    StoredHeater,        ///< heats a cylinder of water
    SpaceHeating,        ///< direct: draws while it heats
    StorageHeating,      ///< draws for hours in a run, often at night, and all of it together
    FloorHeating,
    Motor,
    Drive, ///< a motor with a frequency converter
    EvCharging,
    PvInverter,
};
enum class Topology : std::uint8_t { Radial, Ring };
enum class Material : std::uint8_t { Copper, Aluminium };
enum class Insulation : std::uint8_t { Pvc70, Xlpe90 };
/// Where the protective conductor runs, which decides its k.
enum class ProtectiveConductor : std::uint8_t { InCable, Separate, Armour, Conduit };
/// The reference method of installation (IEC 60364-5-52, table B.52.1; the flat-cable methods of BS 7671,
/// table 4D5).
enum class InstallationMethod : std::uint8_t {
    Unknown,
    A1,
    A2,
    B1,
    B2,
    C,
    D1,
    D2,
    E,
    Flat100,
    Flat101,
    Flat102,
    Flat103
};
enum class ResidualType : std::uint8_t { Unknown, AC, A, F, B };
enum class ResidualDelay : std::uint8_t { General, Delayed };
/// The kind of premises, as the columns of published demand allowances part them.
enum class Occupancy : std::uint8_t {
    Unknown,
    Dwelling,
    SmallBusiness, ///< shops, offices, small workshops
    Lodging,       ///< hotels, guest houses
};
enum class VisitKind : std::uint8_t { Periodic, First, AfterAlteration };
enum class VisitState : std::uint8_t { Open, Issued };
/// A test that is passed or not, without a figure.
enum class TestOutcome : std::uint8_t { NotDone, Correct, Wrong, Limited, NotApplicable };
enum class InspectionResult : std::uint8_t { NotLooked, InOrder, Observed, Limited, NotApplicable };
/// Our four grades, most urgent first.
enum class Grade : std::uint8_t { MakeSafe, PutRight, LookFurther, WorthImproving };

/// One value of a choice as files and the workbook write it. People read the phrase "choice.<list>.<key>".
struct Choice {
    std::uint8_t value;
    std::string_view key;
};

/// A named list of choices, in the order in which a form offers them.
struct ChoiceList {
    std::string_view name; ///< "earthing"
    std::span<const Choice> choices;
};

/// The list that belongs to the enumeration E.
template <class E>
const ChoiceList& choicesOf();

/// The key of one value: "tn-c-s".
template <class E>
std::string_view choiceKey(E value) {
    for (const Choice& choice : choicesOf<E>().choices)
        if (choice.value == static_cast<std::uint8_t>(value)) return choice.key;
    return {};
}

} // namespace loopwright
