// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/csv.h"
#include "core/reference/tables.h"

#include <algorithm>

// Ratios and energies by which two devices in series are selective.
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
    return tables;
}

std::optional<Sourced<FuseEnergy>> ReferenceTables::fuseEnergy(const DeviceFamily& family,
                                                               Current rated) const {
    if (!family.gates) return std::nullopt;
    const auto& rows = tables_->selectivity.energies;
    const auto row = std::ranges::find(rows, rated, &SelectivityTables::EnergyRow::rated);
    return row == rows.end() ? std::nullopt : std::optional(row->energy);
}

const Sourced<Ratio>& ReferenceTables::selectiveFuseRatio() const {
    return tables_->selectivity.fuseRatio;
}

const Sourced<Ratio>& ReferenceTables::selectiveResidualRatio() const {
    return tables_->selectivity.residualRatio;
}

} // namespace loopwright
