// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>
#include <limits>
#include <span>
#include <tuple>

// Breakers of whatever family: surroundings, neighbours, settings; and the curves of relays.
namespace loopwright {

namespace {

/// Of one maker's breakers of a rating; a series runs from the coldest place to the warmest.
auto seriesOf(const BreakerTables::AmbientRow& row) {
    return std::tuple(row.calibratedAt, row.rated);
}

void readAmbient(BreakerTables& tables) {
    constexpr std::array columns{"In_A",       "reference_C", "ambient_C", "max_operating_current_A",
                                 "confidence", "source"};
    csv::read("mcb_ambient_derating.csv", columns, [&](const csv::Row& row) {
        const Current rated = amperes(row.number("In_A"));
        tables.ambient.push_back({rated, celsius(row.number("reference_C")), celsius(row.number("ambient_C")),
                                  amperes(row.number("max_operating_current_A")) / rated,
                                  csv::sourceOf(row, "confidence")});
    });
    std::ranges::sort(tables.ambient, {},
                      [](const auto& row) { return std::tuple_cat(seriesOf(row), std::tuple(row.ambient)); });
}

/// Calls take(rows) for each series.
template <class Take>
void forSeries(const std::vector<BreakerTables::AmbientRow>& rows, Take take) {
    for (auto first = rows.begin(); first != rows.end();) {
        const auto last = std::find_if(first, rows.end(),
                                       [&](const auto& row) { return seriesOf(row) != seriesOf(*first); });
        take(std::span(first, last));
        first = last;
    }
}

void readGrouping(BreakerTables& tables) {
    constexpr std::array columns{"number_to", "factor_on_rated_current", "confidence", "source"};
    csv::read("mcb_grouping_factors.csv", columns, [&](const csv::Row& row) {
        const double upTo = row.optionalNumber("number_to").value_or(std::numeric_limits<double>::infinity());
        tables.grouping.push_back(
            {upTo, row.number("factor_on_rated_current"), csv::sourceOf(row, "confidence")});
    });
}

/// The conventional currents stand in two rows each, without and with operation.
void addConventional(BreakerTables& tables, const csv::Row& row) {
    const Current above = amperes(row.number("In_over_A")),
                  upTo = amperes(
                      row.optionalNumber("In_upto_A").value_or(std::numeric_limits<double>::infinity()));
    auto found = std::ranges::find(tables.conventional, above, &BreakerTables::ConventionalRow::above);
    if (found == tables.conventional.end())
        found = tables.conventional.insert(found, {above, upTo, {}, {}, csv::sourceOf(row, "confidence")});
    if (const auto time = row.optionalNumber("time_min_s")) {
        found->time = seconds(*time);
        found->spread.low = row.number("multiple_low");
    } else {
        found->spread.high = row.number("multiple_high");
    }
}

void readAdjustable(BreakerTables& tables) {
    constexpr std::array columns{"standard",      "test",       "In_over_A",  "In_upto_A",  "multiple_low",
                                 "multiple_high", "time_min_s", "time_max_s", "confidence", "source"};
    csv::read("mcb_trip_limits.csv", columns, [&](const csv::Row& row) {
        if (row.text("standard") != "IEC/EN 60947-2") return;
        const auto test = row.text("test");
        if (test.starts_with("conventional")) addConventional(tables, row);
        if (test == "instantaneous non-trip") tables.instantaneous.value.low = row.number("multiple_low");
        if (test == "instantaneous trip") {
            tables.instantaneous.value.high = row.number("multiple_high");
            tables.instantaneous.source = csv::sourceOf(row, "confidence");
            tables.instantaneousTime = seconds(row.number("time_max_s"));
        }
    });
    csv::read("adjustable_breakers.csv", std::array{"quantity", "low", "high", "confidence", "source"},
              [&](const csv::Row& row) {
                  if (row.text("quantity") == "overload setting") {
                      tables.settings.push_back({row.number("low"), csv::sourceOf(row, "confidence")});
                      return;
                  }
                  tables.spreads.push_back({std::string(row.text("quantity")),
                                            {row.number("low"), row.number("high")},
                                            csv::sourceOf(row, "confidence")});
              });
}

void readCurves(BreakerTables& tables) {
    csv::read("inverse_curves.csv", std::array{"key", "label", "k_s", "alpha", "confidence", "source"},
              [&](const csv::Row& row) {
                  tables.curves.push_back({std::string(row.text("key")),
                                           std::string(row.text("label")),
                                           {seconds(row.number("k_s")), row.number("alpha")},
                                           csv::sourceOf(row, "confidence")});
              });
}

const BreakerTables::SpreadRow& spreadOf(const BreakerTables& tables, std::string_view quantity) {
    return *std::ranges::find(tables.spreads, quantity, &BreakerTables::SpreadRow::quantity);
}

} // namespace

BreakerTables BreakerTables::read() {
    BreakerTables tables;
    readAmbient(tables);
    readGrouping(tables);
    readAdjustable(tables);
    readCurves(tables);
    return tables;
}

std::optional<Sourced<Ratio>> ReferenceTables::breakerAmbientFactor(Current rated, Temperature calibratedAt,
                                                                    Temperature ambient) const {
    for (const auto& row : tables_->breakers.ambient)
        if (row.rated == rated && row.calibratedAt == calibratedAt && row.ambient >= ambient)
            return Sourced<Ratio>{row.factor, row.source};
    return std::nullopt;
}

std::optional<Sourced<Ratio>> ReferenceTables::warmestAmbientFactor(Current rated,
                                                                    Temperature calibratedAt) const {
    std::optional<Sourced<Ratio>> warmest;
    for (const auto& row : tables_->breakers.ambient)
        if (row.rated == rated && row.calibratedAt == calibratedAt && row.ambient > calibratedAt)
            warmest = {row.factor, row.source};
    return warmest;
}

std::optional<Sourced<Ratio>> ReferenceTables::leastAmbientFactor(TemperatureDifference warmer) const {
    std::optional<Sourced<Ratio>> least;
    forSeries(tables_->breakers.ambient, [&](std::span<const BreakerTables::AmbientRow> rows) {
        const auto row = std::ranges::find_if(
            rows, [&](const auto& each) { return each.ambient - each.calibratedAt >= warmer; });
        if (row != rows.end() && (!least || row->factor < least->value)) least = {row->factor, row->source};
    });
    return least;
}

Sourced<Ratio> ReferenceTables::leastAmbientFactor() const {
    const auto least =
        std::ranges::min_element(tables_->breakers.ambient, {}, &BreakerTables::AmbientRow::factor);
    return {least->factor, least->source};
}

std::optional<Sourced<Ratio>> ReferenceTables::mostAmbientFactor(TemperatureDifference cooler) const {
    std::optional<Sourced<Ratio>> most;
    forSeries(tables_->breakers.ambient, [&](std::span<const BreakerTables::AmbientRow> rows) {
        const auto row = std::find_if(rows.rbegin(), rows.rend(), [&](const auto& each) {
            return each.calibratedAt - each.ambient >= cooler;
        });
        if (row != rows.rend() && (!most || row->factor > most->value)) most = {row->factor, row->source};
    });
    return most;
}

std::optional<Sourced<Ratio>> ReferenceTables::breakerGroupingFactor(int adjacent) const {
    if (adjacent < 1) return std::nullopt;
    const auto& rows = tables_->breakers.grouping;
    const auto row = std::ranges::find_if(rows, [&](const auto& each) { return adjacent <= each.upTo; });
    if (row == rows.end()) return std::nullopt;
    return Sourced<Ratio>{row->factor, row->source};
}

Sourced<physics::BreakerSpreads> ReferenceTables::breakerSpreads(Current ratedCurrent) const {
    const BreakerTables& tables = tables_->breakers;
    const auto conventional = std::ranges::find_if(tables.conventional, [&](const auto& row) {
        return row.above < ratedCurrent && ratedCurrent <= row.upTo;
    });
    const auto& first =
        conventional == tables.conventional.end() ? tables.conventional.front() : *conventional;
    Sourced<physics::BreakerSpreads> result{
        {first.spread, first.time, spreadOf(tables, "overload time").spread,
         spreadOf(tables, "short-time current").spread, spreadOf(tables, "short-time delay").spread,
         tables.instantaneous.value, tables.instantaneousTime},
        first.source};
    for (const auto& row : tables.spreads)
        result.source.fromMemory |= row.source.fromMemory;
    return result;
}

std::span<const Sourced<Ratio>> ReferenceTables::overloadSettings() const {
    return tables_->breakers.settings;
}

std::span<const NamedCurve> ReferenceTables::inverseCurves() const {
    return tables_->breakers.curves;
}

} // namespace loopwright
