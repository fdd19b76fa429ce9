// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>

// What a cable carries, and the factors that lower it.
namespace loopwright {

namespace {

/// A row of capacity_methods.csv: which rows of current_capacity.csv serve a method.
struct MethodRow {
    std::string standard;
    InstallationMethod method = InstallationMethod::Unknown;
    Insulation insulation = Insulation::Pvc70;
    std::string material, table, rowMethod;
    int loadedConductors = 2;
};

template <class E>
E choiceIn(const csv::Row& row, std::string_view column) {
    const std::string_view word = row.text(column);
    for (const Choice& choice : choicesOf<E>().choices)
        if (choice.key == word) return static_cast<E>(choice.value);
    row.complain(column, fmt::format("'{}' is not one of the choices", word));
}

std::vector<MethodRow> readMethods() {
    std::vector<MethodRow> methods;
    constexpr std::array columns{"standard",          "method", "material",  "insulation",
                                 "loaded_conductors", "table",  "row_method"};
    csv::read("capacity_methods.csv", columns, [&](const csv::Row& row) {
        MethodRow method;
        method.standard = row.text("standard");
        method.method = choiceIn<InstallationMethod>(row, "method");
        method.insulation = choiceIn<Insulation>(row, "insulation");
        method.material = row.text("material");
        method.table = row.text("table");
        method.rowMethod = row.text("row_method");
        method.loadedConductors = static_cast<int>(row.number("loaded_conductors"));
        methods.push_back(std::move(method));
    });
    return methods;
}

/// The standard last: names begin alike, so that comparing them takes the longest.
auto orderOf(std::string_view standard, const CableKey& cable) {
    return std::tuple(cable.method, cable.size, cable.material, cable.insulation, cable.loadedConductors,
                      standard);
}
auto order(const CapacityTables::CapacityRow& row) {
    return orderOf(row.standard, row.cable);
}

void readCapacities(CapacityTables& tables) {
    const std::vector<MethodRow> methods = readMethods();
    constexpr std::array columns{
        "standard",          "table",    "method", "material", "insulation", "ambient_degC",
        "loaded_conductors", "size_mm2", "iz_A",   "basis",    "source"};
    csv::read("current_capacity.csv", columns, [&](const csv::Row& row) {
        const auto standard = row.text("standard"), table = row.text("table");
        const auto rowMethod = row.text("method"), material = row.text("material");
        const int loaded = static_cast<int>(row.number("loaded_conductors"));
        for (const MethodRow& method : methods) {
            if (method.table != table || method.rowMethod != rowMethod || method.standard != standard ||
                method.material != material || method.loadedConductors != loaded)
                continue;
            tables.capacities.push_back(
                {method.standard,
                 {method.method, choiceIn<Material>(row, "material"), method.insulation, loaded,
                  squareMillimetres(row.number("size_mm2"))},
                 amperes(row.number("iz_A")),
                 celsius(row.number("ambient_degC")),
                 csv::sourceOf(row, "basis", fmt::format("{}, table {}", standard, table))});
        }
    });
    std::ranges::sort(tables.capacities, {}, order);
}

/// Which factors of correction_factors.csv serve, and under which name they are looked up. `standard` may be
/// empty: the factor is used whatever the rules.
struct NamedFactor {
    std::string_view type, standard, words; ///< `words`: how the row's `case` begins
    std::string_view kind;
};
constexpr std::string_view airPvc = "air pvc-70", airXlpe = "air xlpe-90";
constexpr std::string_view groundPvc = "ground pvc-70", groundXlpe = "ground xlpe-90";
constexpr std::string_view bunched = "bunched", inDucts = "in ducts", buried = "buried";
constexpr std::string_view soilOfDucts = "soil of ducts", soilOfCables = "soil of cables";
constexpr std::string_view insulated = "insulated", rewirable = "rewirable";
constexpr std::string_view buriedOverload = "buried overload";
/// Cables that touch: nothing is recorded about their distance, and touching is the worst.
constexpr std::array factorNames{
    NamedFactor{"ambient_air", "", "PVC 70", airPvc},
    NamedFactor{"ambient_air", "", "XLPE", airXlpe},
    NamedFactor{"ambient_ground", "", "PVC 70", groundPvc},
    NamedFactor{"ambient_ground", "", "XLPE", groundXlpe},
    NamedFactor{"grouping", "IEC 60364-5-52:2009", "bunched in air", bunched},
    NamedFactor{"grouping_ducts", "IEC 60364-5-52:2009", "multicore in single-way buried ducts, touching",
                inDucts},
    NamedFactor{"grouping_buried", "IEC 60364-5-52:2009", "direct buried, touching", buried},
    NamedFactor{"soil_resistivity", "IEC 60364-5-52:2009", "cables in buried ducts", soilOfDucts},
    NamedFactor{"soil_resistivity", "IEC 60364-5-52:2009", "direct buried cables", soilOfCables},
    NamedFactor{"thermal_insulation", "BS 7671:2008 onward", "cable totally surrounded", insulated},
    NamedFactor{"semi_enclosed_fuse", "BS 7671", "", rewirable},
    NamedFactor{"buried_cc", "", "cable direct in ground or in duct in ground", buriedOverload},
};

/// Some factors are kept by standard, because standards differ; the others have one table each. Put
/// together in place, since every circuit asks.
class KindByStandard {
  public:
    KindByStandard(std::string_view standard, std::string_view kind)
      : end_(fmt::format_to_n(text_.begin(), text_.size(), "{} {}", standard, kind).out) {}
    std::string_view view() const { return {text_.begin(), end_}; }

  private:
    std::array<char, 96> text_; // longer than any two names in the tables
    char* end_;
};

void readFactors(CapacityTables& tables) {
    constexpr std::array columns{"factor_type", "standard", "table", "case",
                                 "parameter",   "factor",   "basis", "source"};
    csv::read("correction_factors.csv", columns, [&](const csv::Row& row) {
        const auto standard = row.text("standard");
        for (const NamedFactor& name : factorNames) {
            if (name.type != row.text("factor_type") || !row.text("case").starts_with(name.words)) continue;
            if (!name.standard.empty() && name.standard != standard) continue;
            tables.factors.push_back(
                {std::string(name.standard.empty() ? KindByStandard(standard, name.kind).view() : name.kind),
                 row.optionalNumber("parameter").value_or(0), row.number("factor"),
                 csv::sourceOf(row, "basis", fmt::format("{}, table {}", standard, row.text("table")))});
        }
    });
    std::ranges::sort(tables.factors, {},
                      [](const auto& row) { return std::tuple(std::string_view(row.kind), row.upTo); });
}

/// The factor of the smallest published value that is not below `value`: between two rows the stricter one
/// counts, and beyond the last nothing is known.
const CapacityTables::FactorRow* factorUpTo(const CapacityTables& tables, std::string_view kind,
                                            double value) {
    const auto found =
        std::ranges::lower_bound(tables.factors, std::tuple(kind, value), {}, [](const auto& row) {
            return std::tuple(std::string_view(row.kind), row.upTo);
        });
    return found == tables.factors.end() || found->kind != kind ? nullptr : &*found;
}

/// The factor of the largest published value.
const CapacityTables::FactorRow* lastFactor(const CapacityTables& tables, std::string_view kind) {
    const auto next = std::ranges::upper_bound(tables.factors, kind, {},
                                               [](const auto& row) { return std::string_view(row.kind); });
    return next == tables.factors.begin() || std::prev(next)->kind != kind ? nullptr : &*std::prev(next);
}

/// Whose soil a buried method stands in; empty for one that is not buried.
std::string_view soilOf(InstallationMethod method) {
    if (method == InstallationMethod::D1) return soilOfDucts;
    return method == InstallationMethod::D2 ? soilOfCables : std::string_view();
}

std::optional<Sourced<Ratio>> sourced(const CapacityTables::FactorRow* row) {
    if (!row) return std::nullopt;
    return Sourced<Ratio>{row->factor, row->source};
}

} // namespace

CapacityTables CapacityTables::read() {
    CapacityTables tables;
    readCapacities(tables);
    readFactors(tables);
    return tables;
}

std::optional<Sourced<Current>> ReferenceTables::capacity(std::string_view standard,
                                                          const CableKey& cable) const {
    const auto& rows = tables_->capacities.capacities;
    const auto wanted = orderOf(standard, cable);
    const auto found = std::ranges::lower_bound(rows, wanted, {}, order);
    if (found == rows.end() || order(*found) != wanted) return std::nullopt;
    return Sourced<Current>{found->capacity, found->source};
}

std::optional<Sourced<Ratio>> ReferenceTables::ambientFactor(std::string_view standard, Insulation insulation,
                                                             Temperature ambient, bool inGround) const {
    const bool pvc = insulation == Insulation::Pvc70;
    const std::string_view kind = inGround ? (pvc ? groundPvc : groundXlpe) : (pvc ? airPvc : airXlpe);
    return sourced(factorUpTo(tables_->capacities, KindByStandard(standard, kind).view(), ambient.base()));
}

std::optional<Sourced<Ratio>> ReferenceTables::groupingFactor(InstallationMethod method, int circuits) const {
    const std::string_view kind = method == InstallationMethod::D1   ? inDucts
                                  : method == InstallationMethod::D2 ? buried
                                                                     : bunched;
    const auto* row = factorUpTo(tables_->capacities, kind, circuits);
    if (row && circuits <= 1) return Sourced<Ratio>{1, row->source}; // the buried tables begin at two
    return sourced(row);
}

std::optional<Sourced<Ratio>> ReferenceTables::soilFactor(InstallationMethod method,
                                                          ThermalResistivity soil) const {
    return sourced(factorUpTo(tables_->capacities, soilOf(method), in(soil, units::kelvinMetrePerWatt)));
}

std::optional<Sourced<ThermalResistivity>> ReferenceTables::referenceSoil(InstallationMethod method) const {
    const std::string_view kind = soilOf(method);
    if (kind.empty()) return std::nullopt;
    for (const auto& row : tables_->capacities.factors)
        if (row.kind == kind && row.factor == 1)
            return Sourced<ThermalResistivity>{kelvinMetresPerWatt(row.upTo), row.source};
    return std::nullopt;
}

std::optional<Sourced<Ratio>> ReferenceTables::insulatedFactor(Length length) const {
    const auto* row = factorUpTo(tables_->capacities, insulated, in(length, units::millimetre));
    return sourced(row ? row : lastFactor(tables_->capacities, insulated));
}

std::optional<Sourced<Ratio>> ReferenceTables::buriedOverloadFactor(std::string_view standard,
                                                                    InstallationMethod method) const {
    if (soilOf(method).empty()) return std::nullopt;
    return sourced(factorUpTo(tables_->capacities, KindByStandard(standard, buriedOverload).view(), 0));
}

std::optional<Sourced<Ratio>> ReferenceTables::rewirableFactor() const {
    return sourced(factorUpTo(tables_->capacities, rewirable, 0));
}

Temperature ReferenceTables::referenceAmbient(InstallationMethod method) const {
    const auto& rows = tables_->capacities.capacities;
    const auto methodOf = [](const CapacityTables::CapacityRow& row) { return row.cable.method; };
    const auto found = std::ranges::lower_bound(rows, method, {}, methodOf);
    const bool isKnown = found != rows.end() && found->cable.method == method;
    return isKnown ? found->ambient : referenceAmbient(InstallationMethod::C);
}

std::vector<CrossSection> ReferenceTables::standardSizes(Material material) const {
    std::vector<CrossSection> sizes;
    for (const auto& row : tables_->capacities.capacities)
        if (row.cable.material == material) sizes.push_back(row.cable.size);
    std::ranges::sort(sizes);
    sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
    return sizes;
}

} // namespace loopwright
