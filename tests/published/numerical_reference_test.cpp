// SPDX-License-Identifier: GPL-3.0-or-later
//
// Closed forms of ours against the GNU Scientific Library, which works them out numerically.
#include "core/physics/heat.h"
#include "core/physics/thermal.h"
#include "core/reference/reference_tables.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_interp.h>
#include <gsl/gsl_odeiv2.h>
#include <gsl/gsl_roots.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <memory>

namespace loopwright::published {
namespace {

using namespace physics;

double integral(const std::function<double(double)>& f, double from, double to) {
    constexpr std::size_t pieces = 100;
    const std::unique_ptr<gsl_integration_workspace, decltype(&gsl_integration_workspace_free)> workspace(
        gsl_integration_workspace_alloc(pieces), gsl_integration_workspace_free);
    gsl_function function{
        [](double x, void* of) { return (*static_cast<const std::function<double(double)>*>(of))(x); },
        const_cast<std::function<double(double)>*>(&f)};
    double result = 0, error = 0;
    gsl_integration_qag(&function, from, to, 0, 1e-12, pieces, GSL_INTEG_GAUSS31, workspace.get(), &result,
                        &error);
    return result;
}

TEST(NumericalReference, AdiabaticHeatIntegratesToTheFactorOfTheStandard) {
    // Copper and aluminium, IEC 60364-5-54 table A.54.1. All heat stays in: Q_c dtheta = rho(theta) (I/S)2
    // dt.
    struct Material {
        double heat, zeroPoint, resistivity;
    };
    for (const Material& m : {Material{3.45e-3, 234.5, 17.241e-6}, Material{2.5e-3, 228, 28.264e-6}})
        for (const double from : {30.0, 70.0, 90.0})
            for (const double to : {140.0, 160.0, 250.0}) {
                const double k2 = integral(
                    [&](double t) {
                        return m.heat / (m.resistivity * (m.zeroPoint + t) / (m.zeroPoint + 20));
                    },
                    from, to);
                const double k = adiabaticFactor({joulesPerKelvinCubicMillimetre(m.heat),
                                                  kelvins(m.zeroPoint), ohmMillimetres(m.resistivity)},
                                                 celsius(from), celsius(to))
                                     .base();
                EXPECT_NEAR(k / std::sqrt(k2), 1, 1e-9) << "from " << from << " to " << to << " degC";
            }
}

/// The state after `time` by an eighth-order Runge-Kutta method.
double integratedState(const ThermalElement& element, double start, Current current, Time time) {
    struct Heated {
        double end, constant;
    } heated{steadyState(element, current), element.constant.base()};
    gsl_odeiv2_system system{[](double, const double y[], double dydt[], void* of) {
                                 const auto& h = *static_cast<const Heated*>(of);
                                 dydt[0] = (h.end - y[0]) / h.constant;
                                 return 0;
                             },
                             nullptr, 1, &heated};
    const std::unique_ptr<gsl_odeiv2_driver, decltype(&gsl_odeiv2_driver_free)> driver(
        gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1e-3, 1e-12, 1e-12),
        gsl_odeiv2_driver_free);
    double at = 0, state = start;
    gsl_odeiv2_driver_apply(driver.get(), &at, time.base(), &state);
    return state;
}

TEST(NumericalReference, AnElementIsAtOneWhenItOperates) {
    const ThermalElement element{amperes(100), seconds(300)};
    for (const double current : {101.0, 145.0, 255.0, 1000.0})
        for (const double preload : {0.0, 50.0, 99.0}) {
            const Ratio start = steadyState(element, amperes(preload));
            const Time time = *operatingTime(element, amperes(current), start);
            EXPECT_NEAR(integratedState(element, start, amperes(current), time), 1, 1e-9)
                << current << " A after " << preload << " A";
        }
}

/// Published points of a fuse, interpolated in logarithms by the library.
class LogarithmicCurve {
  public:
    explicit LogarithmicCurve(const std::vector<TimeCurrent>& points) {
        for (const TimeCurrent& point : points) {
            currents_.push_back(std::log(point.current.base()));
            times_.push_back(std::log(point.time.base()));
        }
        interpolation_.reset(gsl_interp_alloc(gsl_interp_linear, currents_.size()));
        gsl_interp_init(interpolation_.get(), currents_.data(), times_.data(), currents_.size());
    }
    double time(double current) const {
        return std::exp(gsl_interp_eval(interpolation_.get(), currents_.data(), times_.data(),
                                        std::log(current), nullptr));
    }
    double first() const { return std::exp(currents_.front()); }
    double last() const { return std::exp(currents_.back()); }

  private:
    std::vector<double> currents_, times_;
    std::unique_ptr<gsl_interp, decltype(&gsl_interp_free)> interpolation_{nullptr, gsl_interp_free};
};

/// The current that operates a device in `time`, by bracketing the root of operatingTime.
double currentByRoot(const DeviceTimes& device, double time, double from, double to) {
    struct Sought {
        const DeviceTimes& device;
        double time;
    } sought{device, time};
    gsl_function function{[](double current, void* of) {
                              const auto& s = *static_cast<const Sought*>(of);
                              return std::log(operatingTime(s.device, amperes(current)).latest.time.base() /
                                              s.time);
                          },
                          &sought};
    const std::unique_ptr<gsl_root_fsolver, decltype(&gsl_root_fsolver_free)> solver(
        gsl_root_fsolver_alloc(gsl_root_fsolver_brent), gsl_root_fsolver_free);
    constexpr double hairInside = 1e-9; // the ends have been through a logarithm and back
    gsl_root_fsolver_set(solver.get(), &function, from * (1 + hairInside), to * (1 - hairInside));
    for (int step = 0; step < 200; ++step) {
        gsl_root_fsolver_iterate(solver.get());
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver.get()),
                                   gsl_root_fsolver_x_upper(solver.get()), 0, 1e-12) == GSL_SUCCESS)
            break;
    }
    return gsl_root_fsolver_root(solver.get());
}

TEST(NumericalReference, EveryFuseCurveIsInterpolatedAsTheLibraryDoes) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    int curves = 0;
    for (const DeviceFamily& family : tables.deviceFamilies())
        for (const Current rated : tables.ratings(family)) {
            DeviceTimes curve; // promises left out: they would cut the curve short
            curve.curve = tables.deviceTimes(family, rated)->value.curve;
            if (curve.curve.size() < 2) continue;
            ++curves;
            const LogarithmicCurve reference(curve.curve);
            for (const double share : {0.07, 0.31, 0.5, 0.83}) {
                const double current =
                                 std::pow(reference.first(), 1 - share) * std::pow(reference.last(), share),
                             time = reference.time(current);
                EXPECT_NEAR(operatingTime(curve, amperes(current)).latest.time.base() / time, 1, 1e-9)
                    << family.key << " " << rated.base() << " A at " << current << " A";
                const double sought = currentByRoot(curve, time, reference.first(), reference.last());
                EXPECT_NEAR(currentForTime(curve, seconds(time)).operates.current.base() / sought, 1, 1e-9)
                    << family.key << " " << rated.base() << " A in " << time << " s";
            }
        }
    EXPECT_GT(curves, 30);
}

} // namespace
} // namespace loopwright::published
