// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/records.h"
#include "core/physics/adjustable_breaker.h"
#include "core/physics/conforming.h"
#include "core/physics/demand.h"
#include "core/physics/heat.h"
#include "core/physics/inverse_time.h"
#include "core/physics/time_current.h"
#include "core/reference/practice.h"
#include "core/reference/source.h"
#include "core/units/quantity.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Published tables as look-ups. Every look-up returns the figure with the row's source, so that it travels
/// with it, and nothing when the table has no such row: no look-up extrapolates.
namespace loopwright {

struct RuleSet;

template <class T>
struct Sourced {
    T value{};
    Source source;
};

enum class DeviceKind : std::uint8_t { Breaker, Rcbo, CartridgeFuse, RewirableFuse, PlugFuse };

/// A row of device_families.csv: how a family is called and under which names the other tables keep it.
struct DeviceFamily {
    std::string key;        ///< "60898-B"
    std::string label;      ///< "IEC 60898 type B"
    std::string shortLabel; ///< on a sheet, before the rating: "B", "fuse"
    DeviceKind kind = DeviceKind::Breaker;
    std::vector<std::string> loopDevices;   ///< `device` in max_zs.csv; editions name it differently
    std::string loopType;                   ///< `type` in max_zs.csv
    std::string tripStandard;               ///< `standard` in mcb_trip_limits.csv; empty for fuses
    std::string tripType;                   ///< `type` there
    std::string energyStandard;             ///< `standard` in energy_let_through.csv; empty: no class limits
    std::vector<std::string> fuseStandards; ///< `device_standard` in uk_fuse_time_current.csv, best first
    std::vector<std::string> fusingStandards;   ///< `device_standard` in fusing_factors.csv
    std::vector<std::string> breakingStandards; ///< `device_standard` in breaking_capacity.csv
    bool gates = false;                         ///< holds the gates of fuse_gg_gates.csv
    bool legacy = false;     ///< not fitted in new work: its standard is withdrawn, or practice has left it
    bool adjustable = false; ///< operates by its settings; has no preferred ratings
};

/// The currents at which a device need not and must operate within the conventional time.
struct ConventionalCurrents {
    std::optional<Ratio> nonOperatingMultiple; ///< of I_n; nothing where the standard gives none
    Ratio operatingMultiple = 0;
    std::optional<Time> conventionalTime;
    Source source;
};

/// The band of a quick release of a breaker, in multiples of the rated current.
struct InstantaneousBand {
    Ratio above = 0; ///< need not operate at once at or below this multiple
    Ratio upTo = 0;  ///< must operate from this multiple on, where the current stays
    Source source;
    Time notBefore{}; ///< above `above` it holds out at least so long
    Time within{};    ///< so long the current has to stay for it to be sure to operate
};

/// What gG fuses of one rating are held to, so that they are selective among themselves.
struct FuseEnergy {
    JouleIntegral leastToMelt;    ///< pre-arcing
    JouleIntegral mostLetThrough; ///< operating
};

/// A device as far as heat makes it operate: what standard and tables hold a sound one to, and the replicas
/// that keep to it. Instantaneous releases are no part of it.
struct ThermalDevice {
    physics::ThermalLimits limits;
    physics::Elements elements = physics::Elements::One;
    physics::ReplicaSet replicas;
    Source source; ///< of the first limit; from memory where any of them is
    /// Whether anything says how long it holds out above what it carries for ever.
    bool holdsOut() const { return !limits.notBefore.empty(); }
};

/// Activation energy of the ageing of insulation, in J/mol, from the least that is published to the most.
struct InsulationLife {
    double least = 0;
    double most = 0;
};

/// A relay's curve and what it is called.
struct NamedCurve {
    std::string key;   ///< "very-inverse"
    std::string label; ///< "Very inverse"
    physics::InverseCurve curve;
    Source source;
};

struct CableKey {
    InstallationMethod method = InstallationMethod::Unknown;
    Material material = Material::Copper;
    Insulation insulation = Insulation::Pvc70;
    int loadedConductors = 2;
    CrossSection size;
};

/// Conductors whose k differs (IEC 60364-4-43 table 43A, IEC 60364-5-54 tables A.54.2, A.54.4, A.54.5;
/// BS 7671 table 54.5 for conduit).
/// Armour and conduit are of steel, whatever the line conductors are made of.
enum class ConductorRole : std::uint8_t {
    Line,
    ProtectiveInCable,
    ProtectiveSeparate,
    ProtectiveArmour,
    ProtectiveConduit
};

struct ResidualLimit {
    std::optional<Time> atMost;
    std::optional<Time> atLeast; ///< of a delayed type
    Source source;
};

struct InspectionItem {
    std::string key;
    std::string group;
    std::string text;    ///< our own words
    std::string pointer; ///< where the rules speak of it
};

class ReferenceTables {
  public:
    /// Reads the tables that are built into the program (resources/reference). Throws std::runtime_error
    /// naming file, line and column when one of them does not hold together; a test does so at every build.
    static ReferenceTables builtIn();
    ReferenceTables(ReferenceTables&&) noexcept;
    ReferenceTables& operator=(ReferenceTables&&) noexcept;
    ~ReferenceTables();

    std::span<const DeviceFamily> deviceFamilies() const;
    const DeviceFamily* deviceFamily(std::string_view key) const;
    /// Preferred ratings that the tables know for this family, smallest first.
    std::vector<Current> ratings(const DeviceFamily& family) const;
    /// Whether the tables know this rating of the family; of a family without any, every one.
    bool isRating(const DeviceFamily& family, Current rated) const;

    /// The current that is sure to operate the device within `time`: the upper end of a breaker's
    /// instantaneous band, or the published current of a fuse for exactly that time.
    std::optional<Sourced<Current>> operatingCurrent(const DeviceFamily& family, Current rated,
                                                     Time time) const;
    /// Largest loop impedance that lets the device operate within `time`. The row of max_zs.csv of the rule
    /// set's edition where there is one for this line-to-earth voltage; otherwise U_0 c_min / I_a from
    /// operatingCurrent, and the source says that it was computed. A published figure is never scaled.
    std::optional<Sourced<Resistance>> permittedLoop(const RuleSet& rules, Voltage lineToEarth,
                                                     const DeviceFamily& family, Current rated,
                                                     Time time) const;
    std::optional<ConventionalCurrents> conventionalCurrents(const DeviceFamily& family, Current rated) const;
    std::optional<InstantaneousBand> instantaneousBand(const DeviceFamily& family, Current rated) const;
    /// Everything published about when the device operates, for physics::operatingTime. Nothing for an
    /// unknown rating.
    /// nullptr where nothing is promised. Put together when first asked for and kept for as long as the
    /// tables are; several threads may ask.
    const Sourced<physics::DeviceTimes>* deviceTimes(const DeviceFamily& family, Current rated) const;
    /// What a sound device is held to as far as heat makes it operate. Of an adjustable breaker `rated` is
    /// its overload setting I_r, `delay` its t_r at 6 I_r where that is known, and `frame` its I_n, which the
    /// conventional time goes by (IEC 60947-2); without it I_r stands in. Nothing for a rating that the
    /// family is not made in. The replicas are worked out when first asked for, which takes milliseconds,
    /// and kept for as long as the tables are; several threads may ask.
    const ThermalDevice* thermalDevice(const DeviceFamily& family, Current rated,
                                       std::optional<Time> delay = {},
                                       std::optional<Current> frame = {}) const;
    /// Largest energy that a breaker of this type, rating and class 3 lets through (energy_let_through.csv).
    std::optional<Sourced<JouleIntegral>> letThrough(const DeviceFamily& family, Current rated,
                                                     Current breakingCapacity) const;
    /// The least protective conductor of copper, as a core of its cable, that is published as enough behind a
    /// breaker of class 3 where an earth fault drives up to `fault` (least_protective.csv).
    std::optional<Sourced<CrossSection>> leastProtective(const DeviceFamily& family, Current rated,
                                                         Current fault) const;
    /// What to assume for a device whose breaking capacity is not marked (breaking_capacity.csv); the
    /// smallest of its family.
    std::optional<Sourced<Current>> leastBreakingCapacity(const DeviceFamily& family) const;

    /// Of a breaker in warmer or cooler surroundings than it was calibrated for: the share of its rated
    /// current that it carries. Makers' typical figures; between two published temperatures the warmer one
    /// counts. Nothing above the warmest that is published.
    std::optional<Sourced<Ratio>> breakerAmbientFactor(Current rated, Temperature calibratedAt,
                                                       Temperature ambient) const;
    /// That of the warmest place that is published for this rating; nothing where none is that is warmer than
    /// the one it was calibrated in.
    std::optional<Sourced<Ratio>> warmestAmbientFactor(Current rated, Temperature calibratedAt) const;
    /// The least that is published for any rating in a place so much warmer, or the next warmer one, than the
    /// one it was calibrated in: ratings hardly differ. Nothing above the warmest.
    std::optional<Sourced<Ratio>> leastAmbientFactor(TemperatureDifference warmer) const;
    /// The least of all.
    Sourced<Ratio> leastAmbientFactor() const;
    /// The most that is published for any rating in a place so much cooler, or the next cooler one. Nothing
    /// below the coldest.
    std::optional<Sourced<Ratio>> mostAmbientFactor(TemperatureDifference cooler) const;
    /// The place in which a breaker of this family carries its rated current, by its standard. Nothing for
    /// fuses, and for adjustable breakers, whose makers say it.
    std::optional<Sourced<Temperature>> calibrationTemperature(const DeviceFamily& family) const;
    /// Of breakers side by side that are loaded together: the share of its rated current that each carries.
    std::optional<Sourced<Ratio>> breakerGroupingFactor(int adjacent) const;
    /// How far an adjustable breaker may depart from its settings (IEC 60947-2). Its own data sheet goes
    /// before this wherever it is at hand. The conventional time goes by the rated current, not by what the
    /// overload release is set to.
    Sourced<physics::BreakerSpreads> breakerSpreads(Current ratedCurrent) const;
    /// Where the overload dials of adjustable breakers stand, as shares of I_n, the smallest first
    /// (adjustable_breakers.csv). Common positions: a dial may have others between them, or fewer.
    std::span<const Sourced<Ratio>> overloadSettings() const;
    /// Curves of relays (IEC 60255-151).
    std::span<const NamedCurve> inverseCurves() const;
    std::optional<Sourced<FuseEnergy>> fuseEnergy(const DeviceFamily& family, Current rated) const;
    /// What a device in a board may have to break with a fuse of this family, rating and breaking capacity
    /// before it, whatever it breaks alone. Holds only where the board's maker declares it.
    std::optional<Sourced<Current>> backedUpCapacity(const DeviceFamily& upstream, Current rated,
                                                     Current capacity) const;
    /// Least ratio of rated currents at which two gG fuses are selective.
    const Sourced<Ratio>& selectiveFuseRatio() const;
    /// Least ratio of rated residual currents at which two residual current devices are selective, the one
    /// upstream being delayed.
    const Sourced<Ratio>& selectiveResidualRatio() const;

    /// What the published allowances call kinds of premises and of loads ("shop-or-office", "lighting").
    std::span<const std::string> allowancePremises() const;
    std::span<const std::string> allowanceLoads() const;
    std::optional<Sourced<physics::Allowance>> allowance(std::string_view premises,
                                                         std::string_view load) const;
    /// The share of their demands that several "flats" or "outgoing-circuits" reach together.
    std::optional<Sourced<Ratio>> simultaneityFactor(std::string_view kind, int count) const;
    std::vector<std::string> simultaneityKinds() const;

    /// Tabulated capacity, before any factor. `standard` is "IEC 60364-5-52:2009" or "BS 7671".
    std::optional<Sourced<Current>> capacity(std::string_view standard, const CableKey& cable) const;
    std::optional<Sourced<Ratio>> ambientFactor(std::string_view standard, Insulation insulation,
                                                Temperature ambient, bool inGround) const;
    /// Bunched, or in the ground by `method`. Between two published counts the next larger one counts.
    std::optional<Sourced<Ratio>> groupingFactor(InstallationMethod method, int circuits) const;
    /// Of the thermal resistivity of the soil around a buried cable or its duct: the factor of the smallest
    /// published one that is not below it (IEC 60364-5-52, table B.52.16). Nothing where none is published,
    /// and for methods that are not buried.
    std::optional<Sourced<Ratio>> soilFactor(InstallationMethod method, ThermalResistivity soil) const;
    /// The resistivity at which the tabulated capacities of a buried method hold.
    std::optional<Sourced<ThermalResistivity>> referenceSoil(InstallationMethod method) const;
    /// For a length wholly inside thermal insulation; from 0.5 m on 0.5.
    std::optional<Sourced<Ratio>> insulatedFactor(Length length) const;
    /// For a rewirable fuse, 1.45 / 2.
    std::optional<Sourced<Ratio>> rewirableFactor() const;
    /// By how much a standard lowers the capacity of a buried cable where it is to be protected against
    /// overload: its tables are for ground that is cooler than what the rule for overload reckons with.
    /// Nothing where the standard has no such factor, and for methods that are not buried.
    std::optional<Sourced<Ratio>> buriedOverloadFactor(std::string_view standard,
                                                       InstallationMethod method) const;
    /// Reference temperature that the capacities of this method count from.
    Temperature referenceAmbient(InstallationMethod method) const;
    /// Largest continuous conductor temperature.
    std::optional<Sourced<Temperature>> conductorLimit(Insulation insulation) const;

    /// At 20 degC (IEC 60228), class 1 up to 10 mm2 and class 2 above unless only one is published.
    std::optional<Sourced<ResistancePerLength>> conductorResistance(Material material,
                                                                    CrossSection size) const;
    /// Per kelvin at 20 degC.
    Sourced<double> temperatureCoefficient(Material material) const;
    /// k of a conductor; without a size of the smaller ones. Large ones in PVC may not become as hot.
    std::optional<Sourced<AdiabaticFactor>> adiabaticFactor(ConductorRole role, Material material,
                                                            Insulation insulation,
                                                            std::optional<CrossSection> size = {}) const;
    /// What k is made of, for physics::adiabaticFactor.
    std::optional<Sourced<physics::ConductorConstants>> conductorConstants(Material material) const;
    /// The heat capacity of what lies around one loaded conductor of a cable, in J/(K m): an upper figure.
    std::optional<Sourced<double>> heatAroundConductor(Insulation insulation, CrossSection size) const;
    const Sourced<InsulationLife>& insulationLife(Insulation insulation) const;
    /// mV/A/m as published, magnitude z.
    std::optional<Sourced<VoltagePerCurrentLength>> voltageDrop(Material material, Insulation insulation,
                                                                bool threePhase, CrossSection size) const;
    std::vector<CrossSection> standardSizes(Material material) const;
    /// The smallest line conductors that fixed power circuits may have (least_line.csv), by the standard that
    /// the capacities are those of.
    std::optional<Sourced<CrossSection>> leastLine(std::string_view standard, Material material) const;

    std::optional<Sourced<Resistance>> insulationMinimum(Voltage nominal) const;
    /// At `multiple` times the rated residual current.
    std::optional<ResidualLimit> residualLimit(ResidualDelay delay, double multiple) const;
    /// The largest external loop that distributors usually declare for this earthing; none for an electrode.
    std::optional<Sourced<Resistance>> declaredExternalLoop(Earthing earthing) const;
    /// The practical limit above which an earth electrode may be unstable.
    const Sourced<Resistance>& stableElectrode() const;
    std::span<const InspectionItem> inspectionItems() const;

    /// In the unit of its row.
    const Sourced<double>& band(Band which) const;
    /// How far a reading may be off where its instrument says nothing of its own, as a share of it: the
    /// largest operating uncertainty of IEC 61557.
    const Sourced<Ratio>& operatingUncertainty(Measurand measurand) const;
    /// nullptr: nothing is known to ask for a type.
    const ResidualTypeNeed* residualTypeFor(EquipmentKind kind, bool threePhase) const;
    /// The least size of the earthing conductor by that of the tails, or of main bonding by that of the
    /// supply's neutral (TN-C-S, where the standard has such a table) or of the earthing conductor.
    std::optional<Sourced<CrossSection>> leastMainConductor(std::string_view standard,
                                                            MainConductor conductor, Earthing earthing,
                                                            CrossSection by) const;

  private:
    struct Tables;
    Sourced<physics::ThermalLimits> thermalLimits(const DeviceFamily& family, Current rated,
                                                  std::optional<Time> delay, Current frame) const;
    explicit ReferenceTables(std::unique_ptr<Tables> tables);
    std::unique_ptr<Tables> tables_;
};

} // namespace loopwright
