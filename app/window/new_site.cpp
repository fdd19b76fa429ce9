// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/new_site.h"

#include <QCoreApplication>

namespace loopwright {
namespace {

std::string tr(const char* text) {
    return utf8(QCoreApplication::translate("NewSite", text));
}

} // namespace

Visit newVisit(const Installation& installation, IdSource& ids, const Clock& clock, const RuleSet& rules) {
    Visit visit;
    visit.id = ids.next();
    visit.site = installation.site.id;
    const Date today(std::chrono::floor<std::chrono::days>(clock.now()));
    const bool first = installation.visits.empty();
    visit.kind = first ? VisitKind::First : VisitKind::Periodic;
    visit.label =
        std::to_string(static_cast<int>(today.year())) + (first ? tr(", first visit") : tr(", periodic"));
    visit.started = today;
    visit.ruleSet = rules.key;
    visit.ruleSetRevision = rules.revision;
    return visit;
}

Installation newSite(IdSource& ids, const Clock& clock, const RuleSet& rules) {
    Installation installation;
    installation.site.id = ids.next();
    installation.site.name = tr("New site");
    Supply supply;
    supply.id = ids.next();
    supply.site = installation.site.id;
    installation.supplies.push_back(supply);
    Board board;
    board.id = ids.next();
    board.site = installation.site.id;
    board.name = tr("Main board");
    installation.boards.push_back(board);
    installation.visits.push_back(newVisit(installation, ids, clock, rules));
    return installation;
}

} // namespace loopwright
