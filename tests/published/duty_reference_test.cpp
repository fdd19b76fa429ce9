// SPDX-License-Identifier: GPL-3.0-or-later
//
// Closed forms of a thermal element under a duty against an ODE solver (GNU Scientific Library), which knows
// nothing of them.
#include "tests/published/comparison.h"
#include "tests/support/one_element.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <memory>
#include <random>
#include <sstream>

namespace loopwright::published {
namespace {

using namespace physics;
using test::firstReached, test::peakOver, test::settled, test::stateAtCycle;

constexpr double agreement = 1e-6; // relative

/// Heat by integration: the state, and the state summed over time.
class Integrated {
  public:
    Integrated(const ThermalElement& element, double start)
      : element_(element)
      , values_{start, 0} {}

    void under(Current current, Time time) {
        if (time <= Time()) return;
        Heated heated{steadyState(element_, current), element_.constant.base()};
        gsl_odeiv2_system system{[](double, const double y[], double dydt[], void* of) {
                                     const auto& h = *static_cast<const Heated*>(of);
                                     dydt[0] = (h.end - y[0]) / h.constant;
                                     dydt[1] = y[0];
                                     return static_cast<int>(GSL_SUCCESS);
                                 },
                                 nullptr, 2, &heated};
        const std::unique_ptr<gsl_odeiv2_driver, decltype(&gsl_odeiv2_driver_free)> driver(
            gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, time.base() / 10, 1e-13, 1e-12),
            gsl_odeiv2_driver_free);
        double at = 0;
        gsl_odeiv2_driver_apply(driver.get(), &at, time.base(), values_.data());
    }
    void under(Duty duty) {
        for (const DutyStep& step : duty)
            under(step.current, step.duration);
    }
    double state() const { return values_[0]; }
    double overTime() const { return values_[1]; }

  private:
    struct Heated {
        double end, constant;
    };
    ThermalElement element_;
    std::array<double, 2> values_;
};

struct Trial {
    ThermalElement element;
    std::vector<DutyStep> duty;
    double start;
};

Trial anyTrial(std::mt19937& dice) {
    const auto uniform = [&](double from, double to) {
        return std::uniform_real_distribution<double>(from, to)(dice);
    };
    Trial trial{{amperes(uniform(1, 200)), seconds(std::pow(10, uniform(0, 4)))}, {}, uniform(0, 1.5)};
    const auto steps = std::uniform_int_distribution<int>(1, 5)(dice);
    for (int i = 0; i < steps; ++i) {
        const bool isPause = uniform(0, 1) < 0.3;
        trial.duty.push_back({trial.element.reference * (isPause ? 0.0 : uniform(0.2, 3)),
                              trial.element.constant * std::pow(10, uniform(-2.5, 0.5))});
    }
    return trial;
}

std::string told(const Trial& trial) {
    std::ostringstream text;
    text << "I_ref " << trial.element.reference.base() << " A, tau " << trial.element.constant.base()
         << " s, from " << trial.start << ":";
    for (const DutyStep& step : trial.duty)
        text << " " << step.current.base() << " A for " << step.duration.base() << " s";
    return text.str();
}

bool agree(double ours, double integrated) {
    return std::abs(ours - integrated) <= agreement * std::max(std::abs(integrated), 1e-3);
}

bool cyclesAgree(const Trial& trial) {
    Integrated integrated(trial.element, trial.start);
    bool all = true;
    for (std::uint64_t cycle = 1; cycle <= 6; ++cycle) {
        integrated.under(trial.duty);
        all &= agree(stateAtCycle(trial.element, trial.start, trial.duty, cycle), integrated.state());
    }
    return all;
}

/// From where the limit cycle begins the integration comes back to it, with the same peak and mean.
bool limitCycleAgrees(const Trial& trial) {
    const LimitCycle cycle = settled(trial.element, trial.duty);
    const double begin = cycle.start[0];
    Integrated integrated(trial.element, begin);
    double peak = begin;
    for (const DutyStep& step : trial.duty)
        for (int part = 0; part < 4; ++part) {
            integrated.under(step.current, step.duration / 4);
            peak = std::max(peak, integrated.state());
        }
    return agree(begin, integrated.state()) && agree(peakOver(trial.element, begin, trial.duty), peak) &&
           agree(cycle.peak, peak) && agree(cycle.mean, integrated.overTime() / lengthOf(trial.duty).base());
}

/// Any state that the first ten cycles reach is reached when we say, and at no end of a step before.
bool crossingAgrees(const Trial& trial, double share) {
    double peak = trial.start;
    for (std::uint64_t cycle = 0; cycle < 10; ++cycle)
        peak =
            std::max(peak, peakOver(trial.element,
                                    stateAtCycle(trial.element, trial.start, trial.duty, cycle), trial.duty));
    const double threshold = trial.start + share * (peak - trial.start);
    const auto reached = firstReached(trial.element, trial.start, trial.duty, threshold);
    if (!reached) return false;
    Integrated integrated(trial.element, trial.start);
    bool none = true;
    for (std::uint64_t cycle = 0; cycle <= reached->cycle; ++cycle) {
        Time since;
        for (const DutyStep& step : trial.duty) {
            const bool isLast = cycle == reached->cycle && since + step.duration >= reached->inCycle;
            integrated.under(step.current, isLast ? reached->inCycle - since : step.duration);
            if (isLast) break;
            none &= integrated.state() < threshold * (1 + agreement);
            since += step.duration;
        }
    }
    return none && agree(threshold, integrated.state());
}

TEST(DutyReference, AThousandRandomDutiesAgreeWithTheIntegration) {
    std::mt19937 dice(3);
    Comparison comparison("duties of a thermal element against an ODE solver");
    for (int i = 0; i < 1000; ++i) {
        const Trial trial = anyTrial(dice);
        const double share = std::uniform_real_distribution<double>(0.05, 0.99)(dice);
        const bool cycles = cyclesAgree(trial), limit = limitCycleAgrees(trial),
                   crossing = crossingAgrees(trial, share);
        EXPECT_TRUE(cycles) << "cycles, " << told(trial);
        EXPECT_TRUE(limit) << "limit cycle, " << told(trial);
        EXPECT_TRUE(crossing) << "crossing at " << share << " of the rise, " << told(trial);
        comparison.count(cycles && limit && crossing);
    }
}

} // namespace
} // namespace loopwright::published
