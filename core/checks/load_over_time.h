// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"
#include "core/overload/hidden_overload.h"
#include "core/overload/logged_current.h"

namespace loopwright {

/// I_b of a circuit with the duty of what makes it up.
struct LoadOverTime {
    Figure<Current> current;
    std::vector<overload::Piece> pieces; ///< in the phase loaded most; together they come to the current
    overload::Load load;
};

/// `current` is I_b, as loadCurrent() gives it. The pieces take part in it as their own currents do, whatever
/// it was taken from itself. Where a piece's current is not known, and it is not the only one, the load
/// counts as running without end; where any piece has a duty, that is not known for sure. Runs and rests are
/// shown.
LoadOverTime loadOverTime(const VisitContext& visit, const CircuitRecords& circuit,
                          const Figure<Current>& current, Worksheet& sheet);

/// The same of one piece of equipment by itself, where it draws more than `rated`. Nothing where it does not,
/// or where its figures are not recorded, which is not noted as missing here.
std::optional<LoadOverTime> loadAbove(Current rated, const VisitContext& visit, const Circuit& circuit,
                                      const Equipment& equipment);

/// What the overload release is rated for: I_n, or the setting I_r of an adjustable breaker that has one.
std::optional<Current> overloadRating(const CircuitRecords& circuit, Worksheet& sheet);

/// What the circuit's wiring is to its heat, its capacity being `capacity`; of a ring that of the whole load.
/// Without `constants` it counts as warm at once, which is all that a steady load asks. Nothing where no row
/// gives its temperatures; noted on the sheet.
std::optional<overload::Conductor> conductorOf(const CircuitContext& context, Current capacity,
                                               bool constants, Worksheet& sheet);

/// The question of whether `load` can go on unnoticed through a device where it was calibrated; `rated` is
/// its overloadRating(). Nothing where the family is not made in this rating. `load` must outlive it.
std::optional<overload::Question> overloadQuestion(const VisitContext& visit, const DeviceFamily& family,
                                                   const Device& device, Current rated,
                                                   const overload::Load& load);

/// The same of a circuit's own device, whose family is known, in its place: what warmth leaves of its
/// currents is shareInWarmth() where that is known or bounded from below, and what cold adds to them
/// shareInCold().
std::optional<overload::Question> ownOverloadQuestion(const CircuitContext& context, Current rated,
                                                      const overload::Load& load, Worksheet& sheet);

/// How the question's answer takes account of that share; asked where there is less than all of it.
Term earliestInWarmth(const overload::Question& question);
inline bool isWarm(const overload::Question& question) {
    return question.inWarmth && *question.inWarmth < 1;
}

/// The same of the cold; asked where it adds to the latest device's currents, or nobody knows how much.
Term latestInCold(const overload::Question& question);
inline bool isCold(const overload::Question& question) {
    return question.inCold != 1;
}

/// A piece of equipment that overloads the fuse in its plug or outlet, where no sound fuse is sure to end it.
struct PlugFuseOverload {
    const Equipment* equipment = nullptr;
    const DeviceFamily* family = nullptr;
    Current rated;
    LoadOverTime load;
};
/// The one of a circuit that is overloaded most. However many pieces there are, only so many are asked about.
std::optional<PlugFuseOverload> worstOnPlugFuse(const CircuitContext& context);

/// A piece of equipment that draws more than the rating of its plug fuse, where no table says what a fuse of
/// that rating does; nullptr where there is none.
const Equipment* onUnknownPlugFuse(const CircuitContext& context);

/// Everything about a circuit's hidden overload, for pictures: what was asked, and the answer.
struct OverloadAnswer {
    LoadOverTime load;
    Current rated;
    const ThermalDevice* device = nullptr;
    std::optional<overload::Conductor> conductor;
    overload::HiddenOverload answer;
    std::optional<Ratio> inWarmth = 1, inCold = 1; ///< as in overload::Question
};
/// Nothing where load or device are not known.
std::optional<OverloadAnswer> overloadAnswer(const CircuitContext& context);

/// The question of what a current that was logged did to the circuit's device and wiring. Nothing where the
/// device is not known, or its family is not made in this rating.
std::optional<overload::LoggedQuestion> loggedQuestion(const CircuitContext& context);

/// A span of time in the unit that people use for it: "45 s", "4 min", "3 h".
Measure spanOf(Time time);
/// The same of the edge of a model, which is sure of two digits at most: for the earliest rounded down, for
/// the latest up.
Measure noLessThan(Time time);
Measure noMoreThan(Time time);

} // namespace loopwright
