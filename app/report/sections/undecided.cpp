// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"
#include "app/report/places.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

/// What could not be decided about one place.
struct Undecided {
    Place place;
    std::vector<const Finding*> findings;
};

std::vector<Undecided> undecided(const ReportInput& input) {
    std::vector<Undecided> all;
    for (const Finding& finding : input.assessment.findings) {
        if (finding.verdict != Verdict::CannotTell) continue;
        const Place place = placeOf(input.installation, finding.subject);
        const auto same =
            std::ranges::find(all, place.id(), [](const Undecided& each) { return each.place.id(); });
        if (same == all.end())
            all.push_back({place, {&finding}});
        else
            same->findings.push_back(&finding);
    }
    return all;
}

/// Each missing input once, by the name of its field.
QStringList missingOf(const Undecided& about, const Words& words) {
    QStringList names;
    for (const Finding* finding : about.findings)
        for (const MissingInput& missing : finding->missing) {
            const QString name = missingText(missing, words);
            if (!names.contains(name)) names << name;
        }
    return names;
}

} // namespace

void writeUndecided(const Composing& composing, Flow& flow) {
    const std::vector<Undecided> all = undecided(composing.input);
    if (all.empty()) return;
    const Words& words = composing.input.words;
    writeSubject(composing, flow,
                 QCoreApplication::translate("Report", "What could not be decided, and what is missing"));
    const Table table(composing.type,
                      {{54 * mm, QCoreApplication::translate("Report", "Where")},
                       {66 * mm, QCoreApplication::translate("Report", "What is missing")},
                       {54 * mm, QCoreApplication::translate("Report", "Checks that wait for it")}});
    flow.anchor(undecidedAnchor);
    flow.openTable(table.head());
    for (const Undecided& about : all) {
        QStringList checks;
        QStringList reasons;
        for (const Finding* finding : about.findings) {
            checks << checkName(*finding, words);
            if (finding->missing.empty()) reasons << findingText(*finding, words);
        }
        const QStringList missing = missingOf(about, words) + reasons;
        flow.row(table.row(
            {table.text(0, fullNameOf(composing.input.installation, about.place)),
             table.text(1, missing.join(QStringLiteral("; ")), style::cell, Notation::Symbols),
             table.text(2, checks.join(QStringLiteral("; ")), style::cellSoft, Notation::Symbols)}));
    }
    flow.closeTable();
}

} // namespace loopwright::report
