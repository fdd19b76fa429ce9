// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/summary.h"

#include "app/subject_path.h"
#include "forms/look/mark.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>
#include <QTextStream>

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

constexpr int verdictWidth = 12;
constexpr int placeWidth = 30;

QString sentence(const char* source) {
    return QCoreApplication::translate("Summary", source);
}

/// None for the supply and the site.
Id boardId(const Installation& installation, const Subject& subject) {
    const Board* board = boardOf(installation, subject);
    return board ? board->id : Id();
}

QString nameOf(const Installation& installation, const Subject& subject) {
    const auto wayAndName = [](const Circuit& circuit) {
        return text(circuit.way + " " + circuit.name).trimmed();
    };
    if (const Circuit* circuit = find(installation.circuits, subject.id)) return wayAndName(*circuit);
    if (const Instrument* instrument = find(installation.instruments, subject.id))
        return text(instrument->name);
    if (const Equipment* equipment = find(installation.equipment, subject.id)) {
        const Circuit* circuit = find(installation.circuits, equipment->circuit);
        return circuit ? wayAndName(*circuit) + ", " + text(equipment->name) : text(equipment->name);
    }
    return {};
}

QString padded(const QString& word, int width) {
    return word.leftJustified(width - 1, ' ', true) + ' ';
}

void writeFindings(QTextStream& out, const LoadedSite& site, Id board, const Words& words) {
    std::vector<const Finding*> loud;
    for (const Finding& finding : site.assessment.findings)
        if (isLoud(finding.verdict) && boardId(site.installation, finding.subject) == board)
            loud.push_back(&finding);
    if (loud.empty()) return;
    std::ranges::stable_sort(loud, {}, &Finding::verdict);
    const Board* row = find(site.installation.boards, board);
    if (row)
        out << '\n'
            << text(row->name) << (row->description.empty() ? QString() : ", " + text(row->description))
            << '\n';
    else
        out << '\n' << sentence("Where the supply comes in") << '\n';
    for (const Finding* finding : loud)
        out << "  " << padded(words.word(wordKey(finding->verdict)), verdictWidth)
            << padded(nameOf(site.installation, finding->subject), placeWidth)
            << plainNotation(findingText(*finding, words)) << '\n';
}

void writeObservations(QTextStream& out, const LoadedSite& site, const Words& words) {
    std::vector<const Observation*> noted;
    for (const Observation& observation : site.installation.observations)
        if (observation.visit == site.assessment.visit) noted.push_back(&observation);
    if (noted.empty()) return;
    std::ranges::stable_sort(noted, {}, &Observation::grade);
    out << '\n' << sentence("What was observed") << '\n';
    for (const Observation* observation : noted) {
        const Circuit* circuit = find(site.installation.circuits, observation->circuit);
        const Board* board = find(site.installation.boards, observation->board);
        const QString place = circuit ? text(pathOf(site.installation, *circuit))
                              : board ? text(board->name)
                                      : QString();
        out << "  " << padded(words.word(wordKey(observation->grade)), verdictWidth + 4)
            << padded(place, placeWidth - 4) << text(observation->text).simplified() << '\n';
    }
}

void writeTally(QTextStream& out, const LoadedSite& site, const Words& words) {
    out << '\n' << sentence("Checks:");
    const Tally tally = site.assessment.checks();
    for (const Verdict verdict : worstFirst)
        out << (verdict == worstFirst.front() ? " " : ", ") << words.number(std::int64_t{tally.of(verdict)})
            << ' ' << words.word(wordKey(verdict));
    const Progress progress = readingsDone(site.installation, site.assessment);
    out << '\n'
        << sentence("Readings: %1 of %2.")
               .arg(words.number(std::int64_t{progress.done}), words.number(std::int64_t{progress.needed}))
        << '\n'
        << sentence("Judged by %1, %2. This does not replace competence; local codes and licensed practice "
                    "decide.")
               .arg(text(site.assessment.ruleSet), text(site.assessment.ruleSetRevision))
        << '\n';
}

} // namespace

std::string summary(const LoadedSite& site, const Words& words) {
    QString page;
    QTextStream out(&page);
    const Visit* visit = find(site.installation.visits, site.assessment.visit);
    out << text(site.installation.site.name) << (visit ? ": " + text(visit->label) : QString()) << '\n';
    out << (answer(site.installation, site.assessment) == Answer::Fit
                ? sentence("Fit to stay in service.")
                : sentence("Not fit to stay in service as it is."))
        << '\n';
    writeFindings(out, site, {}, words);
    for (const Board& board : site.installation.boards)
        writeFindings(out, site, board.id, words);
    writeObservations(out, site, words);
    writeTally(out, site, words);
    return utf8(page);
}

} // namespace loopwright
