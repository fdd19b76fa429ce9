// SPDX-License-Identifier: GPL-3.0-or-later
// Each MISUSE is a line that must not compile; without one everything here does, so that a refusal is known
// to come from that line.
#include "core/units/quantity.h"

namespace loopwright {

Current drawn = volts(230) / ohms(10);
TemperatureDifference rise = celsius(70) - celsius(20);

#if MISUSE == 1
auto sum = ohms(1) + amperes(1);
#elif MISUSE == 2
Current current = volts(230) * ohms(10);
#elif MISUSE == 3
bool isLess = seconds(1) < metres(1);
#elif MISUSE == 4
Current bare = 16.0;
#elif MISUSE == 5
auto sum = celsius(20) + celsius(50);
#elif MISUSE == 6
CrossSection size = metres(1) * metres(1);
#elif MISUSE == 7
auto sum = amperes(1) - ohms(1);
#endif

} // namespace loopwright
