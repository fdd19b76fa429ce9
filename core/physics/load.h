// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

/// What equipment draws.
namespace loopwright::physics {

/// I = P / (U_0 cos phi eta), and a third of that a phase when the load is spread over three (IEC 60050-141:
/// active power of a balanced system is 3 U_0 I cos phi). `efficiency` is 1 when `power` is the electrical
/// input.
Current loadCurrent(Power power, Voltage lineToEarth, bool threePhase, Ratio powerFactor = 1,
                    Ratio efficiency = 1);

/// The converse of loadCurrent: the power that a current stands for.
Power loadPower(Current current, Voltage lineToEarth, bool threePhase, Ratio powerFactor = 1,
                Ratio efficiency = 1);

/// P (U / U_r)2: what a heater of fixed resistance takes at another voltage (Ohm's law).
Power resistivePower(Power rated, Voltage ratedVoltage, Voltage actual);

} // namespace loopwright::physics
