// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/resistivity.h"

/// The earth fault loop: its parts, its limit, its temperature, and the readings of a ring.
namespace loopwright::physics {

/// Z_s = Z_e + (R_1 + R_2), magnitudes added. Adding magnitudes errs on the safe side of adding vectors.
Resistance loopImpedance(Resistance external, Resistance lineAndProtective);

/// Z_s <= U_0 c / I_a: the largest loop through which at least I_a flows (IEC 60364-4-41, 411.4.4; c_min from
/// IEC 60909-0, and 1 where a rule set has none).
Resistance permittedLoop(Voltage lineToEarth, Ratio voltageFactor, Current operating);

/// R = R_20 (1 + alpha_20 (theta - 20)), taken from one temperature to another (IEC 60228, annex B).
/// `coefficient` is alpha at 20 degC, per kelvin.
Resistance atTemperature(Resistance resistance, Temperature from, Temperature to, double coefficient);

/// A measured loop with its circuit's conductors at another temperature. Only what lies beyond the board
/// (reading - external) is warmed; a reading below `external` is left as it is.
Resistance loopAtTemperature(Resistance measured, Resistance external, Temperature from, Temperature to,
                             double coefficient);

/// R of one conductor, or of several alike in parallel.
Resistance conductorResistance(ResistancePerLength perLength, Length length, double parallelConductors = 1);

/// R = rho l / S.
Resistance conductorResistance(Resistivity resistivity, Length length, CrossSection size);

/// R_1 + R_2 of a radial circuit from its resistances per length.
Resistance lineAndProtective(ResistancePerLength line, ResistancePerLength protective, Length length);

/// The length that a resistance tells of.
Length lengthFrom(Resistance resistance, ResistancePerLength perLength);

/// L = f U_0 S / (rho (1 + m) I_a): the longest run by the conventional method, in which a fault leaves a
/// share f of the voltage at its beginning (0.8) and reactance is left out; m is the size of the line over
/// that of the protective conductor (common practice of handbooks to IEC 60364; up to about 120 mm2).
Length conventionalLongestRun(Voltage lineToEarth, Ratio voltageShare, CrossSection line,
                              Ratio lineToProtective, Resistivity resistivity, Current operating);

/// What is read at every socket-outlet of a sound ring with line and protective conductor cross-connected,
/// and R_1 + R_2 of the ring: (r_1 + r_2) / 4 (IET Guidance Note 3).
Resistance ringLineAndProtective(Resistance line, Resistance protective);

/// r_2 that r_1 leads to expect when both conductors run the same way: r_1 times the ratio of their
/// resistances per length, protective over line (for 2.5/1.5 mm2: 12.1/7.41 = 1.63, IEC 60228; by ratio of
/// sections 1.67 in practice).
Resistance ringProtectiveExpected(Resistance line, Ratio protectiveToLine);

/// What is read at a socket-outlet of such a ring, `position` of the way round it (0 at the board, 0.5 half
/// way): the two ways round, r_1 x + r_2 (1-x) and r_1 (1-x) + r_2 x, in parallel. Half way it is (r_1 + r_2)
/// / 4, at the board r_1 r_2 / (r_1 + r_2), which is less where the conductors differ.
Resistance ringLineAndProtectiveAt(Resistance line, Resistance protective, Ratio position);

/// How far two readings that should agree differ, as a share of the larger. Two zeros agree.
Ratio difference(Resistance a, Resistance b);

} // namespace loopwright::physics
