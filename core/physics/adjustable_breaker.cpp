// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/adjustable_breaker.h"

#include <algorithm>

namespace loopwright::physics {

namespace {

/// The longest that the quick releases leave it at a current: nothing where none of them may act there.
std::optional<Time> quickestRelease(const BreakerSettings& settings, const BreakerSpreads& spreads,
                                    Current current) {
    if (settings.instantaneous && current > *settings.instantaneous * spreads.instantaneous.low)
        return Time();
    if (settings.shortTime && current > settings.shortTime->current * spreads.shortTimeCurrent.low)
        return settings.shortTime->time * spreads.shortTimeDelay.low;
    return std::nullopt;
}

class Promises {
  public:
    Promises(const BreakerSettings& settings, const BreakerSpreads& spreads)
      : settings_(settings)
      , spreads_(spreads) {}

    void notBefore(Current current, Time time) {
        if (const auto quick = quickestRelease(settings_, spreads_, current)) time = std::min(time, *quick);
        if (time > Time()) times_.notBefore.push_back({current, time});
    }
    void operatedBy(Current current, Time time) { times_.operatedBy.push_back({current, time}); }
    DeviceTimes take() { return std::move(times_); }

  private:
    const BreakerSettings& settings_;
    const BreakerSpreads& spreads_;
    DeviceTimes times_;
};

} // namespace

DeviceTimes breakerTimes(const BreakerSettings& settings, const BreakerSpreads& spreads) {
    Promises promises(settings, spreads);
    promises.notBefore(settings.overload * spreads.conventional.low, spreads.conventionalTime);
    promises.operatedBy(settings.overload * spreads.conventional.high, spreads.conventionalTime);
    if (const auto& set = settings.overloadTime) {
        promises.notBefore(set->current, set->time * spreads.overloadTime.low);
        promises.operatedBy(set->current, set->time * spreads.overloadTime.high);
    }
    if (const auto& set = settings.shortTime) {
        promises.notBefore(set->current * spreads.shortTimeCurrent.low, spreads.instantaneousTime);
        const bool isWithoutDelay = set->time == Time();
        promises.operatedBy(set->current * spreads.shortTimeCurrent.high,
                            isWithoutDelay ? spreads.instantaneousTime
                                           : set->time * spreads.shortTimeDelay.high);
    }
    if (const auto& set = settings.instantaneous) {
        promises.notBefore(*set * spreads.instantaneous.low, spreads.instantaneousTime);
        promises.operatedBy(*set * spreads.instantaneous.high, spreads.instantaneousTime);
    }
    return promises.take();
}

} // namespace loopwright::physics
