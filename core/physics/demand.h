// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <array>
#include <span>

/// What many loads ask for together, and how three phases share it.
namespace loopwright::physics {

/// How much of the full load currents of one kind counts: all of it up to `inFull` amperes, and beyond that
/// the share of the largest, of the second and of each further one; `withSocket` on top where a cooker's
/// control unit has a socket-outlet.
struct Allowance {
    Current inFull;
    Ratio largest = 1, second = 1, others = 1;
    Current withSocket;
};

/// What an allowance asks of several loads of one kind, so that they can be added one by one.
struct LoadSums {
    Current total, largest, second;
    void add(Current load);
};

/// The demand of loads of one kind after its allowance, as below.
Current demandAfterAllowance(const LoadSums& loads, const Allowance& allowance, bool hasSocket = false);

/// The demand of several loads of one kind after its allowance. The shares follow the size of the loads,
/// whatever their order. `inFull` counts once for all of them, and only where the three shares are one.
Current demand(std::span<const Current> loads, const Allowance& allowance, bool hasSocket = false);

/// A line's current and the power factor that it is taken at, lagging.
struct LineLoad {
    Current current;
    Ratio powerFactor = 1;
};

/// The current in the neutral of three phases: the sum of three phasors, each lagging behind its voltage by
/// its own angle (Kirchhoff's current law). Fundamental frequency only: harmonics of the third order add to
/// it.
Current neutralCurrent(const std::array<LineLoad, 3>& lines);

/// The largest departure of a line's current from the mean of the three, as a share of the mean. 0 where none
/// flows.
Ratio imbalance(const std::array<Current, 3>& lines);

} // namespace loopwright::physics
