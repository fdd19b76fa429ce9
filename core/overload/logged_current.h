// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/conductor.h"
#include "core/overload/current_log.h"
#include "core/reference/reference_tables.h"

#include <optional>

/// A current that was logged, in place of a duty: the same devices and conductors, over what really flowed.
namespace loopwright::overload {

struct LoggedQuestion {
    const ThermalDevice& device;
    Current rated;
    std::optional<InstantaneousBand> instantaneous;
    std::optional<Conductor> conductor;
    std::optional<InstantaneousBand> shortTime; ///< of a breaker whose short-time stage is set
    std::optional<Ratio> inWarmth = 1;          ///< Question::inWarmth
    std::optional<Ratio> inCold = 1;            ///< Question::inCold
};

struct LoggedHeat {
    Temperature peak;      ///< at most, the conductor alone taking up heat
    Temperature leastPeak; ///< at least, all of the cable taking it up; the start where nothing bounds it
    Ratio leastAgeing = 0; ///< as a multiple of ageing at the limit; estimates
    Ratio mostAgeing = 0;
};

/// The same had everything been as warm at the beginning as the log itself lets one think (LogStart): warmer
/// and sooner than from cold, or the same.
struct LoggedWarm {
    std::optional<Time> earliest; ///< 0: by the time that the log began
    std::optional<Time> latest;
    std::optional<Temperature> peak; ///< of the conductor, at most; nothing without one
};

/// Everything begins cold and at ambient but for `warm`: what is found was there, and between the two lies
/// what a log cannot tell. In gaps no current is reckoned with, so that more may have been.
struct LoggedAnswer {
    /// When the earliest sound device would have operated, since the first sample; nothing as well where its
    /// warmth is not known.
    std::optional<Time> earliest;
    std::optional<Time> latest; ///< by when every sound device would have
    Current peak;
    Current rms;          ///< over what was logged
    Ratio shareAbove = 0; ///< of the time that was logged, above the rating
    Time length;
    Time gaps;
    std::optional<LoggedHeat> conductor;
    Current atFirst; ///< the first sample: with a load then, more may have been than what begins cold
    LoggedWarm warm;
};

/// One pass over the samples, and for each replica one over blocks of them from cold and one from warm: a
/// bound on its state shows which blocks cannot make it operate, and only the others are gone through sample
/// by sample.
LoggedAnswer answerLogged(const LoggedQuestion& question, const LoggedChannel& channel);

} // namespace loopwright::overload
