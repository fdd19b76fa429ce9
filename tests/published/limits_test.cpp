// SPDX-License-Identifier: GPL-3.0-or-later
//
// Sources, each beside its check: IEC 60364-6:2016 table 6.1; IEC 60364-4-41 table 41.1 (BS 7671 table 41.1);
// IEC 61008-1 table 1; IEC 60364-4-41, 411.5.3 (BS 7671 table 41.5).
#include "core/physics/residual.h"
#include "core/reference/csv.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

namespace loopwright::published {
namespace {

const ReferenceTables& tables() {
    static const ReferenceTables read = ReferenceTables::builtIn();
    return read;
}

// IEC 60364-6:2016, table 6.1 (seen in the Norwegian adoption NEK 400).
TEST(Limits, InsulationMinima) {
    struct Row {
        double nominal, minimumMegohm;
    };
    Comparison comparison("insulation minima, IEC 60364-6 table 6.1");
    for (const Row& row : {Row{110, 1}, Row{230, 1}, Row{400, 1}, Row{500, 1}, Row{501, 1}, Row{690, 1}}) {
        const auto minimum = tables().insulationMinimum(volts(row.nominal));
        ASSERT_TRUE(minimum) << row.nominal << " V";
        const double megohm = in(minimum->value, units::megohm);
        EXPECT_DOUBLE_EQ(megohm, row.minimumMegohm) << row.nominal << " V";
        comparison.count(megohm == row.minimumMegohm);
    }
}

// IEC 60364-4-41, table 41.1, a.c. (seen in BS 7671:2008, table 41.1, the national twin), and what stands
// beside it: 5 s and 1 s for distribution circuits, 411.3.2.3 and 411.3.2.4.
TEST(Limits, DisconnectionTimes) {
    struct Row {
        std::string_view earthing;
        double above, upTo, time;
    };
    constexpr double open = std::numeric_limits<double>::infinity();
    constexpr std::array printed{Row{"tn", 50, 120, 0.8},   Row{"tn", 120, 230, 0.4},
                                 Row{"tn", 230, 400, 0.2},  Row{"tn", 400, open, 0.1},
                                 Row{"tt", 50, 120, 0.3},   Row{"tt", 120, 230, 0.2},
                                 Row{"tt", 230, 400, 0.07}, Row{"tt", 400, open, 0.04}};
    for (const RuleSet& rules : builtInRuleSets()) {
        Comparison comparison("disconnection times, table 41.1 against " + rules.key);
        ASSERT_EQ(rules.disconnection.size(), printed.size());
        for (std::size_t i = 0; i < printed.size(); ++i) {
            const DisconnectionRow& row = rules.disconnection[i];
            const bool equal = (row.earthing == Earthing::Tt) == (printed[i].earthing == "tt") &&
                               row.above == volts(printed[i].above) && row.upTo == volts(printed[i].upTo) &&
                               row.time == seconds(printed[i].time);
            EXPECT_TRUE(equal) << rules.key << ", row " << i;
            comparison.count(equal);
        }
        EXPECT_EQ(rules.distributionTn, seconds(5)) << rules.key;
        EXPECT_EQ(rules.distributionTt, seconds(1)) << rules.key;
    }
}

/// Which of the rule set's rows a row of the table is.
bool sameRow(const DisconnectionRow& rule, const csv::Row& row) {
    const bool tt = row.text("system") == "TT";
    return (rule.earthing == Earthing::Tt) == tt && rule.above == volts(row.number("u0_from_V_exclusive"));
}

// The rule sets against every a.c. row of table 41.1 in resources/reference/disconnection_times.csv.
TEST(Limits, RuleSetsAgreeWithTheTableOfDisconnectionTimes) {
    for (const RuleSet& rules : builtInRuleSets()) {
        Comparison comparison("disconnection_times.csv against " + rules.key);
        csv::read("disconnection_times.csv",
                  std::array{"rule", "system", "u0_from_V_exclusive", "current", "max_time_s"},
                  [&](const csv::Row& row) {
                      if (row.text("rule") != "table 41.1" || row.text("current") != "ac") return;
                      for (const DisconnectionRow& rule : rules.disconnection) {
                          if (!sameRow(rule, row)) continue;
                          comparison.count(rule.time == seconds(row.number("max_time_s")));
                          EXPECT_EQ(rule.time.base(), row.number("max_time_s"))
                              << row.text("system") << " above " << row.text("u0_from_V_exclusive") << " V";
                      }
                  });
        EXPECT_EQ(comparison.rows, 8) << rules.key;
    }
}

// IEC 61008-1, table 1: break and non-actuating times for a.c. (general maxima seen in an instrument
// handbook).
TEST(Limits, ResidualCurrentDevices) {
    struct Row {
        ResidualDelay delay;
        double multiple, atMost, atLeast; ///< atLeast 0: none
    };
    constexpr std::array printed{
        Row{ResidualDelay::General, 1, 0.3, 0},    Row{ResidualDelay::General, 2, 0.15, 0},
        Row{ResidualDelay::General, 5, 0.04, 0},   Row{ResidualDelay::Delayed, 1, 0.5, 0.13},
        Row{ResidualDelay::Delayed, 2, 0.2, 0.06}, Row{ResidualDelay::Delayed, 5, 0.15, 0.05}};
    Comparison comparison("residual current devices, IEC 61008-1 table 1");
    for (const Row& row : printed) {
        const auto limit = tables().residualLimit(row.delay, row.multiple);
        ASSERT_TRUE(limit) << row.multiple;
        const double atLeast = limit->atLeast ? limit->atLeast->base() : 0;
        const bool equal = limit->atMost == seconds(row.atMost) && atLeast == row.atLeast;
        EXPECT_TRUE(equal) << static_cast<int>(row.delay) << " at " << row.multiple;
        comparison.count(equal);
    }
}

// BS 7671, table 41.5, and instrument handbooks: whole ohms at 50 V and 25 V.
TEST(Limits, LargestElectrodeResistance) {
    Comparison comparison("largest R_A, rcd_ra_max.csv");
    csv::read("rcd_ra_max.csv", std::array{"IdeltaN_mA", "RA_max_50V_ohm", "RA_max_25V_ohm"},
              [&](const csv::Row& row) {
                  const Current residual = milliamperes(row.number("IdeltaN_mA"));
                  for (const auto& [limit, column] :
                       {std::pair{50, "RA_max_50V_ohm"}, std::pair{25, "RA_max_25V_ohm"}}) {
                      const double ohm = roundedHalfUp(
                          physics::largestElectrodeResistance(volts(limit), residual).base(), 0);
                      EXPECT_EQ(ohm, row.number(column))
                          << row.text("IdeltaN_mA") << " mA at " << limit << " V";
                      comparison.count(ohm == row.number(column));
                  }
              });
    EXPECT_EQ(comparison.rows, 16);
}

} // namespace
} // namespace loopwright::published
