// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>

namespace loopwright {

/// The time now, passed in wherever it is needed so that tests can fix it.
class Clock {
  public:
    virtual ~Clock() = default;
    virtual std::chrono::sys_seconds now() const = 0;
};

class SystemClock final : public Clock {
  public:
    std::chrono::sys_seconds now() const override {
        return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    }
};

class FixedClock final : public Clock {
  public:
    explicit FixedClock(std::chrono::sys_seconds instant)
      : instant_(instant) {}
    std::chrono::sys_seconds now() const override { return instant_; }

  private:
    std::chrono::sys_seconds instant_;
};

} // namespace loopwright
