// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_log.h"

#include "core/assess/visit_records.h"
#include "core/checks/device.h"

namespace loopwright {

std::optional<CircuitLog> circuitLog(const Installation& installation, Id visit, Id circuit,
                                     const ReferenceTables& tables, const RuleSet& rules,
                                     const overload::LoggedChannel& channel) {
    const auto logOf = [&](const CircuitContext& context) -> std::optional<CircuitLog> {
        const auto question = loggedQuestion(context);
        if (!question) return std::nullopt;
        CircuitLog log{overload::answerLogged(*question, channel),
                       question->rated,
                       question->device.holdsOut(),
                       question->conductor,
                       {}};
        log.picture = overload::logPicture(*question, channel, log.found);
        log.picture.device = deviceWord(context.family).key;
        return log;
    };
    return inCircuit(installation, visit, circuit, tables, rules, logOf);
}

std::vector<const CurrentLog*> logsOf(const Installation& installation, Id visit, Id circuit) {
    std::vector<const CurrentLog*> logs;
    const CircuitReading* reading =
        findReading(installation.circuitReadings, visit, &CircuitReading::circuit, circuit);
    if (!reading) return logs;
    for (const CurrentLog& log : installation.currentLogs)
        if (log.reading == reading->id) logs.push_back(&log);
    return logs;
}

} // namespace loopwright
