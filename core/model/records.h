// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/choices.h"
#include "core/model/id.h"
#include "core/units/entry.h"

#include <chrono>
#include <optional>
#include <string>

/// What is recorded. Each struct is one row of the workbook; embedded structs (Device, Wiring,
/// ResidualDevice) are columns of the row that holds them. core/model/fields.h gives every member its key,
/// unit and kind.
namespace loopwright {

using Date = std::chrono::year_month_day;

struct Site {
    Id id;
    std::string name;
    std::string description; ///< "former ropeworks, let to makers"
    std::string address;
    std::string client;
    std::string premises;                     ///< what it is used for; decides the usual interval
    Occupancy occupancy = Occupancy::Unknown; ///< which column of published demand allowances counts
    std::string notes;
    friend bool operator==(const Site&, const Site&) = default;
};

/// An overcurrent device. `family` is a row of resources/reference/device_families.csv ("60898-B", "88-3",
/// "3036").
struct Device {
    std::string family; ///< empty: not known
    Entry<Current> ratedCurrent;
    Entry<Current> breakingCapacity;
    // Settings of an adjustable circuit-breaker (IEC 60947-2); of any other device missing.
    Entry<Current> thermalSetting;       ///< I_r; missing: its rated current
    Entry<Time> thermalDelay;            ///< t_r, at 6 I_r
    Entry<Current> shortTimeSetting;     ///< I_sd; missing: it has no short-time stage
    Entry<Time> shortTimeDelay;          ///< t_sd
    Entry<Current> instantaneousSetting; ///< I_i
    friend bool operator==(const Device&, const Device&) = default;
};

/// A residual current device, alone or as part of an RCBO. Not fitted while `fitted` is false.
struct ResidualDevice {
    bool fitted = false;
    Entry<Current> residualCurrent; ///< rated residual operating current, I_delta_n
    ResidualType type = ResidualType::Unknown;
    ResidualDelay delay = ResidualDelay::General;
    friend bool operator==(const ResidualDevice&, const ResidualDevice&) = default;
};

struct Wiring {
    std::string description; ///< what a person calls it: "flat twin with earth"
    Material material = Material::Copper;
    Insulation insulation = Insulation::Pvc70;
    InstallationMethod method = InstallationMethod::Unknown;
    Entry<CrossSection> lineSize;
    Entry<CrossSection>
        protectiveSize; ///< the protective conductor's; N/A where the armour or conduit serves
    ProtectiveConductor protectiveConductor = ProtectiveConductor::InCable;
    Entry<Length> length;
    Entry<Temperature> ambient;      ///< around the cable; missing: the table's own reference temperature
    Entry<Ratio> groupedCircuits;    ///< circuits bunched together, this one included; missing: alone
    Entry<Length> insulatedLength;   ///< longest run wholly inside thermal insulation; missing: none
    Entry<Ratio> parallelConductors; ///< conductors in parallel a phase; missing: one
    Entry<ThermalResistivity> soilResistivity; ///< around a buried cable; missing: the table's own reference
    friend bool operator==(const Wiring&, const Wiring&) = default;
};

struct Supply {
    Id id;
    Id site;
    Earthing earthing = Earthing::Unknown;
    Phases phases = Phases::Three;
    Entry<Voltage> nominalVoltage; ///< line to earth, U0
    Device fuse;                   ///< the distributor's
    Entry<CrossSection> tails;
    Entry<CrossSection> earthingConductor;
    Entry<CrossSection> mainBonding;
    Entry<Current> demand; ///< the inspector's own figure; missing: by the published allowances
    std::string earthedBy; ///< "distributor's earth terminal at the intake"
    std::string notes;
    friend bool operator==(const Supply&, const Supply&) = default;
};

struct Board {
    Id id;
    Id site;
    std::string name;        ///< "Board C"
    std::string description; ///< "kiln room and long walk"
    std::string location;
    Id fedFrom; ///< the circuit that feeds it; none: fed from the supply
    BoardEarthing earthing = BoardEarthing::FromSupply;
    Phases phases = Phases::Three;
    Entry<Current> ratedCurrent;
    Entry<Current> withstandCurrent; ///< the prospective current it may be used at
    Entry<Temperature> ambient;      ///< around the devices inside; missing: what they are calibrated for
    ResidualDevice residual;         ///< one that serves the whole board
    std::string notes;
    friend bool operator==(const Board&, const Board&) = default;
};

struct Circuit {
    Id id;
    Id board;
    std::string way;     ///< "1", "F1", "4 L2"
    std::string name;    ///< "Kiln, glaze room"
    std::string section; ///< heading that this way stands under on the board's sheet; empty: the first block
    CircuitUse use = CircuitUse::Fixed;
    Topology topology = Topology::Radial;
    Phases phases = Phases::L1;
    Entry<Ratio> points;
    Device device;
    ResidualDevice residual;
    Wiring wiring;
    Entry<Current> load;   ///< design current I_b; missing: worked out from the equipment
    Entry<Current> demand; ///< its share of the board's demand by the inspector's own figure, of a circuit
                           ///< that feeds a board the demand of that; missing: by the published allowances
    std::optional<Date> deviceSince; ///< day on which its device was fitted; missing: not known
    std::optional<Date> wiringSince; ///< day on which its wiring was put in; missing: not known
    bool takenOut = false;           ///< taken out of use: its checks do not apply
    bool outdoors = false;           ///< sockets or equipment used outdoors
    bool generalSockets = true;      ///< sockets for use by anyone; asks for 30 mA residual protection
    std::string notes;
    friend bool operator==(const Circuit&, const Circuit&) = default;
};

/// Whether there is a circuit to judge: neither a spare way nor taken out of use.
inline bool isInUse(const Circuit& circuit) {
    return circuit.use != CircuitUse::Spare && !circuit.takenOut;
}

/// A piece of current-using equipment, or several alike.
struct Equipment {
    Id id;
    Id circuit;
    std::string name;
    EquipmentKind kind = EquipmentKind::Unknown;
    Entry<Ratio> count; ///< how many alike; missing: one
    Entry<Power> power; ///< electrical input, or shaft output when an efficiency is given
    Entry<Voltage> ratedVoltage;
    Entry<Current> current;   ///< from the plate or a clamp; goes before `power`
    Entry<Ratio> powerFactor; ///< missing: 1
    Entry<Ratio> efficiency;  ///< of a motor; missing: `power` is what it draws
    Entry<Ratio> startMultiple;
    Entry<Time> onTime; ///< of its duty cycle; missing: runs without end
    Entry<Time> offTime;
    Entry<Current> plugFuse; ///< rating of the BS 1362 fuse in its plug or fused outlet; missing or N/A: none
    bool fixed = true;
    std::optional<Date> since; ///< day on which it came into use; missing: not known
    std::string notes;
    friend bool operator==(const Equipment&, const Equipment&) = default;
};

struct Visit {
    Id id;
    Id site;
    std::string label; ///< "2026, periodic"
    VisitKind kind = VisitKind::Periodic;
    VisitState state = VisitState::Open;
    std::optional<Date> started;
    std::optional<Date> ended;
    std::string inspector;
    std::string ruleSet; ///< "bs-7671-2018"
    std::string ruleSetRevision;
    std::string extent;                      ///< what was covered
    std::string limitations;                 ///< what was not, and why
    Entry<Temperature> conductorTemperature; ///< at which continuity was read; missing: the rule set's
    std::optional<Date> nextDue;
    std::string notes;
    friend bool operator==(const Visit&, const Visit&) = default;
};

struct Instrument {
    Id id;
    Id visit;
    std::string name; ///< "Tester 2"
    std::string serial;
    std::string measures; ///< "loop, RCD, insulation, continuity"
    std::optional<Date> calibrationDue;
    // How far a reading may be off, as a share of it; missing: the limit of IEC 61557.
    Entry<Ratio> continuityUncertainty;
    Entry<Ratio> insulationUncertainty;
    Entry<Ratio> loopUncertainty;
    Entry<Ratio> residualTimeUncertainty;
    Entry<Ratio> electrodeUncertainty;
    Entry<Ratio> currentUncertainty;
    // As far as it is good for; missing: not said.
    Entry<Resistance> continuityFrom;
    Entry<Resistance> loopFrom;
    Entry<Resistance> insulationTo;
    Entry<Current> currentTo;
    friend bool operator==(const Instrument&, const Instrument&) = default;
};

struct SupplyReading {
    Id id;
    Id visit;
    Id supply;
    Entry<Resistance> externalLoopImpedance; ///< Z_e
    Entry<Resistance> neutralLoopImpedance;  ///< line to neutral
    Entry<Current> prospectiveFaultCurrent;
    Entry<Resistance> electrodeResistance;
    Entry<Voltage> voltage;
    TestOutcome polarity = TestOutcome::NotDone;
    TestOutcome phaseSequence = TestOutcome::NotDone;
    std::string remark;
    friend bool operator==(const SupplyReading&, const SupplyReading&) = default;
};

struct BoardReading {
    Id id;
    Id visit;
    Id board;
    Entry<Resistance> loopImpedance;        ///< Z_db
    Entry<Resistance> neutralLoopImpedance; ///< line to neutral
    Entry<Current> prospectiveFaultCurrent;
    Entry<Resistance> electrodeResistance; ///< R_A of its own electrode
    TestOutcome polarity = TestOutcome::NotDone;
    TestOutcome phaseSequence = TestOutcome::NotDone;
    Entry<Time> residualTime;     ///< of the board's residual device at its rated residual current
    Entry<Time> residualTimeFive; ///< at five times that current
    TestOutcome residualHalf = TestOutcome::NotDone; ///< Correct: it did not operate at half that current
    std::string remark;
    friend bool operator==(const BoardReading&, const BoardReading&) = default;
};

/// One circuit's readings in one visit.
struct CircuitReading {
    Id id;
    Id visit;
    Id circuit;
    Entry<Resistance> ringLine;        ///< r_1, end to end
    Entry<Resistance> ringNeutral;     ///< r_n
    Entry<Resistance> ringProtective;  ///< r_2
    Entry<Resistance> continuity;      ///< R_1 + R_2
    Entry<Resistance> insulationLive;  ///< between live conductors
    Entry<Resistance> insulationEarth; ///< live conductors to earth
    TestOutcome polarity = TestOutcome::NotDone;
    Entry<Resistance> loopImpedance;        ///< Z_s
    Entry<Current> prospectiveFaultCurrent; ///< at the circuit's own device; missing: the board's counts
    Entry<Time> residualTime;               ///< of the circuit's residual device at I_delta_n
    Entry<Time> residualTimeFive;           ///< at 5 I_delta_n
    TestOutcome residualHalf = TestOutcome::NotDone; ///< Correct: it did not operate at I_delta_n / 2
    TestOutcome residualButton = TestOutcome::NotDone;
    Entry<Current>
        measuredLoad; ///< by clamp, all equipment running; goes before every other figure of the load
    std::string remark;
    friend bool operator==(const CircuitReading&, const CircuitReading&) = default;
};

struct InspectionOutcome {
    Id id;
    Id visit;
    std::string item; ///< a row of resources/reference/inspection_items.csv
    InspectionResult result = InspectionResult::NotLooked;
    std::string remark;
    friend bool operator==(const InspectionOutcome&, const InspectionOutcome&) = default;
};

struct Observation {
    Id id;
    Id visit;
    Id board;   ///< none: about the site
    Id circuit; ///< none: about the board
    Grade grade = Grade::LookFurther;
    std::string text;
    std::string place;  ///< where exactly, when board and circuit do not say it
    std::string action; ///< what to do, verb first
    std::string byWhen;
    std::string whoActs;
    std::optional<Date> putRight;
    friend bool operator==(const Observation&, const Observation&) = default;
};

/// A picture that belongs to an observation. The bytes are content-addressed and live outside the journal.
struct Photo {
    Id id;
    Id observation;
    std::string digest; ///< SHA-256 of the bytes, 64 hexadecimal digits
    std::string mediaType;
    std::string caption;
    friend bool operator==(const Photo&, const Photo&) = default;
};

/// What a logger wrote about a circuit's current. The bytes are content-addressed and live outside the
/// journal, as those of photos do.
struct CurrentLog {
    Id id;
    Id reading;
    std::string name;    ///< "kiln, three firings"
    std::string channel; ///< name of the column that counts; empty: the first
    std::string digest;  ///< SHA-256 of the bytes, 64 hexadecimal digits
    std::string mediaType;
    std::string notes;
    friend bool operator==(const CurrentLog&, const CurrentLog&) = default;
};

} // namespace loopwright
