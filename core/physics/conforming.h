// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/thermal_replica.h"
#include "core/physics/time_current.h"

#include <vector>

/// The thermal replicas that a sound device could be. A standard limits devices at a few points and leaves
/// open what lies between; every replica that keeps within those points is a device that it allows. What is
/// asked of such a set is its two extremes, not a curve fitted to its middle.
namespace loopwright::physics {

/// What a standard tests of thermal operation. Instantaneous releases are no part of it.
struct ThermalLimits {
    std::vector<TimeCurrent> notBefore;  ///< from cold, holds out for at least this time
    std::vector<TimeCurrent> operatedBy; ///< from cold, has operated by this time
    /// A test that follows straight on another: from cold, after the current `before` has flowed for its
    /// time, `operatedBy` operates it (IEC 60898-1, test b after test a).
    struct Warm {
        TimeCurrent before;
        TimeCurrent operatedBy;
    };
    std::optional<Warm> warm;
    /// The largest current that every sound device carries for ever: its rated current, by definition of the
    /// term (IEC 60898-1, 5.2.2; IEC 60269-1, 5.3.1). 0: not known.
    Current carries{};
};

enum class Elements : std::uint8_t {
    One,
    Two, ///< an element in the warmth of its body: what melts in a fuse, the bimetal of a breaker. One time
         ///< constant meets no fuse's gates at both ends, and shows too little of what a breaker's tests
         ///< allow
};

/// Replicas at the edges of the set: of every shape of response that the limits allow, the one of least and
/// the one of largest reference current; of those the ones that are warmest (coolest) of all under some
/// single or repeated pulse of current. A few tens at most; making them takes milliseconds, so make them
/// once.
struct ReplicaSet {
    std::vector<ThermalReplica> early; ///< empty where nothing keeps a device from operating at once
    std::vector<ThermalReplica> late;  ///< empty where nothing makes it operate
};

/// Shapes are taken from a grid of time constants and weights, spaced evenly on logarithmic scales, so the
/// extremes are met to within its fineness (a few per cent of the time). Both sets are empty where no shape
/// meets all limits.
ReplicaSet conformingReplicas(const ThermalLimits& limits, Elements elements);

enum class Operation : std::uint8_t {
    Unknown, ///< no limit bears on it
    Never,   ///< not in any of the cycles
    Operates,
};

/// When one extreme of the set operates. `reached` counts only where it operates.
struct OperationEdge {
    Operation operation = Operation::Unknown;
    Reached reached;
};

struct OperationBand {
    OperationEdge earliest; ///< Never: no sound device operates
    OperationEdge latest;   ///< Never: a sound device may never operate
};

/// One edge of operationOf.
OperationEdge earliestOf(const ReplicaSet& set, Duty duty, Current preload = {},
                         std::uint64_t cycles = forEver);
OperationEdge latestOf(const ReplicaSet& set, Duty duty, Current preload = {},
                       std::uint64_t cycles = forEver);

/// A duty, repeated `cycles` times, after `preload` has warmed the device through.
OperationBand operationOf(const ReplicaSet& set, Duty duty, Current preload = {},
                          std::uint64_t cycles = forEver);

} // namespace loopwright::physics
