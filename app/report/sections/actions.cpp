// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/places.h"
#include "app/report/sections/page_one.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

constexpr double restLine = 9 * mm; ///< "9 more: page 5", below the rows

class Actions {
  public:
    explicit Actions(const Composing& composing)
      : composing_(composing)
      , table_(composing.type, {{38 * mm, QCoreApplication::translate("Report", "Grade")},
                                {76 * mm, QCoreApplication::translate("Report", "What and where")},
                                {36 * mm, QCoreApplication::translate("Report", "By when")},
                                {24 * mm, QCoreApplication::translate("Report", "Who acts")}}) {}

    const Table& table() const { return table_; }

    Stack row(const Observation& observation) const {
        const QString action = text(observation.action.empty() ? observation.text : observation.action);
        Stack what = table_.text(1, action, style::cellStrong);
        append(what, table_.text(1, where(observation), style::cellSoft));
        return table_.row({grade(observation.grade), what, table_.text(2, text(observation.byWhen)),
                           table_.text(3, text(observation.whoActs))});
    }

    /// Failing checks that nobody has graded yet: they must not be lost between sheet and report.
    Stack ungraded(int count) const {
        const Words& words = composing_.input.words;
        const QString number = words.number(std::int64_t{count});
        const QString what =
            count == 1
                ? QCoreApplication::translate("Report",
                                              "Ask the inspector what to do about one more check that fails.")
                : QCoreApplication::translate("Report",
                                              "Ask the inspector what to do about %1 more checks that fail.")
                      .arg(number);
        const QString why =
            count == 1
                ? QCoreApplication::translate("Report", "No observation is about its place. Page %1.")
                : QCoreApplication::translate("Report", "No observation is about their places. Page %1.");
        Stack cell = table_.text(1, what, style::cellStrong);
        append(cell, table_.text(1, why.arg(words.number(std::int64_t{composing_.pageOf(unmentionedAnchor)})),
                                 style::cellSoft));
        const Box mark = marked(composing_.type, markOf(Verdict::Fails), inkOf(Verdict::Fails),
                                words.word(wordKey(Verdict::Fails)), style::cellStrong, table_.room(0));
        return table_.row({{mark},
                           cell,
                           table_.text(2, QCoreApplication::translate("Report", "not decided yet")),
                           table_.text(3, QCoreApplication::translate("Report", "client"))});
    }

    Box rest(std::size_t count, Id first) const {
        const Words& words = composing_.input.words;
        const QString said =
            count == 1 ? QCoreApplication::translate("Report", "One more on page %1.")
                             .arg(words.number(std::int64_t{composing_.pageOf(observationAnchor(first))}))
                       : QCoreApplication::translate("Report", "Another %1 from page %2 on.")
                             .arg(words.number(static_cast<std::int64_t>(count)),
                                  words.number(std::int64_t{composing_.pageOf(observationAnchor(first))}));
        Box box{table_.width(), restLine, {}};
        box.put(composing_.type.line(said, style::cellSoft, table_.width()), {38 * mm, 2 * mm});
        return box;
    }

  private:
    Stack grade(Grade grade) const {
        const QString label = composing_.input.officeLabels[static_cast<std::size_t>(grade)];
        Stack stack{marked(composing_.type, markOf(grade), inkOf(grade),
                           composing_.input.words.word(wordKey(grade)), style::cellStrong, table_.room(0))};
        append(stack, table_.text(0, label, style::cellSoft));
        return stack;
    }

    /// Place and page, and what was seen where it is short; the whole of it stands on its card.
    QString where(const Observation& observation) const {
        constexpr qsizetype mostLines = 3;
        const QString place =
            addressOf(composing_.input.installation, placeOf(composing_.input.installation, observation));
        const QString page = QCoreApplication::translate("Report", "Page %1.")
                                 .arg(composing_.input.words.number(
                                     std::int64_t{composing_.pageOf(observationAnchor(observation.id))}));
        QString whole = QStringLiteral("%1. %2 %3").arg(place, text(observation.text), page);
        if (!observation.action.empty() &&
            composing_.type.lines(whole, style::cellSoft, table_.room(1)).size() <= mostLines)
            return whole;
        return QStringLiteral("%1. %2").arg(place, page);
    }

    const Composing& composing_;
    Table table_;
};

/// What was put right during the visit needs nobody any more.
std::vector<const Observation*> openObservations(const ReportInput& input) {
    std::vector<const Observation*> open = observationsOf(input);
    std::erase_if(open, [](const Observation* observation) { return observation->putRight.has_value(); });
    return open;
}

} // namespace

void writeActions(const Composing& composing, Flow& flow, double end) {
    writeSubject(composing, flow, QCoreApplication::translate("Report", "What must be done, and by when"),
                 9 * mm);
    const std::vector<const Observation*> observations = openObservations(composing.input);
    const int ungraded = static_cast<int>(unmentionedFailures(composing.input).size());
    if (observations.empty() && ungraded == 0) {
        flow.add(composing.type.paragraph(
                     QCoreApplication::translate("Report", "Nothing was found that asks for action."),
                     style::soft, sheetOf(PageForm::Portrait).width),
                 1 * mm);
        return;
    }
    const Actions actions(composing);
    const Box head = actions.table().head();
    double left = end - flow.height() - head.height;
    flow.openTable(head);
    if (ungraded > 0) left -= heightOf(actions.ungraded(ungraded));
    std::size_t shown = 0;
    for (; shown < observations.size(); ++shown) {
        const Stack row = actions.row(*observations[shown]);
        const double after = shown + 1 < observations.size() ? restLine : 0;
        if (observations[shown]->grade != Grade::MakeSafe && heightOf(row) + after > left) break;
        left -= heightOf(row);
        flow.row(row);
    }
    if (ungraded > 0) flow.row(actions.ungraded(ungraded));
    flow.closeTable();
    if (shown < observations.size())
        flow.add(actions.rest(observations.size() - shown, observations[shown]->id));
}

} // namespace loopwright::report
