// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/composition.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

constexpr int standIn = 10; ///< a page number of the usual width

} // namespace

int Composing::pageOf(const std::string& anchor) const {
    const auto found = pages.find(anchor);
    return found == pages.end() ? standIn : found->second;
}

Manuscript compose(const Composing& composing) {
    Flow flow;
    writePageOne(composing, flow);
    writeCovered(composing, flow);
    writeObservations(composing, flow);
    writeUndecided(composing, flow);
    writeSupply(composing, flow);
    writeInspection(composing, flow);
    writeSchedules(composing, flow);
    writeOverloads(composing, flow);
    writeWorkings(composing, flow);
    writeKey(composing, flow);
    return flow.finish();
}

void writeTitle(const Composing& composing, Flow& flow, const QString& title) {
    flow.add(composing.type.paragraph(title, style::title, sheetOf(PageForm::Portrait).width), 11 * mm,
             Keep::WithNext);
    flow.add(gap(2 * mm), 0, Keep::WithNext);
}

void writeSubject(const Composing& composing, Flow& flow, const QString& subject, double gapBefore) {
    flow.add(composing.type.paragraph(subject, style::subject, sheetOf(PageForm::Portrait).width), gapBefore,
             Keep::WithNext);
    flow.add(gap(1.8 * mm), 0, Keep::WithNext);
}

std::string observationAnchor(Id observation) {
    return "observation:" + observation.text();
}
std::string workingAnchor(std::size_t finding) {
    return "working:" + std::to_string(finding);
}
std::string boardAnchor(Id board) {
    return "board:" + board.text();
}

QString pagesText(const Composing& composing, const std::set<int>& pages) {
    const auto number = [&](int page) { return composing.input.words.number(std::int64_t{page}); };
    if (pages.empty()) return {};
    const int first = *pages.begin();
    const int last = *pages.rbegin();
    if (first == last) return QCoreApplication::translate("Report", "page %1").arg(number(first));
    const bool isRun = last - first + 1 == static_cast<int>(pages.size()) && pages.size() > 2;
    if (isRun || pages.size() > 4)
        return QCoreApplication::translate("Report", "pages %1 to %2").arg(number(first), number(last));
    QStringList numbers;
    for (const int page : pages)
        numbers << number(page);
    return QCoreApplication::translate("Report", "pages %1").arg(numbers.join(QStringLiteral(", ")));
}

} // namespace loopwright::report
