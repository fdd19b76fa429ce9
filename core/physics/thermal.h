// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <optional>

/// First-order heating: tau theta' = (I / I_ref)2 - theta (IEC 60255-149). theta is the thermal state: the
/// temperature rise as a share of the rise that `reference` ends in. What is cold has 0, what protects itself
/// operates at 1.
namespace loopwright::physics {

struct ThermalElement {
    Current reference; ///< k I_B: the largest current that never operates it
    Time constant;     ///< tau
};

/// The thermal state that `current` ends in: (I / I_ref)2.
Ratio steadyState(const ThermalElement& element, Current current);

/// theta_inf + (theta_0 - theta_inf) exp(-t / tau).
Ratio stateAfter(const ThermalElement& element, Ratio start, Current current, Time time);

/// How long until the state is 1: tau ln((theta_inf - theta_0) / (theta_inf - 1)). From cold theta_0 is 0,
/// after a steady load I_p it is steadyState of that load (IEC 60255-149, cold and hot curve). Nothing where
/// the current never gets there; 0 where it is there already.
std::optional<Time> operatingTime(const ThermalElement& element, Current current, Ratio start = 0);

/// The current that takes exactly `time` to operate the element: the converse of operatingTime. `start` is
/// below 1.
Current operatingCurrent(const ThermalElement& element, Time time, Ratio start = 0);

/// How long a state above `end` takes to cool to it without current: tau ln(theta_0 / theta_end). 0 where it
/// is there already.
Time coolingTime(const ThermalElement& element, Ratio start, Ratio end);

/// tau that lets a state rise from that of `preload` to 1 in `time` at `current`; the three currents are
/// multiples of one base: t / ln((n2 - p2) / (n2 - k2)). From the stall time of a motor, n is the stalled
/// current and k the multiple that never operates (IEC 60255-149). Nothing unless p < k < n.
std::optional<Time> timeConstantFromStall(Time time, Ratio current, Ratio preload, Ratio reference);

/// tau of a conductor from the current that it carries for ever and the one that it bears for `shortTime`:
/// (I_short / I_max)2 t, heat that does not leave in the short time (IEC 60255-149, cables; usually 1 s).
Time timeConstantFromShortTime(Current continuous, Current shortTime, Time time);

/// theta_a + (theta_n - theta_a) (I / I_z)2: the temperature that a conductor ends in at a load; I_z and the
/// ambient theta_a belong together (IEC 60287-1-1: losses grow with I2; resistance taken at its limit
/// temperature, which errs on the warm side below I_z and on the cool side above).
Temperature conductorTemperature(Temperature ambient, Temperature limit, Current load, Current capacity);

/// The same with the resistance that the conductor has at the temperature it ends in; `coefficient` is alpha
/// at 20 degC, per kelvin. Nothing where heating outruns cooling and no temperature is the last.
std::optional<Temperature> conductorTemperature(Temperature ambient, Temperature limit, Current load,
                                                Current capacity, double coefficient);

/// steady + (start - steady) exp(-t / tau): a body on its way to a temperature.
Temperature temperatureAfter(Temperature start, Temperature steady, Time constant, Time time);

} // namespace loopwright::physics
