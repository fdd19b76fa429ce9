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

/// exp(-t / tau), worked out again only where the step is another than the last.
class Decay {
  public:
    explicit Decay(double constant)
      : constant_(constant) {}
    double over(double step) {
        constexpr double same = 1e-9; // clocks written with a few digits differ by rounding
        if (std::abs(step - step_) > same * step_) {
            step_ = step;
            decay_ = std::exp(-step / constant_);
        }
        return decay_;
    }

  private:
    double constant_;
    double step_ = 0;
    double decay_ = 1;
};

} // namespace loopwright::overload
