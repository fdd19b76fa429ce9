// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/running_heads.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace loopwright::report {
namespace {

const double fullWidth = sheetOf(PageForm::Portrait).width;

/// Name and text side by side; rows without a text are left out.
void writeFacts(const Composing& composing, Flow& flow,
                const std::vector<std::pair<QString, QString>>& facts) {
    const Table table(composing.type, {{44 * mm, {}}, {130 * mm, {}}});
    flow.openTable({});
    for (const auto& [name, said] : facts)
        if (!said.isEmpty()) flow.row(table.row({table.text(0, name, style::cellSoft), table.text(1, said)}));
    flow.closeTable();
}

QString fieldName(const Composing& composing, const char* key) {
    return composing.input.words.word(key);
}

void writeVisit(const Composing& composing, Flow& flow) {
    const Site& site = composing.input.installation.site;
    const Visit& visit = composing.visit;
    const Words& words = composing.input.words;
    const auto kind = std::string("choice.visit-kind.") + std::string(choiceKey(visit.kind));
    writeFacts(
        composing, flow,
        {{fieldName(composing, "field.site.client"), text(site.client)},
         {fieldName(composing, "field.site.address"), text(site.address)},
         {fieldName(composing, "field.site.premises"), text(site.premises)},
         {QCoreApplication::translate("Report", "Visit"), QStringList{words.word(kind), daysOf(visit, words)}
                                                              .filter(QRegularExpression(QStringLiteral(".")))
                                                              .join(QStringLiteral(", "))},
         {fieldName(composing, "field.visit.inspector"), text(visit.inspector)},
         {fieldName(composing, "field.visit.ruleSet"),
          QStringLiteral("%1 (%2, %3)")
              .arg(text(composing.input.rules.title), text(composing.input.assessment.ruleSet),
                   text(composing.input.assessment.ruleSetRevision))},
         {fieldName(composing, "field.visit.notes"), text(visit.notes)}});
}

void writeText(const Composing& composing, Flow& flow, const QString& subject, const std::string& said,
               const QString& otherwise) {
    writeSubject(composing, flow, subject);
    const bool isSaid = !said.empty();
    flow.add(composing.type.paragraph(isSaid ? text(said) : otherwise, isSaid ? style::body : style::soft,
                                      fullWidth),
             0);
}

void writeInstruments(const Composing& composing, Flow& flow) {
    flow.anchor(instrumentsAnchor);
    writeSubject(composing, flow, QCoreApplication::translate("Report", "Instruments"));
    const Words& words = composing.input.words;
    const Table table(composing.type, {{44 * mm, words.word("field.instrument.name")},
                                       {36 * mm, words.word("field.instrument.serial")},
                                       {52 * mm, words.word("field.instrument.measures")},
                                       {42 * mm, words.word("field.instrument.calibrationDue")}});
    bool any = false;
    for (const Instrument& instrument : composing.input.installation.instruments) {
        if (instrument.visit != composing.visit.id) continue;
        if (!any) flow.openTable(table.head());
        any = true;
        const std::optional<Date> lastDay =
            composing.visit.ended ? composing.visit.ended : composing.visit.started;
        const bool isLate = instrument.calibrationDue && lastDay && *instrument.calibrationDue < *lastDay;
        Stack due =
            table.text(3, instrument.calibrationDue ? words.date(*instrument.calibrationDue)
                                                    : QCoreApplication::translate("Report", "not recorded"));
        if (isLate)
            due.push_back(marked(composing.type, Mark::Fails, &Look::fails,
                                 QCoreApplication::translate("Report", "before the visit ended"),
                                 style::cellStrong, table.room(3)));
        flow.row(table.row({table.text(0, text(instrument.name)), table.text(1, text(instrument.serial)),
                            table.text(2, text(instrument.measures)), due}));
    }
    flow.closeTable();
    if (!any)
        flow.add(composing.type.paragraph(
                     QCoreApplication::translate("Report", "No instruments are recorded for this visit."),
                     style::soft, fullWidth),
                 0);
}

} // namespace

void writeCovered(const Composing& composing, Flow& flow) {
    const QString title = QCoreApplication::translate("Report", "What was covered, and what was not");
    flow.section(title, PageForm::Portrait);
    flow.startPage();
    writeTitle(composing, flow, title);
    writeVisit(composing, flow);
    writeText(composing, flow, QCoreApplication::translate("Report", "What was covered"),
              composing.visit.extent,
              QCoreApplication::translate("Report", "Nobody wrote down what was covered."));
    writeText(composing, flow, QCoreApplication::translate("Report", "What was not, and why"),
              composing.visit.limitations,
              QCoreApplication::translate("Report", "Nobody wrote down anything that was left out."));
    writeInstruments(composing, flow);
}

} // namespace loopwright::report
