// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/reference/reference_tables.h"

#include <array>
#include <limits>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

/// What ReferenceTables keeps: a struct a room, each a few flat arrays that are filled once by its read
/// function.
namespace loopwright {

struct LoopRow {
    std::string edition;
    Current rated;
    Time time;
    Resistance loop;
    Voltage lineToEarth;
    Ratio voltageFactor = 1;
    bool computed = false; ///< worked out, not printed
    Source source;
};

/// What a test of mcb_trip_limits.csv finds out, as far as it is asked for by itself.
enum class TripTest : std::uint8_t {
    Other,
    ConventionalNonTripping,
    ConventionalTripping,
    ThermalPoint,
    InstantaneousRange,
};

/// A test of mcb_trip_limits.csv.
struct TripRow {
    TripTest test = TripTest::Other;
    Current above, upTo; ///< of the rating that the row holds for
    Ratio low = 0, high = 0;
    std::optional<Time> notBefore, notAfter;
    Source source;
};

/// A published current and time of a fuse of one rating.
struct FusePoint {
    Current rated;
    physics::TimeCurrent point;
    bool isZone = false;           ///< limits at this current, and no point of the slowest fuse's curve
    std::optional<Time> notBefore; ///< of a zone
    Source source;
};

struct FusingRow {
    Current above, upTo;
    std::optional<Ratio> nonFusing;
    Ratio fusing = 0;
    Time conventionalTime;
    Source source;
};

struct GateRow {
    Current rated;
    std::vector<physics::TimeCurrent> notBefore, operatedBy;
    Source source;
};

struct EnergyRow {
    Current above, upTo;
    Current capacity;
    JouleIntegral energy;
    Source source;
};

/// A size that is published as enough behind breakers of some ratings.
struct LeastProtectiveRow {
    Current above, upTo; ///< of the rating
    Current prospective; ///< up to this fault current
    CrossSection size;
    Source source;
};

/// Everything that the tables hold about one family.
struct DeviceData {
    std::vector<LoopRow> loops; ///< by rating, time; editions as in the file
    std::vector<TripRow> trips;
    std::vector<FusePoint> points; ///< by rating; the best source of each time only
    std::vector<FusingRow> fusing;
    std::vector<GateRow> gates;                      ///< by rating
    std::vector<EnergyRow> energies;                 ///< by capacity
    std::vector<LeastProtectiveRow> leastProtective; ///< by prospective current
    std::optional<Sourced<Current>> leastBreaking;
    std::optional<Sourced<Temperature>> calibratedAt;
    std::vector<Current> ratings;
};

struct DeviceTables {
    std::vector<DeviceFamily> families; ///< in the order of the file
    std::vector<DeviceData> data;       ///< of the family in the same place

    static DeviceTables read();
    /// Of a family that came from these tables; one that did not has no data.
    const DeviceData& of(const DeviceFamily& family) const;
};

struct ConductorTables {
    struct ResistanceRow {
        Material material = Material::Copper;
        CrossSection size;
        ResistancePerLength resistance;
        Source source;
    };
    struct FactorRow {
        ConductorRole role = ConductorRole::Line;
        Material material = Material::Copper;
        Insulation insulation = Insulation::Pvc70;
        CrossSection above, upTo; ///< of the conductor
        AdiabaticFactor k;
        Source source;
    };
    struct DropRow {
        Insulation insulation = Insulation::Pvc70;
        bool threePhase = false;
        CrossSection size;
        VoltagePerCurrentLength drop;
        Source source;
    };
    struct LeastRow {
        std::string standard;
        Material material = Material::Copper;
        Sourced<CrossSection> size;
    };
    std::vector<ResistanceRow> resistances; ///< by material, size
    std::vector<LeastRow> leastLines;
    std::vector<FactorRow> factors;
    std::vector<DropRow> drops;                                    ///< by insulation, phases, size
    std::array<Sourced<double>, 2> coefficients;                   ///< by Material
    std::array<Sourced<physics::ConductorConstants>, 2> constants; ///< by Material
    std::array<Sourced<Temperature>, 2> limits;                    ///< by Insulation

    static ConductorTables read();
};

struct CapacityTables {
    struct CapacityRow {
        std::string standard;
        CableKey cable;
        Current capacity;
        Temperature ambient;
        Source source;
    };
    /// A factor that holds up to and including `upTo` of whatever it depends on.
    struct FactorRow {
        std::string kind; ///< which factor, standard and case
        double upTo = 0;
        Ratio factor = 1;
        Source source;
    };
    std::vector<CapacityRow>
        capacities;                 ///< by method, size, material, insulation, loaded conductors, standard
    std::vector<FactorRow> factors; ///< by kind, upTo

    static CapacityTables read();
};

struct LimitTables {
    struct InsulationRow {
        Voltage above;
        std::optional<Voltage> upTo;
        Resistance minimum;
        Source source;
    };
    struct ResidualRow {
        ResidualDelay delay = ResidualDelay::General;
        double multiple = 1;
        ResidualLimit limit;
    };
    struct ExternalLoopRow {
        Earthing earthing = Earthing::Unknown;
        Sourced<Resistance> declared;
    };
    std::vector<InsulationRow> insulation;
    std::vector<ExternalLoopRow> externalLoops;
    Sourced<Resistance> stableElectrode;
    std::vector<ResidualRow> residual;
    std::vector<InspectionItem> items;

    static LimitTables read();
};

/// What holds for breakers whatever their family.
struct BreakerTables {
    struct AmbientRow {
        Current rated;
        Temperature calibratedAt, ambient;
        Ratio factor = 1;
        Source source;
    };
    struct GroupingRow {
        double upTo = 0; ///< adjacent breakers; the last row has no end
        Ratio factor = 1;
        Source source;
    };
    struct SpreadRow {
        std::string quantity;
        physics::Spread spread;
        Source source;
    };
    struct ConventionalRow {
        Current above, upTo; ///< of the overload setting
        physics::Spread spread;
        Time time;
        Source source;
    };
    std::vector<AmbientRow> ambient; ///< by rating, ambient
    std::vector<GroupingRow> grouping;
    std::vector<SpreadRow> spreads;
    std::vector<Sourced<Ratio>> settings;      ///< of I_n, smallest first
    std::vector<ConventionalRow> conventional; ///< IEC 60947-2
    Sourced<physics::Spread> instantaneous;
    Time instantaneousTime;
    std::vector<NamedCurve> curves;

    static BreakerTables read();
};

struct SelectivityTables {
    struct EnergyRow {
        Current rated;
        Sourced<FuseEnergy> energy;
    };
    struct BackUpRow {
        std::vector<std::string> upstream; ///< families
        Current upTo;                      ///< of their ratings
        Current leastCapacity;             ///< that the fuse breaks itself
        Sourced<Current> combined;
    };
    std::vector<EnergyRow> energies; ///< by rating
    std::vector<BackUpRow> backUps;
    Sourced<Ratio> fuseRatio, residualRatio;

    static SelectivityTables read();
};

struct DemandTables {
    struct AllowanceRow {
        std::string premises, load;
        Sourced<physics::Allowance> allowance;
    };
    struct SimultaneityRow {
        std::string kind;
        int from = 0;
        std::optional<int> upTo;
        Sourced<Ratio> factor;
    };
    std::vector<AllowanceRow> allowances;
    std::vector<SimultaneityRow> simultaneity;
    std::vector<std::string> premises, loads; ///< in the order of the file

    static DemandTables read();
};

/// Guidance and bands of judgement.
struct PracticeTables {
    struct ResidualTypeRow {
        EquipmentKind kind = EquipmentKind::Unknown;
        bool onePhase = true;
        bool threePhase = true;
        ResidualTypeNeed need;
    };
    /// A share of the size that it goes by, within bounds.
    struct MainConductorRow {
        std::string standard;
        MainConductor conductor = MainConductor::Earthing;
        std::optional<Earthing> earthing; ///< nothing: any
        CrossSection above;
        CrossSection upTo;
        double share = 0;
        CrossSection least;
        CrossSection most{std::numeric_limits<double>::infinity()};
        Source source;
    };
    std::vector<Sourced<double>> bands;         ///< in the order of Band
    std::vector<Sourced<double>> uncertainties; ///< in the order of Measurand, as shares
    std::vector<ResidualTypeRow> residualTypes;
    std::vector<MainConductorRow> mainConductors;

    static PracticeTables read();
};

/// What warms and ages behind a device.
struct HeatTables {
    struct AroundRow {
        Insulation insulation = Insulation::Pvc70;
        CrossSection size;
        Sourced<double> heat; ///< J/(K m) a loaded conductor
    };
    std::vector<AroundRow> around;                  ///< in the order of the file
    std::array<Sourced<InsulationLife>, 2> lives{}; ///< by Insulation

    static HeatTables read();
};

/// Times of devices that have been asked for, by family and rating; nothing where nothing is promised.
struct KnownDeviceTimes {
    std::mutex mutex;
    std::map<std::pair<const DeviceData*, double>, std::optional<Sourced<physics::DeviceTimes>>> times;
};

/// Devices whose replicas have been asked for, by family, rating (or setting), delay (0: none) and
/// frame.
struct KnownThermalDevices {
    using Key = std::tuple<std::string, double, double, double>;
    std::mutex mutex;
    std::map<Key, std::unique_ptr<const ThermalDevice>> devices;
    /// Replicas of a device of 1 A, by its limits. Those of all breakers of one standard are a few, whatever
    /// their ratings and settings.
    std::map<std::vector<double>, physics::ReplicaSet> ofOneAmpere;
};

struct ReferenceTables::Tables {
    DeviceTables devices = DeviceTables::read();
    ConductorTables conductors = ConductorTables::read();
    CapacityTables capacities = CapacityTables::read();
    LimitTables limits = LimitTables::read();
    BreakerTables breakers = BreakerTables::read();
    SelectivityTables selectivity = SelectivityTables::read();
    DemandTables demand = DemandTables::read();
    PracticeTables practice = PracticeTables::read();
    HeatTables heat = HeatTables::read();
    KnownDeviceTimes deviceTimes;
    KnownThermalDevices thermalDevices;
};

} // namespace loopwright
