// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>
#include <fmt/format.h>
#include <functional>

// Device families and what is published about each: reading the tables, and what stands on a device's plate.
// When a device operates is device_times.cpp's business.
namespace loopwright {

namespace {

struct NamedKind {
    std::string_view word;
    DeviceKind kind;
};
constexpr std::array kinds{
    NamedKind{"breaker", DeviceKind::Breaker},
    NamedKind{"rcbo", DeviceKind::Rcbo},
    NamedKind{"cartridge-fuse", DeviceKind::CartridgeFuse},
    NamedKind{"rewirable-fuse", DeviceKind::RewirableFuse},
    NamedKind{"plug-fuse", DeviceKind::PlugFuse},
};

DeviceKind kindOf(const csv::Row& row) {
    const auto named = std::ranges::find(kinds, row.text("kind"), &NamedKind::word);
    if (named == kinds.end()) row.complain("kind", "no such kind of device");
    return named->kind;
}

std::vector<DeviceFamily> readFamilies() {
    std::vector<DeviceFamily> families;
    constexpr std::array columns{"key",
                                 "label",
                                 "short_label",
                                 "kind",
                                 "loop_devices",
                                 "loop_type",
                                 "trip_standard",
                                 "trip_type",
                                 "energy_standard",
                                 "fuse_standards",
                                 "fusing_standards",
                                 "breaking_standards",
                                 "gates",
                                 "legacy",
                                 "adjustable"};
    csv::read("device_families.csv", columns, [&](const csv::Row& row) {
        DeviceFamily family;
        family.key = row.text("key");
        family.label = row.text("label");
        family.shortLabel = row.text("short_label");
        family.kind = kindOf(row);
        family.loopDevices = row.list("loop_devices");
        family.loopType = row.text("loop_type");
        family.tripStandard = row.text("trip_standard");
        family.tripType = row.text("trip_type");
        family.energyStandard = row.text("energy_standard");
        family.fuseStandards = row.list("fuse_standards");
        family.fusingStandards = row.list("fusing_standards");
        family.breakingStandards = row.list("breaking_standards");
        family.gates = row.text("gates") == "yes";
        family.legacy = row.text("legacy") == "yes";
        family.adjustable = row.text("adjustable") == "yes";
        families.push_back(std::move(family));
    });
    return families;
}

bool names(const std::vector<std::string>& list, std::string_view name) {
    return std::ranges::find(list, name) != list.end();
}

/// Calls `give` for each family that `belongs`, with the data to add to.
template <class Belongs, class Give>
void forFamilies(DeviceTables& tables, Belongs belongs, Give give) {
    for (std::size_t i = 0; i < tables.families.size(); ++i)
        if (belongs(tables.families[i])) give(tables.data[i], tables.families[i]);
}

void readLoops(DeviceTables& tables) {
    constexpr std::array columns{"edition",    "table", "device", "type",       "In_A",  "time_s",
                                 "Zs_max_ohm", "U0_V",  "Cmin",   "confidence", "source"};
    csv::read("max_zs.csv", columns, [&](const csv::Row& row) {
        LoopRow loop;
        loop.edition = row.text("edition");
        loop.rated = amperes(row.number("In_A"));
        loop.time = seconds(row.number("time_s"));
        loop.loop = ohms(row.number("Zs_max_ohm"));
        loop.lineToEarth = volts(row.number("U0_V"));
        loop.voltageFactor = row.number("Cmin");
        loop.computed = row.text("confidence") == "computed";
        loop.source = csv::sourceOf(
            row, "confidence",
            loop.computed ? loop.edition : fmt::format("{}, table {}", loop.edition, row.text("table")));
        const auto device = row.text("device"), type = row.text("type");
        forFamilies(
            tables, [&](const DeviceFamily& family) { return names(family.loopDevices, device); },
            [&](DeviceData& data, const DeviceFamily& family) {
                data.ratings.push_back(loop.rated);
                if (family.loopType == type) data.loops.push_back(loop);
            });
    });
}

/// Tests are named with the letter that their standard gives them before.
TripTest tripTestOf(std::string_view name) {
    if (name.ends_with("conventional non-tripping")) return TripTest::ConventionalNonTripping;
    if (name.ends_with("conventional tripping")) return TripTest::ConventionalTripping;
    if (name.ends_with("thermal point")) return TripTest::ThermalPoint;
    return name.ends_with("instantaneous range") ? TripTest::InstantaneousRange : TripTest::Other;
}

void readTrips(DeviceTables& tables) {
    constexpr std::array columns{"standard",   "type",         "test",          "In_over_A",
                                 "In_upto_A",  "multiple_low", "multiple_high", "time_min_s",
                                 "time_max_s", "confidence",   "source"};
    csv::read("mcb_trip_limits.csv", columns, [&](const csv::Row& row) {
        const auto standard = row.text("standard"), type = row.text("type");
        const auto belongs = [&](const DeviceFamily& family) {
            return family.tripStandard == standard && (type == family.tripType || type == "all");
        };
        forFamilies(tables, belongs, [&](DeviceData& data, const DeviceFamily&) {
            TripRow trip;
            trip.test = tripTestOf(row.text("test"));
            trip.above = amperes(row.number("In_over_A"));
            trip.upTo = amperes(row.number("In_upto_A"));
            trip.low = row.number("multiple_low");
            trip.high = row.number("multiple_high");
            if (const auto time = row.optionalNumber("time_min_s")) trip.notBefore = seconds(*time);
            if (const auto time = row.optionalNumber("time_max_s")) trip.notAfter = seconds(*time);
            trip.source = csv::sourceOf(row, "confidence");
            data.trips.push_back(std::move(trip));
        });
    });
}

/// Keeps the first point of each rating, time and current kind: the file has the best source first.
void addPoint(DeviceData& data, FusePoint point) {
    const bool known = std::ranges::any_of(data.points, [&](const FusePoint& other) {
        return other.rated == point.rated && other.point.time == point.point.time &&
               other.isZone == point.isZone;
    });
    if (!known) data.points.push_back(std::move(point));
}

void readUkPoints(DeviceTables& tables) {
    constexpr std::array columns{"device_standard", "In_A",       "time_s", "time_min_s", "I_A",
                                 "basis",           "confidence", "source"};
    csv::read("uk_fuse_time_current.csv", columns, [&](const csv::Row& row) {
        FusePoint point;
        point.rated = amperes(row.number("In_A"));
        point.point = {amperes(row.number("I_A")), seconds(row.number("time_s"))};
        point.isZone = row.text("basis").starts_with("published zone");
        if (const auto time = row.optionalNumber("time_min_s")) point.notBefore = seconds(*time);
        point.source = csv::sourceOf(row, "confidence");
        const auto standard = row.text("device_standard");
        forFamilies(
            tables, [&](const DeviceFamily& family) { return names(family.fuseStandards, standard); },
            [&](DeviceData& data, const DeviceFamily&) { addPoint(data, point); });
    });
}

/// The table of gG currents, which families name as the fuse standard "gG".
void readGgPoints(DeviceTables& tables) {
    constexpr std::array columns{"In_A", "time_s", "Ia_A", "confidence", "source"};
    csv::read("fuse_gg_trip_current.csv", columns, [&](const csv::Row& row) {
        FusePoint point;
        point.rated = amperes(row.number("In_A"));
        point.point = {amperes(row.number("Ia_A")), seconds(row.number("time_s"))};
        point.source = csv::sourceOf(row, "confidence");
        forFamilies(
            tables, [](const DeviceFamily& family) { return names(family.fuseStandards, "gG"); },
            [&](DeviceData& data, const DeviceFamily&) {
                addPoint(data, point);
                data.ratings.push_back(point.rated);
            });
    });
}

void readFusing(DeviceTables& tables) {
    constexpr std::array columns{"device_standard",     "In_over_A",       "In_upto_A",
                                 "non_fusing_multiple", "fusing_multiple", "conventional_time_h",
                                 "confidence",          "source"};
    csv::read("fusing_factors.csv", columns, [&](const csv::Row& row) {
        const auto standard = row.text("device_standard");
        if (!row.optionalNumber("In_upto_A")) return; // holds for cables, not for a rating
        FusingRow fusing;
        fusing.above = amperes(row.number("In_over_A"));
        fusing.upTo = amperes(row.number("In_upto_A"));
        fusing.nonFusing = row.optionalNumber("non_fusing_multiple");
        fusing.fusing = row.number("fusing_multiple");
        fusing.conventionalTime = hours(row.number("conventional_time_h"));
        fusing.source = csv::sourceOf(row, "confidence", std::string(standard));
        forFamilies(
            tables, [&](const DeviceFamily& family) { return names(family.fusingStandards, standard); },
            [&](DeviceData& data, const DeviceFamily&) { data.fusing.push_back(fusing); });
    });
}

void readGates(DeviceTables& tables) {
    constexpr std::array columns{"In_A",        "Imin_10s_A", "Imax_5s_A", "Imin_0p1s_A",
                                 "Imax_0p1s_A", "confidence", "source"};
    csv::read("fuse_gg_gates.csv", columns, [&](const csv::Row& row) {
        GateRow gate;
        gate.rated = amperes(row.number("In_A"));
        gate.notBefore = {{amperes(row.number("Imin_10s_A")), seconds(10)},
                          {amperes(row.number("Imin_0p1s_A")), seconds(0.1)}};
        gate.operatedBy = {{amperes(row.number("Imax_5s_A")), seconds(5)},
                           {amperes(row.number("Imax_0p1s_A")), seconds(0.1)}};
        gate.source = csv::sourceOf(row, "confidence");
        forFamilies(
            tables, [](const DeviceFamily& family) { return family.gates; },
            [&](DeviceData& data, const DeviceFamily&) {
                data.gates.push_back(gate);
                data.ratings.push_back(gate.rated);
            });
    });
}

void readBreakingCapacities(DeviceTables& tables) {
    constexpr std::array columns{"device_standard", "rated_short_circuit_capacity_kA", "confidence",
                                 "source"};
    csv::read("breaking_capacity.csv", columns, [&](const csv::Row& row) {
        const auto kiloampere = row.optionalNumber("rated_short_circuit_capacity_kA");
        if (!kiloampere) return;
        const auto standard = row.text("device_standard");
        const Sourced<Current> capacity{kiloamperes(*kiloampere), csv::sourceOf(row, "confidence")};
        forFamilies(
            tables, [&](const DeviceFamily& family) { return names(family.breakingStandards, standard); },
            [&](DeviceData& data, const DeviceFamily&) {
                if (!data.leastBreaking || capacity.value < data.leastBreaking->value)
                    data.leastBreaking = capacity;
            });
    });
}

/// Calls `action` with each family that the row's standard and type of energy are those of.
template <class Action>
void forFamiliesOfEnergy(DeviceTables& tables, const csv::Row& row, Action&& action) {
    const auto standard = row.text("standard"), type = row.text("type");
    forFamilies(
        tables,
        [&](const DeviceFamily& family) {
            return family.energyStandard == standard && family.tripType == type;
        },
        [&](DeviceData& data, const DeviceFamily&) { action(data); });
}

void readEnergies(DeviceTables& tables) {
    constexpr std::array columns{"standard",    "type",       "energy_limiting_class",
                                 "In_over_A",   "In_upto_A",  "Icn_A",
                                 "I2t_max_A2s", "confidence", "source"};
    csv::read("energy_let_through.csv", columns, [&](const csv::Row& row) {
        if (row.text("energy_limiting_class") != "3") return;
        EnergyRow energy;
        energy.above = amperes(row.number("In_over_A"));
        energy.upTo = amperes(row.number("In_upto_A"));
        energy.capacity = amperes(row.number("Icn_A"));
        energy.energy = JouleIntegral(row.number("I2t_max_A2s"));
        energy.source = csv::sourceOf(row, "confidence");
        forFamiliesOfEnergy(tables, row, [&](DeviceData& data) { data.energies.push_back(energy); });
    });
}

void readLeastProtective(DeviceTables& tables) {
    constexpr std::array columns{"standard",           "type",     "In_over_A", "In_upto_A",
                                 "prospective_upto_A", "size_mm2", "source",    "confidence"};
    csv::read("least_protective.csv", columns, [&](const csv::Row& row) {
        LeastProtectiveRow least;
        least.above = amperes(row.number("In_over_A"));
        least.upTo = amperes(row.number("In_upto_A"));
        least.prospective = amperes(row.number("prospective_upto_A"));
        least.size = squareMillimetres(row.number("size_mm2"));
        least.source = csv::sourceOf(row, "confidence");
        forFamiliesOfEnergy(tables, row, [&](DeviceData& data) { data.leastProtective.push_back(least); });
    });
}

/// Preferred ratings, of which not every one stands in the tables of loops, and where they hold.
void readRatings(DeviceTables& tables) {
    constexpr std::array columns{"standard", "parameter", "value", "source", "confidence"};
    csv::read("mcb_ratings.csv", columns, [&](const csv::Row& row) {
        const auto standard = row.text("standard"), parameter = row.text("parameter");
        const auto give = [&](auto&& action) {
            forFamilies(
                tables, [&](const DeviceFamily& family) { return family.tripStandard == standard; },
                [&](DeviceData& data, const DeviceFamily&) { action(data); });
        };
        if (parameter == "preferred rated current In")
            give([&](DeviceData& data) { data.ratings.push_back(amperes(row.number("value"))); });
        if (parameter == "reference calibration temperature")
            give([&](DeviceData& data) {
                data.calibratedAt =
                    Sourced<Temperature>{celsius(row.number("value")), csv::sourceOf(row, "confidence")};
            });
    });
}

void sortData(DeviceData& data) {
    std::ranges::sort(data.ratings);
    data.ratings.erase(std::unique(data.ratings.begin(), data.ratings.end()), data.ratings.end());
    std::ranges::stable_sort(data.loops, {},
                             [](const LoopRow& row) { return std::pair(row.rated, row.time); });
    std::ranges::stable_sort(
        data.points, {}, [](const FusePoint& point) { return std::pair(point.rated, point.point.current); });
    std::ranges::sort(data.gates, {}, &GateRow::rated);
    std::ranges::sort(data.energies, {}, &EnergyRow::capacity);
    std::ranges::sort(data.leastProtective, {}, &LeastProtectiveRow::prospective);
}

} // namespace

DeviceTables DeviceTables::read() {
    DeviceTables tables;
    tables.families = readFamilies();
    tables.data.resize(tables.families.size());
    readLoops(tables);
    readTrips(tables);
    readUkPoints(tables);
    readGgPoints(tables);
    readFusing(tables);
    readGates(tables);
    readBreakingCapacities(tables);
    readEnergies(tables);
    readLeastProtective(tables);
    readRatings(tables);
    std::ranges::for_each(tables.data, sortData);
    return tables;
}

const DeviceData& DeviceTables::of(const DeviceFamily& family) const {
    static const DeviceData nothing;
    // Nearly every family that is asked for is the row itself, whose place is known without a search.
    const std::less_equal<> notAfter;
    const DeviceFamily* first = families.data();
    if (notAfter(first, &family) && notAfter(&family, first + families.size() - 1))
        return data[static_cast<std::size_t>(&family - first)];
    const auto found = std::ranges::find(families, family.key, &DeviceFamily::key);
    return found == families.end() ? nothing : data[static_cast<std::size_t>(found - families.begin())];
}

std::span<const DeviceFamily> ReferenceTables::deviceFamilies() const {
    return tables_->devices.families;
}

const DeviceFamily* ReferenceTables::deviceFamily(std::string_view key) const {
    const auto found = std::ranges::find(tables_->devices.families, key, &DeviceFamily::key);
    return found == tables_->devices.families.end() ? nullptr : &*found;
}

std::vector<Current> ReferenceTables::ratings(const DeviceFamily& family) const {
    return tables_->devices.of(family).ratings;
}

std::optional<Sourced<Temperature>>
ReferenceTables::calibrationTemperature(const DeviceFamily& family) const {
    return tables_->devices.of(family).calibratedAt;
}

bool ReferenceTables::isRating(const DeviceFamily& family, Current rated) const {
    const std::vector<Current>& known = tables_->devices.of(family).ratings;
    return known.empty() || std::ranges::binary_search(known, rated);
}

std::optional<Sourced<JouleIntegral>> ReferenceTables::letThrough(const DeviceFamily& family, Current rated,
                                                                  Current breakingCapacity) const {
    for (const EnergyRow& row : tables_->devices.of(family).energies)
        if (row.above < rated && rated <= row.upTo && breakingCapacity <= row.capacity)
            return Sourced<JouleIntegral>{row.energy, row.source};
    return std::nullopt;
}

std::optional<Sourced<CrossSection>> ReferenceTables::leastProtective(const DeviceFamily& family,
                                                                      Current rated, Current fault) const {
    for (const LeastProtectiveRow& row : tables_->devices.of(family).leastProtective)
        if (row.above < rated && rated <= row.upTo && fault <= row.prospective)
            return Sourced<CrossSection>{row.size, row.source};
    return std::nullopt;
}

std::optional<Sourced<Current>> ReferenceTables::leastBreakingCapacity(const DeviceFamily& family) const {
    return tables_->devices.of(family).leastBreaking;
}

} // namespace loopwright
