// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>

// Published allowances for loads that are not all on at once.
namespace loopwright {

namespace {

void addOnce(std::vector<std::string>& names, const std::string& name) {
    if (std::ranges::find(names, name) == names.end()) names.push_back(name);
}

} // namespace

DemandTables DemandTables::read() {
    DemandTables tables;
    constexpr std::array columns{"premises", "load",          "in_full_A", "largest", "second",
                                 "others",   "with_socket_A", "basis",     "source"};
    csv::read("demand_allowances.csv", columns, [&](const csv::Row& row) {
        const physics::Allowance allowance{amperes(row.number("in_full_A")), row.number("largest"),
                                           row.number("second"), row.number("others"),
                                           amperes(row.number("with_socket_A"))};
        tables.allowances.push_back({std::string(row.text("premises")),
                                     std::string(row.text("load")),
                                     {allowance, csv::sourceOf(row, "basis")}});
        addOnce(tables.premises, tables.allowances.back().premises);
        addOnce(tables.loads, tables.allowances.back().load);
    });
    csv::read("simultaneity.csv", std::array{"kind", "count_from", "count_upto", "factor", "basis", "source"},
              [&](const csv::Row& row) {
                  const auto upTo = row.optionalNumber("count_upto");
                  tables.simultaneity.push_back({std::string(row.text("kind")),
                                                 static_cast<int>(row.number("count_from")),
                                                 upTo ? std::optional(static_cast<int>(*upTo)) : std::nullopt,
                                                 {row.number("factor"), csv::sourceOf(row, "basis")}});
              });
    return tables;
}

std::span<const std::string> ReferenceTables::allowancePremises() const {
    return tables_->demand.premises;
}

std::span<const std::string> ReferenceTables::allowanceLoads() const {
    return tables_->demand.loads;
}

std::optional<Sourced<physics::Allowance>> ReferenceTables::allowance(std::string_view premises,
                                                                      std::string_view load) const {
    for (const auto& row : tables_->demand.allowances)
        if (row.premises == premises && row.load == load) return row.allowance;
    return std::nullopt;
}

std::optional<Sourced<Ratio>> ReferenceTables::simultaneityFactor(std::string_view kind, int count) const {
    for (const auto& row : tables_->demand.simultaneity)
        if (row.kind == kind && row.from <= count && (!row.upTo || count <= *row.upTo)) return row.factor;
    return std::nullopt;
}

std::vector<std::string> ReferenceTables::simultaneityKinds() const {
    std::vector<std::string> kinds;
    for (const auto& row : tables_->demand.simultaneity)
        addOnce(kinds, row.kind);
    return kinds;
}

} // namespace loopwright
