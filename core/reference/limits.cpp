// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>

// Limits that readings are held against, and the list of what an inspection looks at.
namespace loopwright {

namespace {

void readInsulation(LimitTables& tables) {
    constexpr std::array columns{"record_type",  "nominal_over_V", "nominal_upto_V",
                                 "minimum_Mohm", "basis",          "source"};
    csv::read("insulation_resistance_min.csv", columns, [&](const csv::Row& row) {
        const auto above = row.optionalNumber("nominal_over_V");
        if (row.text("record_type") != "standard minimum" || !above) return;
        const auto upTo = row.optionalNumber("nominal_upto_V");
        tables.insulation.push_back({volts(*above), upTo ? std::optional(volts(*upTo)) : std::nullopt,
                                     megohms(row.number("minimum_Mohm")), csv::sourceOf(row, "basis")});
    });
}

void readResidual(LimitTables& tables) {
    constexpr std::array columns{
        "standard",   "delay_class", "residual_current_form",    "multiple_of_IdeltaN",
        "time_max_s", "confidence",  "time_min_non_actuating_s", "source"};
    csv::read("rcd_limits.csv", columns, [&](const csv::Row& row) {
        const auto standard = row.text("standard");
        if (standard != "IEC 61008-1 / 61009-1" || row.text("residual_current_form") != "sinusoidal a.c." ||
            row.text("time_min_non_actuating_s") == "no trip")
            return;
        LimitTables::ResidualRow limit;
        limit.delay = row.text("delay_class") == "general" ? ResidualDelay::General : ResidualDelay::Delayed;
        limit.multiple = row.number("multiple_of_IdeltaN");
        if (const auto time = row.optionalNumber("time_max_s")) limit.limit.atMost = seconds(*time);
        if (const auto time = row.optionalNumber("time_min_non_actuating_s"))
            limit.limit.atLeast = seconds(*time);
        limit.limit.source = csv::sourceOf(row, "confidence", std::string(standard));
        tables.residual.push_back(std::move(limit));
    });
}

/// Rows of earthing_supply.csv that limits are taken from, by parameter and case.
void readSupply(LimitTables& tables) {
    csv::read("earthing_supply.csv", std::array{"parameter", "case", "value", "basis", "source"},
              [&](const csv::Row& row) {
                  const auto value = row.optionalNumber("value");
                  if (!value) return;
                  const auto is = [&](std::string_view parameter, std::string_view which) {
                      return row.text("parameter") == parameter && row.text("case") == which;
                  };
                  const Sourced<Resistance> figure{ohms(*value), csv::sourceOf(row, "basis")};
                  if (is("Ze typical declared maximum", "TN-C-S (PME)"))
                      tables.externalLoops.push_back({Earthing::TnCS, figure});
                  if (is("Ze typical declared maximum", "TN-S"))
                      tables.externalLoops.push_back({Earthing::TnS, figure});
                  if (is("electrode resistance", "stable electrode, practical upper value"))
                      tables.stableElectrode = figure;
              });
}

void readItems(LimitTables& tables) {
    csv::read("inspection_items.csv", std::array{"key", "group", "text", "pointer"},
              [&](const csv::Row& row) {
                  tables.items.push_back({std::string(row.text("key")), std::string(row.text("group")),
                                          std::string(row.text("text")), std::string(row.text("pointer"))});
              });
}

} // namespace

LimitTables LimitTables::read() {
    LimitTables tables;
    readInsulation(tables);
    readResidual(tables);
    readSupply(tables);
    readItems(tables);
    return tables;
}

std::optional<Sourced<Resistance>> ReferenceTables::insulationMinimum(Voltage nominal) const {
    for (const auto& row : tables_->limits.insulation)
        if (row.above < nominal && (!row.upTo || nominal <= *row.upTo))
            return Sourced<Resistance>{row.minimum, row.source};
    return std::nullopt;
}

std::optional<ResidualLimit> ReferenceTables::residualLimit(ResidualDelay delay, double multiple) const {
    const auto& rows = tables_->limits.residual;
    const auto found = std::ranges::find_if(
        rows, [&](const auto& row) { return row.delay == delay && row.multiple == multiple; });
    return found == rows.end() ? std::nullopt : std::optional(found->limit);
}

std::optional<Sourced<Resistance>> ReferenceTables::declaredExternalLoop(Earthing earthing) const {
    const auto& rows = tables_->limits.externalLoops;
    const auto found = std::ranges::find(rows, earthing, &LimitTables::ExternalLoopRow::earthing);
    return found == rows.end() ? std::nullopt : std::optional(found->declared);
}

const Sourced<Resistance>& ReferenceTables::stableElectrode() const {
    return tables_->limits.stableElectrode;
}

std::span<const InspectionItem> ReferenceTables::inspectionItems() const {
    return tables_->limits.items;
}

} // namespace loopwright
