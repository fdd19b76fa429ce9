// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "forms/words/words.h"

#include <optional>
#include <vector>

/// Findings and their workings in words, for screens, report and command line: symbols stay in notation,
/// everything else is as people read it.
namespace loopwright {

struct WorkingLine {
    QString symbol; ///< in notation: "Z_s"
    QString value;  ///< "0.54 Ω"; "~" before it when it rests on an assumption
    QString from;   ///< where it came from, or the limit of a result
    friend bool operator==(const WorkingLine&, const WorkingLine&) = default;
};

/// What the check is called: "Load and device".
QString checkName(const Finding& finding, const Words& words);
/// What the check found: its sentence, beginning in upper case, or its name and verdict when it has none.
QString findingText(const Finding& finding, const Words& words);
std::vector<WorkingLine> termLines(const Working& working, const Words& words);
std::optional<WorkingLine> resultLine(const Working& working, const Words& words);
/// "at most 30 A", "at least 1 MΩ".
QString limitText(Relation relation, const Measure& limit, const Words& words);
/// Title and clause of the rule: "IEC 60364-4-41:2005, 411.3.2"; empty without a source.
QString sourceLine(const Working& working);
/// "−39 %", "+4 %"; empty when there is no margin.
QString marginText(const Finding& finding, const Words& words);
/// The name of a field that was missing: "Loop impedance, Z_s".
QString missingText(const MissingInput& missing, const Words& words);

} // namespace loopwright
