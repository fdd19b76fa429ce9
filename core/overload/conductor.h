// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/load.h"
#include "core/reference/reference_tables.h"

#include <optional>

/// How warm a conductor gets under a load that comes and goes, and how its insulation ages. First-order
/// heating, with the resistance that the conductor has at its temperature, but at least that at its limit: so
/// the warm side everywhere (IEC 60287-1-1).
namespace loopwright::overload {

struct Conductor {
    Temperature ambient;
    Temperature limit; ///< that the insulation bears for ever
    Current capacity;  ///< I_z: steadily carried it ends at the limit in that ambient
    Time quick;        ///< time constant if the conductor alone takes up heat: none is quicker
    /// If all of the cable does; nothing where its surroundings do too (in the ground) or nobody knows.
    std::optional<Time> slow;
    InsulationLife life;
    double coefficient = 0; ///< alpha of the resistance at 20 degC, per kelvin; 0: it is that at the limit
};

/// How the warming of a conductor goes on, in shares of its rise at I_z: tau theta' = (I / I_z)2 r - theta,
/// where r = R(theta) / R(limit), at least 1. Closed forms: a step crosses the limit once at most.
class Heating {
  public:
    Heating(const Conductor& conductor, Time constant);

    /// What a step ends in. `slope` is how much more that is for each share more at its start, `excess` the
    /// integral of theta - 1 over the seconds in which that is above 0.
    struct Moment {
        Ratio state = 0;
        double slope = 1;
        double excess = 0;
    };
    Moment after(Ratio start, Current current, Time time) const;
    Ratio stateAfter(Ratio start, Current current, Time time) const {
        return after(start, current, time).state;
    }
    /// (I / I_z)2
    Ratio square(Current current) const;
    /// By which share r rises for each share of theta.
    double feedback() const { return feedback_; }
    Time constant() const { return constant_; }
    /// Where figures end: nothing is left of an insulation, and copper melts.
    Ratio highest() const { return highest_; }

  private:
    Current capacity_;
    Time constant_;
    double feedback_;
    Ratio highest_;
};

/// The temperature of a thermal state.
Temperature temperatureOf(const Conductor& conductor, Ratio state);

/// tau = C (theta_r - theta_a) / (I_z2 R), R per metre at the limit: heat balance of a conductor at I_z
/// (steady: I_z2 R = rise / thermal resistance). `heat` is C in J/(K m) of one conductor, `capacity` what one
/// conductor carries.
Time timeConstant(double heat, TemperatureDifference rise, Current capacity, ResistancePerLength resistance);

/// Over a cycle that has gone on for long.
struct Warmth {
    Temperature peak;      ///< at most
    Temperature leastPeak; ///< at least
    Temperature mean;
};
Warmth warmthUnder(const Conductor& conductor, physics::Duty cycle);

/// How warm it gets within so long of a cycle, from ambient on, heated up as quickly as `constant` says.
Temperature warmestWithin(const Conductor& conductor, Time constant, physics::Duty cycle, Time within);

/// The same as warmthUnder(), and what it does to the insulation.
struct ConductorHeat : Warmth {
    /// How fast the insulation ages, as a multiple of ageing at its limit; estimates, by the least and the
    /// most that activation energies and time constants allow.
    Ratio leastAgeing = 0;
    Ratio mostAgeing = 0;
};
ConductorHeat heatUnder(const Conductor& conductor, const Steps& cycle);

/// exp(E / R (1/T_0 - 1/T)): the speed of ageing at `temperature` as a multiple of that at `reference`
/// (Arrhenius; IEC 60216-1). `energy` in J/mol.
Ratio relativeAgeing(double energy, Temperature reference, Temperature temperature);

} // namespace loopwright::overload
