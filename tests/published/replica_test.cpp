// SPDX-License-Identifier: GPL-3.0-or-later
//
// The closed forms of thermal replicas against the ODE solver of the GNU Scientific Library.
#include "core/physics/thermal_replica.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <random>
#include <sstream>

namespace loopwright::published {
namespace {

using namespace physics;

/// A replica and a duty that nobody chose.
struct Trial {
    ThermalReplica replica;
    std::vector<DutyStep> duty;
    ReplicaState start;

    std::string text() const {
        std::ostringstream out;
        out << "I_ref " << replica.reference.base() << " A; branches";
        for (const ThermalBranch& branch : replica.branches)
            out << " " << branch.weight << " of " << branch.constant.base() << " s";
        out << "; start " << start[0] << " " << start[1] << "; duty";
        for (const DutyStep& piece : duty)
            out << " " << piece.current.base() << " A for " << piece.duration.base() << " s";
        return out.str();
    }
};

class Chance {
  public:
    explicit Chance(unsigned seed)
      : engine_(seed) {}
    double between(double low, double high) { return low + (high - low) * unit_(engine_); }
    double logarithmic(double low, double high) { return low * std::pow(high / low, unit_(engine_)); }
    Trial trial() {
        Trial trial;
        const bool two = between(0, 1) < 0.5;
        const double weight = two ? between(0.02, 0.98) : 1;
        trial.replica = {
            amperes(logarithmic(5, 500)),
            {{{weight, seconds(logarithmic(2, 100))}, {1 - weight, seconds(logarithmic(100, 2000))}}}};
        for (int pieces = static_cast<int>(between(1, 5)); pieces > 0; --pieces)
            trial.duty.push_back({trial.replica.reference * (between(0, 1) < 0.3 ? 0 : between(0.2, 2.5)),
                                  seconds(logarithmic(1, 600))});
        if (between(0, 1) < 0.5) trial.start = {between(0, 0.9), between(0, 0.9)};
        return trial;
    }

  private:
    std::mt19937 engine_;
    std::uniform_real_distribution<double> unit_{0, 1};
};

/// The same replica, integrated piece by piece.
class Integrated {
  public:
    explicit Integrated(const Trial& trial)
      : trial_(trial)
      , state_(trial.start) {}

    void advance(Current current, double time) {
        if (time <= 0) return;
        const double share = current / trial_.replica.reference;
        Heat heat{share * share,
                  {trial_.replica.branches[0].constant.base(), trial_.replica.branches[1].constant.base()}};
        gsl_odeiv2_system system{[](double, const double y[], double dydt[], void* of) {
                                     const auto& h = *static_cast<const Heat*>(of);
                                     for (std::size_t i = 0; i < 2; ++i)
                                         dydt[i] = (h.end - y[i]) / h.constants[i];
                                     return int(GSL_SUCCESS);
                                 },
                                 nullptr, 2, &heat};
        const std::unique_ptr<gsl_odeiv2_driver, decltype(&gsl_odeiv2_driver_free)> driver(
            gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1e-2, 1e-10, 1e-10),
            gsl_odeiv2_driver_free);
        double at = 0;
        gsl_odeiv2_driver_apply(driver.get(), &at, time, state_.data());
    }
    /// One cycle; up to `until` seconds into it.
    void cycle(double until = 1e300) {
        for (const DutyStep& piece : trial_.duty) {
            advance(piece.current, std::min(until, piece.duration.base()));
            until -= piece.duration.base();
            if (until <= 0) return;
        }
    }
    const ReplicaState& state() const { return state_; }
    double theta() const { return thermalState(trial_.replica, state_); }

  private:
    struct Heat {
        double end;
        std::array<double, 2> constants;
    };
    const Trial& trial_;
    ReplicaState state_;
};

constexpr int trials = 1000;
constexpr double agreement = 1e-6;

void expectClose(double worked, double reference, const Trial& trial, const char* what) {
    EXPECT_LE(std::abs(worked - reference), agreement * std::max(1e-3, std::abs(reference)))
        << what << ": " << worked << " for " << reference << "; " << trial.text();
}

TEST(Replica, StatesAfterRandomDutiesAreThoseOfTheSolver) {
    Chance chance(1);
    for (int i = 0; i < trials; ++i) {
        const Trial trial = chance.trial();
        Integrated reference(trial);
        reference.cycle();
        const ReplicaState state = stateAfter(trial.replica, trial.start, trial.duty);
        expectClose(state[0], reference.state()[0], trial, "element");
        expectClose(state[1], reference.state()[1], trial, "body");
        if (HasFailure()) break;
    }
    std::printf("states after random duties: %d compared\n", trials);
}

TEST(Replica, ALimitCycleLeadsBackToItselfAndIsNeverPassed) {
    Chance chance(2);
    for (int i = 0; i < trials && !HasFailure(); ++i) {
        Trial trial = chance.trial();
        const LimitCycle settled = *limitCycle(trial.replica, trial.duty);
        trial.start = settled.start;
        Integrated reference(trial);
        double peak = reference.theta();
        for (const DutyStep& piece : trial.duty)
            for (int part = 0; part < 20; ++part) {
                reference.advance(piece.current, piece.duration.base() / 20);
                peak = std::max(peak, reference.theta());
            }
        expectClose(reference.state()[0], settled.start[0], trial, "element");
        expectClose(reference.state()[1], settled.start[1], trial, "body");
        EXPECT_LE(peak, settled.peak * (1 + agreement)) << trial.text();
        EXPECT_GE(peak, settled.peak * 0.8) << "the peak is no bound but is reached; " << trial.text();
    }
}

TEST(Replica, TheFirstCrossingIsTheSolversFirst) {
    Chance chance(3);
    int crossed = 0, late = 0;
    for (int i = 0; i < trials && !HasFailure(); ++i) {
        const Trial trial = chance.trial();
        const auto crossing = firstCrossing(trial.replica, trial.duty, trial.start);
        Integrated reference(trial);
        const std::uint64_t cycles = crossing ? std::min<std::uint64_t>(crossing->cycle, 40) : 20;
        for (std::uint64_t cycle = 0; cycle < cycles; ++cycle) {
            EXPECT_LT(peakDuring(trial.replica, reference.state(), trial.duty), 1 + agreement)
                << "crossed in cycle " << cycle << " already; " << trial.text();
            reference.cycle();
        }
        if (!crossing || crossing->cycle > 40) continue;
        ++crossed;
        late += crossing->cycle > 0;
        reference.cycle(crossing->inCycle.base());
        expectClose(reference.theta(), 1, trial, "theta at the crossing");
    }
    EXPECT_GT(crossed, trials / 4);
    EXPECT_GT(late, 20) << "crossings after the first cycle";
    std::printf("first crossings: %d compared, %d of them after the first cycle\n", crossed, late);
}

} // namespace
} // namespace loopwright::published
