// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/current_log.h"

#include <algorithm>
#include <cmath>
#include <span>

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

/// exp(-t / tau), worked out again only where the step is another than the last.
class Decay {
  public:
    explicit Decay(double constant)
      : rate_(1 / constant) {}
    double over(double step) {
        if (!isSameStep(step, step_)) {
            step_ = step;
            const double x = step * rate_;
            decay_ = x > seriesUpTo ? std::exp(-x) : series(x);
        }
        return decay_;
    }
    /// Over each of several steps. `decays` has room for as many.
    void over(std::span<const double> steps, double* decays) const {
        const bool areShort = std::ranges::max(steps) * rate_ <= seriesUpTo;
        for (std::size_t i = 0; i < steps.size(); ++i)
            decays[i] = areShort ? series(steps[i] * rate_) : std::exp(-steps[i] * rate_);
    }

  private:
    static constexpr double seriesUpTo = 0.05; ///< the ninth term is below 1e-15 of the sum
    /// exp(-x). Steps of a log are mostly far shorter than a time constant; there eight terms of the series
    /// are as good as a double, and several times as fast as what holds for every x.
    static double series(double x) {
        constexpr double half = 1.0 / 2, sixth = 1.0 / 6, of4 = 1.0 / 24, of5 = 1.0 / 120, of6 = 1.0 / 720,
                         of7 = 1.0 / 5040;
        return 1 - x * (1 - x * (half - x * (sixth - x * (of4 - x * (of5 - x * (of6 - x * of7))))));
    }

    double rate_;
    double step_ = 0;
    double decay_ = 1;
};

} // namespace loopwright::overload
