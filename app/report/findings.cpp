// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/findings.h"

#include <QCoreApplication>

namespace loopwright::report {

QString checkName(const Finding& finding, const Words& words) {
    return words.word("check." + std::string(finding.check) + ".name");
}

QString findingSaid(const Finding& finding, const Words& words) {
    if (!finding.sentence.key.empty()) return words.sentence(finding.sentence);
    return QStringLiteral("%1: %2").arg(checkName(finding, words), words.word(wordKey(finding.verdict)));
}

QString limitText(Relation relation, const Measure& limit, const Words& words) {
    const QString figure = words.measure(limit);
    switch (relation) {
    case Relation::AtMost:
        return QCoreApplication::translate("Report", "at most %1").arg(figure);
    case Relation::AtLeast:
        return QCoreApplication::translate("Report", "at least %1").arg(figure);
    case Relation::Between:
        return QCoreApplication::translate("Report", "within %1").arg(figure);
    case Relation::Equal:
        break;
    }
    return QCoreApplication::translate("Report", "should be %1").arg(figure);
}

QString resultAgainstLimit(const Finding& finding, const Words& words) {
    if (!finding.result || !finding.limit) return {};
    return QStringLiteral("%1; %2").arg(words.measure(*finding.result),
                                        limitText(finding.working.relation, *finding.limit, words));
}

} // namespace loopwright::report
