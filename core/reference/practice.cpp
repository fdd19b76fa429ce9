// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/rule_set.h"
#include "core/reference/tables.h"

#include <algorithm>
#include <limits>

// Guidance and bands of judgement: residual types by equipment, uncertainties, sizes of main conductors.
namespace loopwright {

namespace {

/// In the order of Band.
constexpr std::array bandKeys{
    std::string_view("loop-share"),         std::string_view("loop-allowance"),
    std::string_view("continuity-share"),   std::string_view("continuity-allowance"),
    std::string_view("ring-open-multiple"), std::string_view("drift-loop"),
    std::string_view("drift-allowance"),    std::string_view("drift-electrode"),
    std::string_view("imbalance-share"),    std::string_view("imbalance-allowance"),
    std::string_view("device-shift"),       std::string_view("continuous-time"),
    std::string_view("load-share"),         std::string_view("continuous-share")};
/// In the order of Measurand.
constexpr std::array measurandKeys{std::string_view("continuity"), std::string_view("insulation"),
                                   std::string_view("loop"),       std::string_view("residual-time"),
                                   std::string_view("electrode"),  std::string_view("current")};
static_assert(measurandKeys.size() == measurandCount);

/// The place of the row's key among `keys`; a key that nobody knows is a complaint.
std::size_t placeOf(const csv::Row& row, std::string_view column, std::span<const std::string_view> keys) {
    const auto found = std::ranges::find(keys, row.text(column));
    if (found == keys.end()) row.complain(column, "nobody asks for this");
    return static_cast<std::size_t>(found - keys.begin());
}

/// One row for each of `keys`, in their order.
std::vector<Sourced<double>> readKeyed(const char* file, const char* key, const char* value,
                                       std::span<const std::string_view> keys) {
    std::vector<Sourced<double>> values(keys.size());
    std::size_t rows = 0;
    csv::read(file, std::array{key, value, "confidence", "source"}, [&](const csv::Row& row) {
        values[placeOf(row, key, keys)] = {row.number(value), csv::sourceOf(row, "confidence")};
        ++rows;
    });
    if (rows != keys.size())
        throw std::runtime_error(std::string(file) + ": a row is missing or there twice");
    return values;
}

template <class E>
std::optional<E> choiceCalled(const csv::Row& row, std::string_view column) {
    const std::string_view word = row.text(column);
    if (word.empty()) return std::nullopt;
    for (const Choice& choice : choicesOf<E>().choices)
        if (choice.key == word) return static_cast<E>(choice.value);
    row.complain(column, "no such choice");
}

void readResidualTypes(PracticeTables& tables) {
    csv::read("residual_types.csv",
              std::array{"equipment_kind", "phases", "type", "condition_type", "confidence", "source"},
              [&](const csv::Row& row) {
                  PracticeTables::ResidualTypeRow need;
                  need.kind = choiceCalled<EquipmentKind>(row, "equipment_kind").value();
                  const std::string_view phases = row.text("phases");
                  need.onePhase = phases != "three";
                  need.threePhase = phases != "one";
                  need.need = {choiceCalled<ResidualType>(row, "type").value(),
                               choiceCalled<ResidualType>(row, "condition_type"),
                               csv::sourceOf(row, "confidence")};
                  tables.residualTypes.push_back(std::move(need));
              });
}

void readMainConductors(PracticeTables& tables) {
    constexpr double unbounded = std::numeric_limits<double>::infinity();
    csv::read("bonding_sizes.csv",
              std::array{"rules", "purpose", "earthing", "over_mm2", "upto_mm2", "size_mm2", "share",
                         "least_mm2", "most_mm2", "confidence", "source"},
              [&](const csv::Row& row) {
                  PracticeTables::MainConductorRow size;
                  size.standard = row.text("rules");
                  size.conductor = row.text("purpose") == "main-bonding" ? MainConductor::Bonding
                                                                         : MainConductor::Earthing;
                  if (row.text("earthing") != "any") size.earthing = choiceCalled<Earthing>(row, "earthing");
                  size.above = squareMillimetres(row.number("over_mm2"));
                  size.upTo = squareMillimetres(row.optionalNumber("upto_mm2").value_or(unbounded));
                  if (const auto fixed = row.optionalNumber("size_mm2"))
                      size.least = size.most = squareMillimetres(*fixed);
                  else
                      size.share = row.number("share");
                  if (const auto least = row.optionalNumber("least_mm2"))
                      size.least = squareMillimetres(*least);
                  if (const auto most = row.optionalNumber("most_mm2")) size.most = squareMillimetres(*most);
                  size.source = csv::sourceOf(row, "confidence");
                  tables.mainConductors.push_back(std::move(size));
              });
}

} // namespace

PracticeTables PracticeTables::read() {
    PracticeTables tables;
    tables.bands = readKeyed("judgement_bands.csv", "key", "value", bandKeys);
    tables.uncertainties =
        readKeyed("instrument_uncertainty.csv", "quantity", "limit_percent", measurandKeys);
    for (Sourced<double>& limit : tables.uncertainties)
        limit.value /= 100;
    readResidualTypes(tables);
    readMainConductors(tables);
    return tables;
}

const Sourced<double>& ReferenceTables::band(Band which) const {
    return tables_->practice.bands[static_cast<std::size_t>(which)];
}

const Sourced<Ratio>& ReferenceTables::operatingUncertainty(Measurand measurand) const {
    return tables_->practice.uncertainties[static_cast<std::size_t>(measurand)];
}

const ResidualTypeNeed* ReferenceTables::residualTypeFor(EquipmentKind kind, bool threePhase) const {
    const auto& rows = tables_->practice.residualTypes;
    const auto found = std::ranges::find_if(rows, [&](const auto& row) {
        return row.kind == kind && (threePhase ? row.threePhase : row.onePhase);
    });
    return found == rows.end() ? nullptr : &found->need;
}

std::optional<Sourced<CrossSection>> ReferenceTables::leastMainConductor(std::string_view standard,
                                                                         MainConductor conductor,
                                                                         Earthing earthing,
                                                                         CrossSection by) const {
    for (const auto& row : tables_->practice.mainConductors) {
        if (row.standard != standard || row.conductor != conductor || by <= row.above || by > row.upTo ||
            (row.earthing && *row.earthing != earthing))
            continue;
        const CrossSection share = std::min(std::max(by * row.share, row.least), row.most);
        return Sourced<CrossSection>{share, row.source};
    }
    return std::nullopt;
}

} // namespace loopwright
