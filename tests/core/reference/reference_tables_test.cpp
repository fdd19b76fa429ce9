// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/reference_tables.h"

#include "core/reference/embedded.h"
#include "core/reference/rule_set.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

namespace loopwright {
namespace {

using testing::DoubleNear;

class ReferenceTablesTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { tables = new ReferenceTables(ReferenceTables::builtIn()); }
    static void TearDownTestSuite() { delete tables; }
    static const DeviceFamily& family(std::string_view key) {
        const DeviceFamily* found = tables->deviceFamily(key);
        if (!found) throw std::invalid_argument("no family " + std::string(key));
        return *found;
    }
    static const RuleSet& rules(std::string_view key) {
        static const std::vector<RuleSet> sets = builtInRuleSets();
        return ruleSetFor(sets, key);
    }
    static ReferenceTables* tables;
};
ReferenceTables* ReferenceTablesTest::tables = nullptr;

TEST_F(ReferenceTablesTest, KnowsEveryFamilyByOneKey) {
    std::set<std::string> keys;
    for (const DeviceFamily& family : tables->deviceFamilies()) {
        EXPECT_TRUE(keys.insert(family.key).second) << family.key;
        EXPECT_EQ(tables->deviceFamily(family.key), &family);
        EXPECT_FALSE(family.label.empty()) << family.key;
        EXPECT_EQ(tables->ratings(family).empty(), family.adjustable) << family.key;
    }
    for (const char* key :
         {"60898-B", "60898-C", "60898-D", "61009-B", "61009-C", "61009-D", "60947-2", "88-2", "88-3", "1361",
          "3036", "1362", "3871-1", "3871-2", "3871-3", "3871-4", "3871-B", "3871-C", "3871-D"})
        EXPECT_TRUE(keys.contains(key)) << key;
    EXPECT_EQ(tables->deviceFamily("no such"), nullptr);
}

TEST_F(ReferenceTablesTest, EveryFamilyHasConventionalCurrentsTimesAndABreakingCapacity) {
    for (const DeviceFamily& family : tables->deviceFamilies())
        for (const Current rated : tables->ratings(family)) {
            SCOPED_TRACE(family.key + " " + std::to_string(rated.base()) + " A");
            const auto conventional = tables->conventionalCurrents(family, rated);
            ASSERT_TRUE(conventional);
            EXPECT_GT(conventional->operatingMultiple, conventional->nonOperatingMultiple.value_or(1));
            EXPECT_FALSE(conventional->source.title.empty());
            EXPECT_TRUE(tables->deviceTimes(family, rated));
            EXPECT_TRUE(tables->leastBreakingCapacity(family));
        }
}

TEST_F(ReferenceTablesTest, PermittedLoopIsTheRowOfTheEdition) {
    const auto loop = tables->permittedLoop(rules("bs-7671-2018"), volts(230), family("60898-B"), amperes(32),
                                            seconds(0.4));
    ASSERT_TRUE(loop);
    EXPECT_DOUBLE_EQ(loop->value.base(), 1.37);
    EXPECT_EQ(loop->source.title, "18th (BS 7671:2018), table 41.3");
    EXPECT_FALSE(loop->source.fromMemory);
}

TEST_F(ReferenceTablesTest, ComputedRowsServeADeviceThatTheEditionDropped) {
    const auto loop =
        tables->permittedLoop(rules("bs-7671-2018"), volts(230), family("3871-2"), amperes(30), seconds(0.4));
    ASSERT_TRUE(loop);
    EXPECT_DOUBLE_EQ(loop->value.base(), 1.04); // 0.95 x 230 V / (7 x 30 A)
    EXPECT_EQ(loop->source.confidence, "computed");
}

TEST_F(ReferenceTablesTest, AFuseThatTheEditionDroppedIsComputedFromItsPublishedCurrent) {
    const auto loop =
        tables->permittedLoop(rules("bs-7671-2018"), volts(230), family("1361"), amperes(30), seconds(0.4));
    ASSERT_TRUE(loop);
    EXPECT_NEAR(loop->value.base(), 0.95 * 230 / 200, 1e-9);
    EXPECT_EQ(loop->source.confidence, "computed");
    EXPECT_TRUE(loop->source.fromMemory);
    EXPECT_FALSE(
        tables->permittedLoop(rules("bs-7671-2018"), volts(230), family("1361"), amperes(30), seconds(0.04)));
}

TEST_F(ReferenceTablesTest, APublishedLoopIsNeverScaledToAnotherVoltage) {
    const auto loop = tables->permittedLoop(rules("bs-7671-2018"), volts(240), family("60898-B"), amperes(32),
                                            seconds(0.4));
    ASSERT_TRUE(loop);
    EXPECT_DOUBLE_EQ(loop->value.base(), 240 * 0.95 / 160);
    EXPECT_EQ(loop->source.confidence, "computed");
}

TEST_F(ReferenceTablesTest, ARuleSetWithoutATableComputesFromTheInstantaneousBand) {
    const auto loop =
        tables->permittedLoop(rules("iec-60364"), volts(230), family("60898-C"), amperes(16), seconds(0.4));
    ASSERT_TRUE(loop);
    EXPECT_DOUBLE_EQ(loop->value.base(), 230.0 / 160);
}

TEST_F(ReferenceTablesTest, CapacitiesComeFromTheTableOfTheMethod) {
    CableKey cable{InstallationMethod::C, Material::Copper, Insulation::Pvc70, 2, squareMillimetres(2.5)};
    const auto iec = tables->capacity("IEC 60364-5-52:2009", cable);
    ASSERT_TRUE(iec);
    EXPECT_DOUBLE_EQ(iec->value.base(), 27);
    EXPECT_EQ(iec->source.title, "IEC 60364-5-52:2009, table B.52.2");
    cable.method = InstallationMethod::Flat100;
    const auto flat = tables->capacity("BS 7671", cable);
    ASSERT_TRUE(flat);
    EXPECT_DOUBLE_EQ(flat->value.base(), 21);
    EXPECT_FALSE(tables->capacity("IEC 60364-5-52:2009", cable)); // no flat-cable methods there
    cable.size = squareMillimetres(3);
    EXPECT_FALSE(tables->capacity("BS 7671", cable));
    cable = {InstallationMethod::Unknown, Material::Copper, Insulation::Pvc70, 2, squareMillimetres(2.5)};
    EXPECT_FALSE(tables->capacity("BS 7671", cable));
}

TEST_F(ReferenceTablesTest, BetweenTwoRowsTheStricterFactorCounts) {
    const auto ambient = [&](double degrees) {
        return tables->ambientFactor("BS 7671", Insulation::Pvc70, celsius(degrees), false);
    };
    EXPECT_DOUBLE_EQ(ambient(30)->value, 1);
    EXPECT_DOUBLE_EQ(ambient(36)->value, ambient(40)->value);
    EXPECT_LT(ambient(36)->value, ambient(35)->value);
    EXPECT_FALSE(ambient(70)) << "beyond the table there is no factor";

    const auto grouping = [&](int circuits) {
        return tables->groupingFactor(InstallationMethod::C, circuits)->value;
    };
    EXPECT_DOUBLE_EQ(grouping(1), 1);
    EXPECT_DOUBLE_EQ(grouping(4), 0.65);
    EXPECT_DOUBLE_EQ(grouping(10), grouping(12));
    EXPECT_FALSE(tables->groupingFactor(InstallationMethod::C, 21));
    EXPECT_DOUBLE_EQ(tables->groupingFactor(InstallationMethod::D2, 1)->value, 1);
    EXPECT_LT(tables->groupingFactor(InstallationMethod::D2, 2)->value, 1);

    EXPECT_DOUBLE_EQ(tables->insulatedFactor(metres(0.1))->value, 0.78);
    EXPECT_DOUBLE_EQ(tables->insulatedFactor(metres(0.15))->value,
                     tables->insulatedFactor(metres(0.2))->value);
    EXPECT_DOUBLE_EQ(tables->insulatedFactor(metres(0.5))->value, 0.5);
    EXPECT_DOUBLE_EQ(tables->insulatedFactor(metres(12))->value, 0.5);
    EXPECT_DOUBLE_EQ(tables->rewirableFactor()->value, 0.725);
}

TEST_F(ReferenceTablesTest, ReferenceAmbientIsThatOfTheTable) {
    EXPECT_EQ(tables->referenceAmbient(InstallationMethod::C), celsius(30));
    EXPECT_EQ(tables->referenceAmbient(InstallationMethod::D1), celsius(20));
    EXPECT_EQ(tables->referenceAmbient(InstallationMethod::Unknown), celsius(30));
}

TEST_F(ReferenceTablesTest, ConductorsHaveResistanceFactorAndLimit) {
    EXPECT_DOUBLE_EQ(tables->conductorResistance(Material::Copper, squareMillimetres(2.5))->value.base(),
                     0.00741);
    // Where both rigid classes are published with different figures the usual one counts: stranded at 240
    // mm2.
    EXPECT_DOUBLE_EQ(tables->conductorResistance(Material::Copper, squareMillimetres(240))->value.base(),
                     0.0754 / 1000);
    EXPECT_FALSE(tables->conductorResistance(Material::Copper, squareMillimetres(3)));
    EXPECT_DOUBLE_EQ(tables->temperatureCoefficient(Material::Copper).value, 0.00393);
    EXPECT_DOUBLE_EQ(tables->temperatureCoefficient(Material::Aluminium).value, 0.00403);
    EXPECT_EQ(tables->conductorLimit(Insulation::Xlpe90)->value, celsius(90));
    const auto k = [&](ConductorRole role, Insulation insulation = Insulation::Pvc70) {
        return tables->adiabaticFactor(role, Material::Copper, insulation)->value.base();
    };
    EXPECT_DOUBLE_EQ(k(ConductorRole::Line), 115);
    EXPECT_DOUBLE_EQ(k(ConductorRole::Line, Insulation::Xlpe90), 143);
    EXPECT_DOUBLE_EQ(k(ConductorRole::ProtectiveInCable), 115);
    EXPECT_DOUBLE_EQ(k(ConductorRole::ProtectiveSeparate), 143);
    EXPECT_DOUBLE_EQ(k(ConductorRole::ProtectiveArmour), 51);
    EXPECT_DOUBLE_EQ(k(ConductorRole::ProtectiveConduit), 47);
}

// IEC 60364-4-43:2008, table 43A, and IEC 60364-5-54:2011, table A.54.4: above 300 mm2 PVC may reach 140
// degC.
TEST_F(ReferenceTablesTest, LargeConductorsInPvcMayNotBecomeAsHot) {
    const auto k = [&](ConductorRole role, Material material, Insulation insulation, double size) {
        return tables->adiabaticFactor(role, material, insulation, squareMillimetres(size))->value.base();
    };
    using enum ConductorRole;
    EXPECT_DOUBLE_EQ(k(Line, Material::Copper, Insulation::Pvc70, 300), 115);
    EXPECT_DOUBLE_EQ(k(Line, Material::Copper, Insulation::Pvc70, 400), 103);
    EXPECT_DOUBLE_EQ(k(Line, Material::Aluminium, Insulation::Pvc70, 400), 68);
    EXPECT_DOUBLE_EQ(k(ProtectiveInCable, Material::Copper, Insulation::Pvc70, 400), 103);
    EXPECT_DOUBLE_EQ(k(Line, Material::Copper, Insulation::Xlpe90, 400), 143);
    EXPECT_DOUBLE_EQ(k(ProtectiveArmour, Material::Copper, Insulation::Pvc70, 400), 51);
}

TEST_F(ReferenceTablesTest, TheSmallestLinesOfFixedWiringAreStandardSizes) {
    for (const RuleSet& set : builtInRuleSets())
        for (const Material material : {Material::Copper, Material::Aluminium}) {
            const auto least = tables->leastLine(set.capacityStandard, material);
            ASSERT_TRUE(least) << set.key << ", " << choiceKey(material);
            const auto sizes = tables->standardSizes(material);
            EXPECT_TRUE(std::ranges::binary_search(sizes, least->value))
                << set.key << ", " << choiceKey(material) << ": " << least->value.base() << " mm2";
            EXPECT_FALSE(least->source.title.empty());
        }
    EXPECT_FALSE(tables->leastLine("printed nowhere", Material::Copper));
}

TEST_F(ReferenceTablesTest, VoltageDropPrefersASeenFigureAndKnowsCopperOnly) {
    const auto drop = tables->voltageDrop(Material::Copper, Insulation::Xlpe90, false, squareMillimetres(10));
    ASSERT_TRUE(drop);
    EXPECT_NEAR(drop->value.base(), 0.0047, 1e-12);
    EXPECT_FALSE(drop->source.fromMemory) << drop->source.title;
    EXPECT_FALSE(tables->voltageDrop(Material::Aluminium, Insulation::Pvc70, false, squareMillimetres(25)));
    EXPECT_FALSE(tables->standardSizes(Material::Copper).empty());
    for (const CrossSection size : tables->standardSizes(Material::Copper)) {
        EXPECT_TRUE(tables->voltageDrop(Material::Copper, Insulation::Pvc70, true, size)) << size.base();
        EXPECT_TRUE(tables->conductorResistance(Material::Copper, size)) << size.base();
    }
}

TEST_F(ReferenceTablesTest, EnergyIsThatOfTheNextCapacityUp) {
    const DeviceFamily& b = family("60898-B");
    EXPECT_DOUBLE_EQ(tables->letThrough(b, amperes(32), amperes(6000))->value.base(), 45000);
    EXPECT_DOUBLE_EQ(tables->letThrough(b, amperes(16), amperes(5000))->value.base(), 35000);
    EXPECT_DOUBLE_EQ(tables->letThrough(b, amperes(40), amperes(6000))->value.base(), 54000);
    EXPECT_FALSE(tables->letThrough(b, amperes(63), amperes(6000)));
    // Minimum sizes behind breakers of class 3 (a published site guide, from memory).
    EXPECT_EQ(tables->leastProtective(b, amperes(16), amperes(3000))->value, squareMillimetres(1));
    EXPECT_EQ(tables->leastProtective(b, amperes(32), amperes(3001))->value, squareMillimetres(2.5));
    EXPECT_EQ(tables->leastProtective(family("61009-C"), amperes(10), amperes(1500))->value,
              squareMillimetres(1.5));
    EXPECT_FALSE(tables->leastProtective(b, amperes(50), amperes(1000)));
    EXPECT_FALSE(tables->leastProtective(b, amperes(16), amperes(6001)));
    EXPECT_FALSE(tables->letThrough(b, amperes(16), amperes(25000)));
    EXPECT_FALSE(tables->letThrough(family("3871-B"), amperes(16), amperes(3000)));
}

TEST_F(ReferenceTablesTest, LimitsOfReadings) {
    EXPECT_DOUBLE_EQ(in(tables->insulationMinimum(volts(230))->value, units::megohm), 1);
    EXPECT_TRUE(tables->insulationMinimum(volts(690)));
    const auto general = tables->residualLimit(ResidualDelay::General, 1);
    ASSERT_TRUE(general);
    EXPECT_EQ(general->atMost, milliseconds(300));
    EXPECT_FALSE(general->atLeast);
    const auto delayed = tables->residualLimit(ResidualDelay::Delayed, 1);
    ASSERT_TRUE(delayed);
    EXPECT_EQ(delayed->atMost, seconds(0.5));
    EXPECT_EQ(delayed->atLeast, seconds(0.13));
    EXPECT_FALSE(tables->residualLimit(ResidualDelay::General, 3));
}

TEST_F(ReferenceTablesTest, InspectionItemsHaveKeysOfTheirOwn) {
    std::set<std::string> keys;
    for (const InspectionItem& item : tables->inspectionItems()) {
        EXPECT_TRUE(keys.insert(item.key).second) << item.key;
        EXPECT_FALSE(item.group.empty() || item.text.empty() || item.pointer.empty()) << item.key;
    }
    EXPECT_EQ(keys.size(), 77U);
}

TEST_F(ReferenceTablesTest, MemoryIsSaid) {
    const auto capacity = tables->leastBreakingCapacity(family("1362"));
    ASSERT_TRUE(capacity);
    EXPECT_TRUE(capacity->source.fromMemory);
    EXPECT_EQ(capacity->source.title, "BS 1362:1973");
    EXPECT_THAT(capacity->source.detail, testing::HasSubstr("from memory"));
}

} // namespace
} // namespace loopwright
