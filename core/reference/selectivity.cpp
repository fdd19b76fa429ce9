// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>

// Two devices in series: ratios and energies by which they are selective, and which fuse backs up what.
namespace loopwright {

SelectivityTables SelectivityTables::read() {
    SelectivityTables tables;
    csv::read("fuse_gg_selectivity_i2t.csv",
              std::array{"In_A", "prearc_I2t_min_A2s", "operating_I2t_max_A2s", "confidence", "source"},
              [&](const csv::Row& row) {
                  tables.energies.push_back({amperes(row.number("In_A")),
                                             {{JouleIntegral(row.number("prearc_I2t_min_A2s")),
                                               JouleIntegral(row.number("operating_I2t_max_A2s"))},
                                              csv::sourceOf(row, "confidence")}});
              });
    csv::read("selectivity.csv", std::array{"rule", "value", "basis", "source"}, [&](const csv::Row& row) {
        const Sourced<Ratio> ratio{row.number("value"), csv::sourceOf(row, "basis")};
        (row.text("rule") == "fuse ratio" ? tables.fuseRatio : tables.residualRatio) = ratio;
    });
    csv::read("backup_combinations.csv",
              std::array{"upstream_families", "upstream_upto_A", "upstream_least_kA", "combined_kA",
                         "confidence", "source"},
              [&](const csv::Row& row) {
                  tables.backUps.push_back(
                      {row.list("upstream_families"),
                       amperes(row.number("upstream_upto_A")),
                       kiloamperes(row.number("upstream_least_kA")),
                       {kiloamperes(row.number("combined_kA")), csv::sourceOf(row, "confidence")}});
              });
    return tables;
}

std::optional<Sourced<FuseEnergy>> ReferenceTables::fuseEnergy(const DeviceFamily& family,
                                                               Current rated) const {
    if (!family.gates) return std::nullopt;
    const auto& rows = tables_->selectivity.energies;
    const auto row = std::ranges::find(rows, rated, &SelectivityTables::EnergyRow::rated);
    return row == rows.end() ? std::nullopt : std::optional(row->energy);
}

std::optional<Sourced<Current>> ReferenceTables::backedUpCapacity(const DeviceFamily& upstream, Current rated,
                                                                  Current capacity) const {
    for (const auto& row : tables_->selectivity.backUps)
        if (rated <= row.upTo && capacity >= row.leastCapacity &&
            std::ranges::find(row.upstream, upstream.key) != row.upstream.end())
            return row.combined;
    return std::nullopt;
}

const Sourced<Ratio>& ReferenceTables::selectiveFuseRatio() const {
    return tables_->selectivity.fuseRatio;
}

const Sourced<Ratio>& ReferenceTables::selectiveResidualRatio() const {
    return tables_->selectivity.residualRatio;
}

} // namespace loopwright
