// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/load_over_time.h"
#include "core/remedy/remedy.h"
#include "forms/words/words.h"

#include <vector>

namespace loopwright {

/// One thing that is so about a load over time: "Contacts heat, against 30 A" and "1.9 times".
struct OverloadFact {
    QString what;
    QString said;
    bool isAssumed = false; ///< rests on a figure that nobody measured or published; marked ~
};

/// What is known about a circuit's load over time beside its findings: what the device does, how much is left
/// until it does something else, and what heat does meanwhile. `device` names it: "check.word.fuse".
std::vector<OverloadFact> overloadFacts(const OverloadAnswer& overload, std::string_view device,
                                        const Words& words);

/// What is left of a circuit's failures once a remedy is taken, what gets better or worse elsewhere, and what
/// fails or is still to be read of a circuit that it makes.
QString remedyConsequences(const Remedy& remedy, const Installation& installation, const Words& words);

/// What stands below a list of remedies: that it is advice, and where a clamp has read another load than one
/// of them leaves, that it has to be read again.
QString remedyAdvice(const std::vector<Remedy>& remedies, const Words& words);

/// "0.4 s", "25 min", "4 h": a time in the unit that a person would say it in.
QString spokenTime(Time time, const Words& words);

} // namespace loopwright
