// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/overload_album.h"

#include "core/assess/circuit_log.h"
#include "core/assess/circuit_overload.h"
#include "forms/plots/heat_plot.h"
#include "forms/plots/log_plot.h"
#include "forms/plots/time_current_plot.h"
#include "forms/words/logged_words.h"

#include <qcustomplot.h>

#include <algorithm>
#include <array>

namespace loopwright::report {
namespace {

/// Whether it is worth a page. A hidden overload that is close is one that every sound device ends.
bool isToBeTold(const Finding& finding) {
    return finding.verdict == Verdict::Fails ||
           (finding.verdict == Verdict::Close && finding.check != "hidden-overload");
}

/// Every circuit that a check of a load over time speaks of, with all that they say about it.
std::vector<OverloadSheet> told(const Assessment& assessment) {
    std::vector<OverloadSheet> sheets;
    for (const std::string_view check : checksOverTime)
        for (std::size_t at = 0; at < assessment.findings.size(); ++at) {
            const Finding& finding = assessment.findings[at];
            if (finding.check != check || !isToBeTold(finding)) continue;
            const auto known = std::ranges::find(sheets, finding.subject.id, &OverloadSheet::circuit);
            OverloadSheet& sheet = known != sheets.end() ? *known : sheets.emplace_back();
            sheet.circuit = finding.subject.id;
            sheet.findings.push_back(at);
        }
    return sheets;
}

/// Adds the circuits that only a log of the visit speaks of.
void addLogged(const Installation& installation, Id visit, std::vector<OverloadSheet>& sheets) {
    for (const CurrentLog& log : installation.currentLogs) {
        const CircuitReading* reading = find(installation.circuitReadings, log.reading);
        if (!reading || reading->visit != visit) continue;
        const Circuit* circuit = find(installation.circuits, reading->circuit);
        if (!circuit || !isInUse(*circuit)) continue;
        if (std::ranges::find(sheets, circuit->id, &OverloadSheet::circuit) == sheets.end())
            sheets.emplace_back().circuit = circuit->id;
    }
}

template <class Draw, class Picture>
QPicture drawn(Draw draw, const Picture& picture, const PlotStyle& style, const QSizeF& size) {
    QCustomPlot plot;
    draw(plot, picture, style);
    return recorded(plot, size);
}

LogSheet sheetOf(const ReportInput& input, Id circuit, const CurrentLog& log, const PlotStyle& style,
                 const QSizeF& size) {
    LogSheet sheet;
    sheet.name = text(log.name);
    const auto bytes = input.attachments ? input.attachments(log.digest) : std::nullopt;
    const auto read = readKeptLog(bytes ? std::optional<std::string_view>(*bytes) : std::nullopt);
    const auto found = read ? circuitLog(input.installation, input.assessment.visit, circuit, input.tables,
                                         input.rules, *read, log.channel)
                            : tl::unexpected(read.error());
    if (!found) {
        sheet.said = input.words.sentence(found.error());
        return sheet;
    }
    sheet.said = loggedSentences(*found, input.words);
    sheet.facts = loggedFacts(*found, input.words);
    sheet.picture = drawn(drawLog, found->picture, style, size);
    return sheet;
}

} // namespace

OverloadAlbum::OverloadAlbum(const ReportInput& input, const QSizeF& size, const QSizeF& logSize)
  : sheets_(told(input.assessment))
  , size_(size)
  , logSize_(logSize) {
    const PlotStyle style = paperPlotStyle(input.words);
    const Id visit = input.assessment.visit;
    RandomIds ids; // of circuits that remedies would make; paper takes none
    const auto isUnknown = [&](OverloadSheet& sheet) {
        const auto overload =
            circuitOverload(input.installation, visit, sheet.circuit, input.tables, input.rules);
        if (!overload) return true;
        sheet.facts = overloadFacts(overload->found, overload->band.device, input.words);
        sheet.remedies = remedies(input.installation, visit, sheet.circuit, input.tables, input.rules, ids);
        sheet.band = drawn(drawTimeCurrent, overload->band, style, size);
        sheet.heat = drawn(drawHeat, overload->heat, style, size);
        return false;
    };
    std::erase_if(sheets_, isUnknown);
    addLogged(input.installation, visit, sheets_);
    for (OverloadSheet& sheet : sheets_)
        for (const CurrentLog* log : logsOf(input.installation, visit, sheet.circuit))
            sheet.logs.push_back(sheetOf(input, sheet.circuit, *log, style, logSize));
}

} // namespace loopwright::report
