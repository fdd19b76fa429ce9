// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/current_log.h"

#include <cmath>

/// Going through a log sample by sample, without an exponential for each.
namespace loopwright::overload {

/// How long a sample holds, in seconds.
inline double stepOf(const LoggedChannel& channel, std::size_t sample) {
    return sample + 1 < channel.seconds.size() ? channel.seconds[sample + 1] - channel.seconds[sample]
                                               : channel.lastStep.base();
}

/// Whether two steps are one: clocks written with a few digits differ by rounding.
inline bool isSameStep(double a, double b) {
    constexpr double same = 1e-9;
    return std::abs(a - b) <= same * b;
}

/// exp(-x). Steps of a log are mostly far shorter than a time constant; there eight terms of the series are
/// as good as a double, and several times as fast as what holds for every x.
inline double decayOver(double x) {
    constexpr double seriesUpTo = 0.05; // the ninth term is below 1e-15 of the sum
    if (x > seriesUpTo) return std::exp(-x);
    return 1 - x * (1 - x / 2 * (1 - x / 3 * (1 - x / 4 * (1 - x / 5 * (1 - x / 6 * (1 - x / 7))))));
}

/// exp(-t / tau), worked out again only where the step is another than the last.
class Decay {
  public:
    explicit Decay(double constant)
      : constant_(constant) {}
    double over(double step) {
        if (!isSameStep(step, step_)) {
            step_ = step;
            decay_ = decayOver(step / constant_);
        }
        return decay_;
    }

  private:
    double constant_;
    double step_ = 0;
    double decay_ = 1;
};

} // namespace loopwright::overload
