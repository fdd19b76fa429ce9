// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_log.h"

#include "core/assess/visit_records.h"
#include "core/checks/device.h"

namespace loopwright {

tl::expected<CircuitLog, Message> circuitLog(const Installation& installation, Id visit, Id circuit,
                                             const ReferenceTables& tables, const RuleSet& rules,
                                             const overload::LoggedCurrents& log, std::string_view name) {
    const overload::LoggedChannel* channel = overload::channelOf(log, name);
    if (!channel) return tl::unexpected(Message{"log.no-such-channel", {std::string(name)}});
    const auto askedOf = [&](const CircuitContext& context) -> std::optional<CircuitLog> {
        const auto question = loggedQuestion(context);
        if (!question) return std::nullopt;
        CircuitLog asked{overload::answerLogged(*question, *channel),
                         question->rated,
                         question->device.holdsOut() && question->inWarmth,
                         question->conductor,
                         {},
                         question->inWarmth.has_value()};
        asked.picture = overload::logPicture(*question, *channel, asked.found);
        if (asked.mayOperateAtAnyTime()) asked.picture.earliestOperated.reset();
        asked.picture.device = deviceWord(context.family).key;
        return asked;
    };
    auto asked = inCircuit(installation, visit, circuit, tables, rules, askedOf);
    if (!asked) return tl::unexpected(Message{"log.no-device", {}});
    return std::move(*asked);
}

tl::expected<overload::LoggedCurrents, Message> readKeptLog(std::optional<std::string_view> bytes) {
    if (!bytes) return tl::unexpected(Message{"log.not-kept", {}});
    return overload::readCurrentLog(*bytes);
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
