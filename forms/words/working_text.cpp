// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/working_text.h"

#include "forms/look/mark.h"

#include <QCoreApplication>

#include <cmath>

namespace loopwright {
namespace {

constexpr char16_t minusSign = u'\u2212';
constexpr double widestMargin = 10; ///< beyond ten times the limit the figure says nothing more

QString tr(const char* text) {
    return QCoreApplication::translate("Working", text);
}

QString sourceTitle(const Source& source) {
    const QString title = text(source.title);
    return source.fromMemory && !title.isEmpty() ? tr("%1 (from memory)").arg(title) : title;
}

/// Sentences that begin with a name begin with it as somebody typed it: "jacketed kettle".
QString asSentence(QString said) {
    const bool beginsWithSymbol = said.size() > 1 && said.at(1) == u'_';
    if (!said.isEmpty() && !beginsWithSymbol) said[0] = said.at(0).toUpper();
    return said;
}

/// "= 9.6 kW at 230 V", "~ assumed: none published", "IEC 60898-1, table 7".
QString fromText(const Term& term, const Words& words) {
    QStringList said;
    if (!term.note.key.empty()) said << words.sentence(term.note);
    if (!term.source.title.empty()) said << sourceTitle(term.source);
    const QString origin = words.word("origin." + std::string(originKey(term.origin)));
    const QString details = said.join(QStringLiteral("; "));
    switch (term.origin) {
    case TermOrigin::Computed:
        return QStringLiteral("= ") + (details.isEmpty() ? origin : details);
    case TermOrigin::Assumed:
        return QStringLiteral("~ ") + (details.isEmpty() ? origin : origin + QStringLiteral(", ") + details);
    case TermOrigin::Table:
    case TermOrigin::Rule:
        return details.isEmpty() ? origin : details;
    default:
        return details.isEmpty() ? origin : origin + QStringLiteral(", ") + details;
    }
}

} // namespace

QString checkName(const Finding& finding, const Words& words) {
    return words.word("check." + std::string(finding.check) + ".name");
}

QString findingText(const Finding& finding, const Words& words) {
    if (!finding.sentence.key.empty()) return asSentence(words.sentence(finding.sentence));
    return checkName(finding, words) + QStringLiteral(": ") + words.word(wordKey(finding.verdict));
}

QString limitText(Relation relation, const Measure& limit, const Words& words) {
    const QString figure = words.measure(limit);
    switch (relation) {
    case Relation::AtMost:
        return tr("at most %1").arg(figure);
    case Relation::AtLeast:
        return tr("at least %1").arg(figure);
    case Relation::Between:
        return tr("within %1").arg(figure);
    case Relation::Equal:
        break;
    }
    return tr("should be %1").arg(figure);
}

std::vector<WorkingLine> termLines(const Working& working, const Words& words) {
    std::vector<WorkingLine> lines;
    for (const Term& term : working.terms)
        lines.push_back({text(term.symbol), words.measure(term.value), fromText(term, words)});
    return lines;
}

std::optional<WorkingLine> resultLine(const Working& working, const Words& words) {
    if (!working.result) return std::nullopt;
    const QString sign = working.restsOnAssumption ? QStringLiteral("~") : QString();
    return WorkingLine{text(working.resultSymbol), sign + words.measure(*working.result),
                       working.limit ? limitText(working.relation, *working.limit, words) : QString()};
}

QString sourceLine(const Working& working) {
    const QString title = sourceTitle(working.source);
    const QString clause = text(working.clause);
    return title.isEmpty() || clause.isEmpty() ? title + clause : title + QStringLiteral(", ") + clause;
}

QString marginText(const Finding& finding, const Words& words) {
    if (!finding.margin || !std::isfinite(*finding.margin)) return {};
    const double margin = std::round(*finding.margin * 100) / 100;
    if (std::abs(margin) > widestMargin) return {};
    QString figure = words.number(std::abs(margin) * 100, 0) + QChar(QChar::Nbsp) + u'%';
    if (margin == 0) return figure;
    return (margin < 0 ? QString(minusSign) : QStringLiteral("+")) + figure;
}

QString missingText(const MissingInput& missing, const Words& words) {
    return words.word("field." + std::string(recordName(missing.kind)) + '.' + std::string(missing.field));
}

} // namespace loopwright
