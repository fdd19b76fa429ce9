// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/remedy.h"

#include "core/assess/circuit_overload.h"
#include "core/remedy/candidates.h"

#include <algorithm>

namespace loopwright {

bool asksForRemedy(const Finding& finding) {
    const bool isOverTime = std::ranges::find(checksOverTime, finding.check) != checksOverTime.end();
    return finding.verdict == Verdict::Fails && (isOverTime || isOfLoadDeviceAndWiring(finding.check));
}

std::vector<Remedy> remedies(const Installation& installation, Id visit, Id circuit,
                             const ReferenceTables& tables, const RuleSet& rules, IdSource& ids) {
    const auto about = overloadedCircuit(installation, visit, circuit, tables, rules);
    if (!about) return {};
    const Trial trial(*about);
    if (!trial.isCalledFor()) return {};
    std::vector<Remedy> found;
    const auto offer = [&](std::optional<Remedy> remedy) {
        if (remedy) found.push_back(std::move(*remedy));
    };
    offer(otherSetting(trial));
    offer(runInTurns(trial));
    offer(lessLoad(trial));
    offer(otherDevice(trial));
    const bool hasDevice = std::ranges::find(found, RemedyKind::OtherDevice, &Remedy::kind) != found.end();
    offer(withoutPlugFuse(trial));
    offer(separateCircuit(trial, ids));
    offer(largerConductor(trial, !hasDevice));
    std::ranges::stable_sort(found, {}, &Remedy::kind);
    return found;
}

} // namespace loopwright
