// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <limits>

// Conductors: resistance, temperature coefficient, k, temperature limit, voltage drop.
namespace loopwright {

namespace {

constexpr std::array insulations{Insulation::Pvc70, Insulation::Xlpe90};
constexpr std::array materials{Material::Copper, Material::Aluminium};

std::optional<Material> materialOf(std::string_view word) {
    for (const Material material : materials)
        if (word == choiceKey(material)) return material;
    return std::nullopt; // of no line conductor: steel, lead
}

std::size_t index(Material material) {
    return static_cast<std::size_t>(material);
}
std::size_t index(Insulation insulation) {
    return static_cast<std::size_t>(insulation);
}

/// How the tables of conductors call an insulation. Some spell out that the same figures hold for EPR.
bool isInsulation(std::string_view word, Insulation insulation) {
    return insulation == Insulation::Pvc70 ? word == "PVC 70 degC" || word == "PVC 70"
                                           : word == "XLPE/EPR 90 degC" || word == "XLPE/EPR 90";
}

/// A row of conductor_class.csv.
struct ClassRow {
    Material material = Material::Copper;
    CrossSection above, upTo;
    std::string conductorClass;
};

std::vector<ClassRow> readClasses() {
    std::vector<ClassRow> classes;
    csv::read("conductor_class.csv", std::array{"material", "size_over_mm2", "size_upto_mm2", "class"},
              [&](const csv::Row& row) {
                  const auto material = materialOf(row.text("material"));
                  if (!material) row.complain("material", "no such material");
                  classes.push_back({*material, squareMillimetres(row.number("size_over_mm2")),
                                     squareMillimetres(row.number("size_upto_mm2")),
                                     std::string(row.text("class"))});
              });
    return classes;
}

bool isUsual(const std::vector<ClassRow>& classes, Material material, CrossSection size,
             std::string_view name) {
    return std::ranges::any_of(classes, [&](const ClassRow& row) {
        return row.material == material && row.above < size && size <= row.upTo && row.conductorClass == name;
    });
}

/// One row a material and size: of the usual class, or of the other rigid one where only that is published.
void readResistances(ConductorTables& tables) {
    const std::vector<ClassRow> classes = readClasses();
    constexpr std::array columns{"size_mm2",           "material", "surface", "class",
                                 "r20_max_ohm_per_km", "basis",    "source"};
    csv::read("conductor_resistance.csv", columns, [&](const csv::Row& row) {
        const auto material = materialOf(row.text("material"));
        const auto name = row.text("class");
        if (!material || row.text("surface") != "plain" || (name != "1" && name != "2")) return;
        const CrossSection size = squareMillimetres(row.number("size_mm2"));
        ConductorTables::ResistanceRow found{
            *material, size, ohmsPerKilometre(row.number("r20_max_ohm_per_km")), csv::sourceOf(row, "basis")};
        const auto known = std::ranges::find_if(tables.resistances, [&](const auto& other) {
            return other.material == *material && other.size == size;
        });
        if (known == tables.resistances.end())
            tables.resistances.push_back(std::move(found));
        else if (isUsual(classes, *material, size, name))
            *known = std::move(found);
    });
    std::ranges::sort(tables.resistances, {},
                      [](const auto& row) { return std::pair(row.material, row.size); });
}

void readLeastLines(ConductorTables& tables) {
    csv::read("least_line.csv", std::array{"standard", "material", "size_mm2", "basis", "source"},
              [&](const csv::Row& row) {
                  const auto material = materialOf(row.text("material"));
                  if (!material) row.complain("material", "no such material");
                  tables.leastLines.push_back(
                      {std::string(row.text("standard")),
                       *material,
                       {squareMillimetres(row.number("size_mm2")), csv::sourceOf(row, "basis")}});
              });
}

void readCoefficients(ConductorTables& tables) {
    constexpr std::array columns{"record_type", "material", "value", "basis", "source"};
    csv::read("r1_r2_per_metre.csv", columns, [&](const csv::Row& row) {
        const auto material = materialOf(row.text("material"));
        if (material && row.text("record_type") == "coefficient")
            tables.coefficients[index(*material)] = {row.number("value"), csv::sourceOf(row, "basis")};
    });
}

/// Where adiabatic_k.csv keeps the k of a role. The tables for armour and conduit are read for steel alone.
struct NamedRole {
    ConductorRole role;
    std::string_view words;
    bool steel;
};
constexpr std::array roles{
    NamedRole{ConductorRole::Line, "live", false},
    NamedRole{ConductorRole::ProtectiveInCable,
              "protective conductor as a core of a cable or bunched with cables", false},
    NamedRole{ConductorRole::ProtectiveSeparate,
              "insulated protective conductor not in a cable and not bunched", false},
    NamedRole{ConductorRole::ProtectiveArmour,
              "metallic layer of a cable (armour, sheath, concentric conductor)", true},
    NamedRole{ConductorRole::ProtectiveConduit,
              "steel conduit, ducting or trunking used as protective conductor", true},
};

/// The sizes that a row of adiabatic_k.csv holds for.
struct SizeRange {
    CrossSection above;
    CrossSection upTo{std::numeric_limits<double>::infinity()};
};
std::optional<SizeRange> sizeRange(std::string_view condition) {
    if (condition == "any") return SizeRange{};
    const bool isUpTo = condition.starts_with("<=");
    if (!isUpTo && !condition.starts_with(">")) return std::nullopt;
    condition.remove_prefix(isUpTo ? 2 : 1);
    double size = 0;
    const auto read = std::from_chars(condition.data(), condition.data() + condition.size(), size);
    if (read.ec != std::errc()) return std::nullopt;
    return isUpTo ? SizeRange{{}, squareMillimetres(size)} : SizeRange{squareMillimetres(size)};
}

void readFactor(ConductorTables& tables, const csv::Row& row) {
    const auto named = std::ranges::find(roles, row.text("conductor_role"), &NamedRole::words);
    const auto sizes = sizeRange(row.text("size_condition"));
    if (named == roles.end() || !sizes) return;
    const bool steel = row.text("material") == "steel";
    const auto material = materialOf(row.text("material"));
    if (steel != named->steel || (!steel && !material)) return;
    for (const Insulation insulation : insulations)
        if (isInsulation(row.text("insulation"), insulation))
            tables.factors.push_back(
                {named->role, material.value_or(Material::Copper), insulation, sizes->above, sizes->upTo,
                 AdiabaticFactor(row.number("k_A_s05_per_mm2")),
                 csv::sourceOf(row, "basis",
                               fmt::format("{}, table {}", row.text("standard"), row.text("table")))});
}

void readConstant(ConductorTables& tables, const csv::Row& row) {
    const auto material = materialOf(row.text("material"));
    if (!material) return;
    auto& [constants, source] = tables.constants[index(*material)];
    const auto parameter = row.text("parameter");
    if (parameter.starts_with("Qc"))
        constants.volumetricHeat = physics::joulesPerKelvinCubicMillimetre(row.number("value"));
    else if (parameter.starts_with("beta"))
        constants.zeroPoint = kelvins(row.number("value"));
    else if (parameter.starts_with("rho20"))
        constants.resistivity = physics::ohmMillimetres(row.number("value"));
    source = csv::sourceOf(row, "basis");
}

void readAdiabatic(ConductorTables& tables) {
    constexpr std::array columns{"record_type", "standard",   "table",          "conductor_role",
                                 "material",    "insulation", "size_condition", "k_A_s05_per_mm2",
                                 "parameter",   "value",      "basis",          "source"};
    csv::read("adiabatic_k.csv", columns, [&](const csv::Row& row) {
        if (row.text("record_type") == "k") readFactor(tables, row);
        if (row.text("record_type") == "constant") readConstant(tables, row);
    });
}

void readTemperatureLimits(ConductorTables& tables) {
    constexpr std::array columns{"group", "parameter", "insulation", "value", "basis", "source"};
    csv::read("insulation_ageing.csv", columns, [&](const csv::Row& row) {
        if (row.text("parameter") != "maximum continuous conductor temperature") return;
        for (const Insulation insulation : insulations)
            if (isInsulation(row.text("insulation"), insulation))
                tables.limits[index(insulation)] = {celsius(row.number("value")),
                                                    csv::sourceOf(row, "basis")};
    });
}

/// Cables with all conductors in one sheath. Where two tables print the same size, a figure that was seen
/// goes before one from memory.
void readDrops(ConductorTables& tables) {
    constexpr std::array columns{"record_type", "table", "cable", "circuit",
                                 "size_mm2",    "z",     "basis", "source"};
    csv::read("voltage_drop.csv", columns, [&](const csv::Row& row) {
        const auto cable = row.text("cable"), circuit = row.text("circuit");
        if (row.text("record_type") != "mV_per_A_m" || cable.starts_with("single-core")) return;
        const bool threePhase = circuit == "3-phase";
        if (!threePhase && !circuit.starts_with("1-phase")) return;
        const Insulation insulation =
            cable.find("XLPE") == cable.npos ? Insulation::Pvc70 : Insulation::Xlpe90;
        ConductorTables::DropRow drop{
            insulation, threePhase, squareMillimetres(row.number("size_mm2")),
            VoltagePerCurrentLength(units::millivoltPerAmpereMetre.toBase(row.number("z"))),
            csv::sourceOf(row, "basis", fmt::format("BS 7671, table {}", row.text("table")))};
        const auto known = std::ranges::find_if(tables.drops, [&](const ConductorTables::DropRow& other) {
            return other.insulation == insulation && other.threePhase == threePhase &&
                   other.size == drop.size;
        });
        if (known == tables.drops.end())
            tables.drops.push_back(std::move(drop));
        else if (known->source.fromMemory && !drop.source.fromMemory)
            *known = std::move(drop);
    });
}

} // namespace

ConductorTables ConductorTables::read() {
    ConductorTables tables;
    readResistances(tables);
    readLeastLines(tables);
    readCoefficients(tables);
    readAdiabatic(tables);
    readTemperatureLimits(tables);
    readDrops(tables);
    return tables;
}

std::optional<Sourced<ResistancePerLength>> ReferenceTables::conductorResistance(Material material,
                                                                                 CrossSection size) const {
    const auto& rows = tables_->conductors.resistances;
    const auto found = std::ranges::lower_bound(rows, std::pair(material, size), {}, [](const auto& row) {
        return std::pair(row.material, row.size);
    });
    if (found == rows.end() || found->material != material || found->size != size) return std::nullopt;
    return Sourced<ResistancePerLength>{found->resistance, found->source};
}

Sourced<double> ReferenceTables::temperatureCoefficient(Material material) const {
    return tables_->conductors.coefficients[index(material)];
}

std::optional<Sourced<AdiabaticFactor>>
ReferenceTables::adiabaticFactor(ConductorRole role, Material material, Insulation insulation,
                                 std::optional<CrossSection> size) const {
    const auto holdsFor = [&](const auto& row) {
        return size ? row.above < *size && *size <= row.upTo : row.above == CrossSection();
    };
    const bool steel = std::ranges::find(roles, role, &NamedRole::role)->steel;
    for (const auto& row : tables_->conductors.factors)
        if (row.role == role && (steel || row.material == material) && row.insulation == insulation &&
            holdsFor(row))
            return Sourced<AdiabaticFactor>{row.k, row.source};
    return std::nullopt;
}

std::optional<Sourced<physics::ConductorConstants>>
ReferenceTables::conductorConstants(Material material) const {
    return tables_->conductors.constants[index(material)];
}

std::optional<Sourced<CrossSection>> ReferenceTables::leastLine(std::string_view standard,
                                                                Material material) const {
    for (const auto& row : tables_->conductors.leastLines)
        if (row.standard == standard && row.material == material) return row.size;
    return std::nullopt;
}

std::optional<Sourced<Temperature>> ReferenceTables::conductorLimit(Insulation insulation) const {
    return tables_->conductors.limits[index(insulation)];
}

std::optional<Sourced<VoltagePerCurrentLength>> ReferenceTables::voltageDrop(Material material,
                                                                             Insulation insulation,
                                                                             bool threePhase,
                                                                             CrossSection size) const {
    if (material != Material::Copper) return std::nullopt;
    for (const auto& row : tables_->conductors.drops)
        if (row.insulation == insulation && row.threePhase == threePhase && row.size == size)
            return Sourced<VoltagePerCurrentLength>{row.drop, row.source};
    return std::nullopt;
}

} // namespace loopwright
