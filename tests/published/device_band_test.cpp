// SPDX-License-Identifier: GPL-3.0-or-later
//
// The set of thermal replicas of every device against what its standard tests. Sources, each beside its
// check: IEC 60898-1 table 7 and IEC 61009-1 (1.13, 1.45 and 2.55 I_n); IEC 60269-1 tables 2 and 3, IEC
// 60269-2 (conventional currents and gates of gG fuses); BS 1362 zones; published currents of BS 88-2, 88-3,
// 1361, 3036 (BS 7671, appendix 3).
#include "core/reference/csv.h"
#include "core/reference/reference_tables.h"
#include "tests/published/comparison.h"

#include <gtest/gtest.h>

#include <array>

namespace loopwright::published {
namespace {

using namespace physics;

const ReferenceTables& tables() {
    static const ReferenceTables read = ReferenceTables::builtIn();
    return read;
}

/// A current that begins and does not end, from cold or after a preload.
OperationBand steady(const ThermalDevice& device, Current current, Current preload = {}) {
    const std::array duty{DutyStep{current, hours(1e5)}};
    return operationOf(device.replicas, duty, preload, 1);
}

/// Times at the edge of a limit are met to within the rounding of the replicas' grid.
constexpr double agreement = 1e-6;

bool holdsOut(const ThermalDevice& device, Current current, Time time) {
    const OperationEdge edge = steady(device, current).earliest;
    return edge.operation != Operation::Operates || edge.reached.inAll >= time * (1 - agreement);
}
bool hasOperated(const ThermalDevice& device, Current current, Time time, Current preload = {}) {
    const OperationEdge edge = steady(device, current, preload).latest;
    return edge.operation == Operation::Operates && edge.reached.inAll <= time * (1 + agreement);
}

std::string told(const DeviceFamily& family, Current rated, Current current) {
    return family.key + " " + std::to_string(rated.base()) + " A at " + std::to_string(current.base()) + " A";
}

// IEC 60898-1, table 7 (IEC 61009-1 likewise): a) 1.13 I_n, cold, not within the conventional time; b) 1.45
// I_n straight after it, within it; c) 2.55 I_n, cold, longer than 1 s, less than 60 s up to 32 A and 120 s
// above. Conventional time 1 h up to 63 A, 2 h above.
TEST(DeviceBand, EveryBreakerOfIec60898PassesItsThermalTests) {
    Comparison comparison("thermal tests of breakers, IEC 60898-1 table 7");
    for (const char* key : {"60898-B", "60898-C", "60898-D", "61009-B", "61009-C", "61009-D"}) {
        const DeviceFamily& family = *tables().deviceFamily(key);
        for (const Current rated : tables().ratings(family)) {
            const ThermalDevice& device = *tables().thermalDevice(family, rated);
            const Time conventional = rated <= amperes(63) ? hours(1) : hours(2);
            const Time longest = rated <= amperes(32) ? seconds(60) : seconds(120);
            const bool passes = holdsOut(device, rated * 1.13, conventional) &&
                                hasOperated(device, rated * 1.45, conventional, rated * 1.13) &&
                                holdsOut(device, rated * 2.55, seconds(1)) &&
                                hasOperated(device, rated * 2.55, longest);
            EXPECT_TRUE(passes) << told(family, rated, rated);
            comparison.count(passes);
            EXPECT_NE(steady(device, rated * 1.44).latest.operation, Operation::Operates)
                << "just below 1.45 I_n nothing assures operation; " << told(family, rated, rated * 1.44);
            EXPECT_EQ(steady(device, rated * 1.14).earliest.operation, Operation::Operates)
                << "just above 1.13 I_n nothing excludes it; " << told(family, rated, rated * 1.14);
        }
    }
}

// IEC 60269-1, table 3, and IEC 60269-2: four gates a rating; table 2: 1.25 and 1.6 I_n (1.5 and 2.1 or 1.9
// below 16 A) for the conventional time.
TEST(DeviceBand, EveryGgFuseStandsWithinItsGatesAndConventionalCurrents) {
    Comparison comparison("gates and conventional currents of gG fuses, IEC 60269");
    const DeviceFamily& family = *tables().deviceFamily("60269-gG");
    csv::read("fuse_gg_gates.csv",
              std::array{"In_A", "Imin_10s_A", "Imax_5s_A", "Imin_0p1s_A", "Imax_0p1s_A", "Inf_multiple",
                         "If_multiple", "conventional_time_h"},
              [&](const csv::Row& row) {
                  const Current rated = amperes(row.number("In_A"));
                  const ThermalDevice& device = *tables().thermalDevice(family, rated);
                  const Time conventional = hours(row.number("conventional_time_h"));
                  const auto current = [&](const char* column) { return amperes(row.number(column)); };
                  const bool stands = holdsOut(device, current("Imin_10s_A"), seconds(10)) &&
                                      hasOperated(device, current("Imax_5s_A"), seconds(5)) &&
                                      holdsOut(device, current("Imin_0p1s_A"), seconds(0.1)) &&
                                      hasOperated(device, current("Imax_0p1s_A"), seconds(0.1)) &&
                                      holdsOut(device, rated * row.number("Inf_multiple"), conventional) &&
                                      hasOperated(device, rated * row.number("If_multiple"), conventional);
                  EXPECT_TRUE(stands) << told(family, rated, rated);
                  comparison.count(stands);
              });
}

// Published currents of fuses, and the zones of BS 1362: each that the tables hold.
TEST(DeviceBand, EveryFuseKeepsItsPublishedPoints) {
    Comparison comparison("published times of fuses, BS 7671 appendix 3 and BS 1362");
    for (const char* key : {"88-2", "88-3", "1361", "3036", "1362"}) {
        const DeviceFamily& family = *tables().deviceFamily(key);
        for (const Current rated : tables().ratings(family)) {
            const ThermalDevice& device = *tables().thermalDevice(family, rated);
            const auto times = tables().deviceTimes(family, rated);
            ASSERT_TRUE(times);
            for (const auto* points : {&times->value.operatedBy, &times->value.curve})
                for (const TimeCurrent& point : *points) {
                    const bool operated = hasOperated(device, point.current, point.time);
                    EXPECT_TRUE(operated) << told(family, rated, point.current);
                    comparison.count(operated);
                }
            for (const TimeCurrent& point : times->value.notBefore) {
                const bool held = holdsOut(device, point.current, point.time);
                EXPECT_TRUE(held) << told(family, rated, point.current);
                comparison.count(held);
            }
        }
    }
}

// Rated current: carried for ever (IEC 60898-1, 5.2.2; IEC 60269-1, 5.3.1).
TEST(DeviceBand, EveryDeviceCarriesItsRatedCurrent) {
    for (const DeviceFamily& family : tables().deviceFamilies())
        for (const Current rated : tables().ratings(family))
            EXPECT_NE(steady(*tables().thermalDevice(family, rated), rated).earliest.operation,
                      Operation::Operates)
                << told(family, rated, rated);
}

} // namespace
} // namespace loopwright::published
