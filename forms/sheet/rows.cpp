// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/rows.h"

#include <algorithm>

namespace loopwright {
namespace {

bool isLoudInACell(Verdict verdict) {
    return verdict == Verdict::Fails || verdict == Verdict::Close;
}

/// Lays on the cells what the checks say: the worst verdict that a cell answers for, and what was missing. A
/// missing input has priority only where nothing stands: a cell that fails is filled and shows so.
void layOnFindings(const RowFacts& facts, std::vector<SheetCell>& cells) {
    for (const Finding* finding : facts.findings) {
        if (const auto column = columnOf(*finding); column && isLoudInACell(finding->verdict)) {
            SheetCell& cell = cells[static_cast<std::size_t>(indexOf(*column))];
            if (!cell.text.isEmpty())
                cell.verdict = std::min(cell.verdict.value_or(finding->verdict), finding->verdict);
        }
        for (const MissingInput& missing : finding->missing)
            for (std::size_t i = 0; i < cells.size(); ++i) {
                const auto& fields = sheetColumns()[i].fields;
                const bool shows = std::ranges::any_of(fields, [&](const ColumnField& field) {
                    return field.kind == missing.kind && field.key == missing.field;
                });
                // Whatever else a load can be worked out from, an empty load cell is what a person can fill.
                if (shows && (cells[i].text.isEmpty() || cells[i].text.contains(u'?')))
                    cells[i].missing = true;
            }
    }
}

/// "1 L1" and "1 L2" are phases of way 1.
QString wayNumber(const Circuit& circuit) {
    return text(circuit.way).section(QStringLiteral(" L"), 0, 0);
}
bool isPhaseOfAWay(const Circuit& circuit) {
    return text(circuit.way).contains(QStringLiteral(" L"));
}

} // namespace

RowFacts factsOf(const SiteView& view, const Circuit& circuit, const Words& words) {
    RowFacts facts{
        view,
        words,
        circuit,
        findReading(view.installation.circuitReadings, view.visit, &CircuitReading::circuit, circuit.id),
        {}};
    for (const Finding& finding : view.assessment.findings)
        if (finding.subject.kind == RecordKind::Circuit && finding.subject.id == circuit.id)
            facts.findings.push_back(&finding);
    std::ranges::stable_sort(facts.findings, {}, &Finding::verdict);
    return facts;
}

std::vector<SheetRow> sheetRows(const SiteView& view, Id board, const Words& words) {
    std::vector<SheetRow> rows;
    const Circuit* above = nullptr;
    for (const Circuit& circuit : view.installation.circuits) {
        if (circuit.board != board) continue;
        if (!circuit.section.empty() && (!above || above->section != circuit.section))
            rows.push_back({Id{}, text(circuit.section), {}});
        else if (above && isPhaseOfAWay(*above) && wayNumber(*above) != wayNumber(circuit))
            rows.back().closesWay = true;
        const RowFacts facts = factsOf(view, circuit, words);
        SheetRow row{circuit.id, {}, {}, facts.isSpare()};
        for (const SheetColumn& column : sheetColumns())
            row.cells.push_back(column.show(facts, column));
        layOnFindings(facts, row.cells);
        rows.push_back(std::move(row));
        above = &circuit;
    }
    return rows;
}

bool hasRings(const SiteView& view, Id board) {
    return std::ranges::any_of(view.installation.circuits, [&](const Circuit& circuit) {
        return circuit.board == board && circuit.topology == Topology::Ring;
    });
}

} // namespace loopwright
