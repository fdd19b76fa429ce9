// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/page_one.h"
#include "app/report/composition.h"
#include "app/report/places.h"
#include "app/report/running_heads.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

const double fullWidth = sheetOf(PageForm::Portrait).width;

constexpr TextStyle introduction{PageText::Body, Weight::Regular, &Look::inkSoft, false, 1.28};
constexpr TextStyle reportTitle{PageText::Title, Weight::Semibold};
constexpr TextStyle answerLine{PageText::Answer, Weight::Semibold};

/// How many, at the beginning of a sentence: in letters up to twelve.
QString spelled(int count, const Words& words) {
    constexpr std::array names{
        QT_TRANSLATE_NOOP("Report", "Two"),    QT_TRANSLATE_NOOP("Report", "Three"),
        QT_TRANSLATE_NOOP("Report", "Four"),   QT_TRANSLATE_NOOP("Report", "Five"),
        QT_TRANSLATE_NOOP("Report", "Six"),    QT_TRANSLATE_NOOP("Report", "Seven"),
        QT_TRANSLATE_NOOP("Report", "Eight"),  QT_TRANSLATE_NOOP("Report", "Nine"),
        QT_TRANSLATE_NOOP("Report", "Ten"),    QT_TRANSLATE_NOOP("Report", "Eleven"),
        QT_TRANSLATE_NOOP("Report", "Twelve"),
    };
    const auto index = static_cast<std::size_t>(count - 2);
    return count >= 2 && index < names.size() ? QCoreApplication::translate("Report", names[index])
                                              : words.number(std::int64_t{count});
}

QString counted(const char* one, const char* several, int count, const Words& words) {
    if (count == 1) return QCoreApplication::translate("Report", one);
    return QCoreApplication::translate("Report", several).arg(spelled(count, words));
}

/// Reads as a sentence of the plate; empty while there is nothing of the kind.
void tell(QStringList& sentences, const char* one, const char* several, int count, const Words& words) {
    if (count > 0) sentences << counted(one, several, count, words);
}

/// `over`: put right since they were found.
void tellDangers(QStringList& sentences, int open, int over, const Words& words) {
    if (over == 0)
        return tell(sentences, QT_TRANSLATE_NOOP("Report", "One danger was found."),
                    QT_TRANSLATE_NOOP("Report", "%1 dangers were found."), open, words);
    tell(sentences, QT_TRANSLATE_NOOP("Report", "One danger remains."),
         QT_TRANSLATE_NOOP("Report", "%1 dangers remain."), open, words);
    tell(sentences, QT_TRANSLATE_NOOP("Report", "One danger was put right already."),
         QT_TRANSLATE_NOOP("Report", "%1 dangers were put right already."), over, words);
}

QString whyText(const Composing& composing) {
    const ReportInput& input = composing.input;
    std::array<int, 4> grades{};
    int dangersOver = 0;
    for (const Observation* observation : observationsOf(input))
        if (!observation->putRight)
            ++grades[static_cast<std::size_t>(observation->grade)];
        else if (observation->grade == Grade::MakeSafe)
            ++dangersOver;
    const auto of = [&](Grade grade) { return grades[static_cast<std::size_t>(grade)]; };
    const Progress progress = readingsDone(input.installation, input.assessment);
    const Words& words = input.words;

    QStringList sentences;
    if (answer(input.installation, input.assessment) == Answer::Fit)
        sentences << (dangersOver == 0
                          ? QCoreApplication::translate("Report", "Nothing was found that makes it unsafe.")
                          : QCoreApplication::translate("Report", "Nothing is left that makes it unsafe."));
    tellDangers(sentences, of(Grade::MakeSafe), dangersOver, words);
    tell(sentences, QT_TRANSLATE_NOOP("Report", "One fault could become a danger."),
         QT_TRANSLATE_NOOP("Report", "%1 faults could become a danger."), of(Grade::PutRight), words);
    tell(sentences, QT_TRANSLATE_NOOP("Report", "One thing could not be decided."),
         QT_TRANSLATE_NOOP("Report", "%1 things could not be decided."), of(Grade::LookFurther), words);
    tell(sentences, QT_TRANSLATE_NOOP("Report", "One more check fails."),
         QT_TRANSLATE_NOOP("Report", "%1 more checks fail."),
         static_cast<int>(unmentionedFailures(input).size()), words);
    if (sentences.isEmpty())
        sentences << QCoreApplication::translate("Report",
                                                 "A check fails; an observation is about its place.");
    tell(sentences, QT_TRANSLATE_NOOP("Report", "One reading is still missing."),
         QT_TRANSLATE_NOOP("Report", "%1 readings are still missing."), progress.needed - progress.done,
         words);
    return sentences.join(u' ');
}

Box plate(const Composing& composing) {
    constexpr double flank = 15 * mm, indent = 21 * mm, padding = 5.5 * mm, line = 0.45 * mm,
                     markSide = 11 * mm;
    const bool fits = answer(composing.input.installation, composing.input.assessment) == Answer::Fit;
    const QString words = fits
                              ? QCoreApplication::translate("Report", "Fit to stay in service.")
                              : QCoreApplication::translate("Report", "Not fit to stay in service as it is.");
    const double room = fullWidth - indent - padding;
    Stack stack =
        composing.type.paragraph(QCoreApplication::translate("Report", "Is it safe?"), style::soft, room);
    append(stack, composing.type.paragraph(words, answerLine, room));
    stack.push_back(gap(0.8 * mm));
    append(stack, composing.type.paragraph(whyText(composing), style::body, room));

    const Box content = joined(stack);
    Box box{fullWidth, content.height + 2 * padding, {}};
    box.add(FillInk{QRectF(0, 0, flank, box.height), &Look::ink});
    box.add(FrameInk{QRectF(0, 0, box.width, box.height), line, &Look::ink});
    box.add(MarkInk{QRectF((flank - markSide) / 2, (box.height - markSide) / 2, markSide, markSide),
                    fits ? Mark::Holds : Mark::Fails, &Look::sheet});
    box.put(content, {indent, padding});
    return box;
}

Box twoColumns(const Stack& left, const Stack& right) {
    Box box{fullWidth, std::max(heightOf(left), heightOf(right)), {}};
    box.put(joined(left), {0, 0});
    box.put(joined(right), {columnWidth + columnGap, 0});
    return box;
}

/// A line of a short list with its figure at the right, a hairline below.
Box listed(const Box& name, const Box& figure, double height) {
    Box box{columnWidth, height, {}};
    box.put(name, {0, (height - name.height) / 2});
    box.put(figure, {0, (height - figure.height) / 2});
    box.add(LineInk{{0, height}, {columnWidth, height}, hairline, &Look::line});
    return box;
}

constexpr double listLine = 6.7 * mm;

Stack lookedAt(const Composing& composing) {
    const Coverage coverage = coverageOf(composing.input);
    const Words& words = composing.input.words;
    const auto row = [&](const QString& name, const QString& figure) {
        return listed(joined(composing.type.fitted(name, style::cell, columnWidth * 0.7)),
                      composing.type.line(figure, style::cell, columnWidth, Align::Right), listLine);
    };
    const auto share = [&](int done, int all) {
        return QCoreApplication::translate("Report", "%1 of %2", "count")
            .arg(words.number(std::int64_t{done}), words.number(std::int64_t{all}));
    };
    Stack stack = composing.type.paragraph(QCoreApplication::translate("Report", "How much was looked at"),
                                           style::subject, columnWidth);
    stack.push_back(
        row(QCoreApplication::translate("Report", "Boards"), share(coverage.boardsRead, coverage.boards)));
    stack.push_back(row(QCoreApplication::translate("Report", "Circuits read in full"),
                        share(coverage.circuitsRead, coverage.circuits)));
    stack.push_back(row(QCoreApplication::translate("Report", "Readings taken"),
                        share(coverage.readingsTaken, coverage.readings)));
    stack.push_back(row(QCoreApplication::translate("Report", "Readings that could not be taken"),
                        words.number(std::int64_t{coverage.limited})));
    return stack;
}

/// Where the findings of a verdict are told: workings, the list of what is missing, or the schedules.
std::set<int> pagesOf(const Composing& composing, Verdict verdict) {
    std::set<int> pages;
    const auto& findings = composing.input.assessment.findings;
    const auto add = [&](const std::string& anchor) {
        if (const auto found = composing.pages.find(anchor); found != composing.pages.end())
            pages.insert(found->second);
    };
    if (verdict == Verdict::CannotTell) add(undecidedAnchor);
    for (std::size_t index = 0; index < findings.size(); ++index)
        if (findings[index].verdict == verdict) add(workingAnchor(index));
    return pages;
}

QString schedulePages(const Composing& composing) {
    std::set<int> pages;
    for (const Board& board : composing.input.installation.boards)
        pages.insert(composing.pageOf(boardAnchor(board.id)));
    if (pages.empty()) return {};
    pages.insert(composing.pageOf(lastScheduleAnchor));
    const auto number = [&](int page) { return composing.input.words.number(std::int64_t{page}); };
    return QCoreApplication::translate("Report", "schedules, %1 to %2")
        .arg(number(*pages.begin()), number(*pages.rbegin()));
}

Stack checksSay(const Composing& composing) {
    constexpr double countEnd = 44 * mm, pagesAt = 47 * mm;
    const Words& words = composing.input.words;
    const Tally tally = composing.input.assessment.checks();
    Stack stack = composing.type.paragraph(QCoreApplication::translate("Report", "What the checks say"),
                                           style::subject, columnWidth);
    for (const Verdict verdict : {Verdict::Fails, Verdict::CannotTell, Verdict::Close, Verdict::Holds}) {
        const int count = tally.of(verdict);
        const QString pages = count == 0                  ? QString()
                              : verdict == Verdict::Holds ? schedulePages(composing)
                                                          : pagesText(composing, pagesOf(composing, verdict));
        Box figure =
            composing.type.line(words.number(std::int64_t{count}), style::cell, countEnd, Align::Right);
        figure.put(joined(composing.type.fitted(pages, style::cellSoft, columnWidth - pagesAt)),
                   {pagesAt, 0});
        const Box name = marked(composing.type, markOf(verdict), inkOf(verdict), words.word(wordKey(verdict)),
                                style::cell, countEnd - 12 * mm);
        stack.push_back(listed(name, figure, listLine));
    }
    return stack;
}

/// A line to sign on, and below it who signs and when.
Box signature(const Composing& composing, const QString& title, const QString& below, double width) {
    constexpr double roomToSign = 8 * mm;
    Box box{width, roomToSign, {}};
    box.add(LineInk{{0, roomToSign}, {width, roomToSign}, hairline * 1.5, &Look::lineStrong});
    Stack stack = composing.type.fitted(title, style::cellStrong, width);
    append(stack, composing.type.fitted(below, style::cellSoft, width));
    box.put(joined(stack), {0, roomToSign + 1 * mm});
    box.height += heightOf(stack) + 1 * mm;
    return box;
}

Box whoSaysSo(const Composing& composing) {
    constexpr double width = 44 * mm, step = 50 * mm, ring = 20 * mm;
    const Visit& visit = composing.visit;
    const Words& words = composing.input.words;
    const auto joinedWith = [](const QString& first, const QString& second) {
        return first.isEmpty() || second.isEmpty() ? first + second
                                                   : QStringLiteral("%1, %2").arg(first, second);
    };
    const QString inspected =
        joinedWith(text(visit.inspector), visit.ended ? words.date(*visit.ended) : QString());
    const QString next = visit.nextDue ? words.date(*visit.nextDue) : QString();
    Stack title = composing.type.paragraph(QCoreApplication::translate("Report", "Who says so"),
                                           style::subject, fullWidth);
    Box box{fullWidth, heightOf(title) + 24 * mm, {}};
    box.put(joined(title), {0, 0});
    const double top = heightOf(title);
    const std::array<Box, 3> signatures{
        signature(composing, QCoreApplication::translate("Report", "Inspected and tested"), inspected, width),
        signature(composing, QCoreApplication::translate("Report", "Checked and issued"),
                  visit.state == VisitState::Open ? standingOf(visit) : QString(), width),
        signature(composing, QCoreApplication::translate("Report", "Look again by"), next, width)};
    double height = ring;
    for (std::size_t index = 0; index < signatures.size(); ++index) {
        box.put(signatures[index], {static_cast<double>(index) * step, top + 4 * mm});
        height = std::max(height, signatures[index].height + 4 * mm);
    }
    box.add(RingInk{QRectF(fullWidth - ring, top, ring, ring), std::nullopt});
    box.put(composing.type.line(standingOf(visit), style::foot, ring + 6 * mm, Align::Centre),
            {fullWidth - ring - 3 * mm, top + ring + 0.5 * mm});
    box.height = top + std::max(height, ring + 5 * mm);
    return box;
}

} // namespace

void writePageOne(const Composing& composing, Flow& flow) {
    const Site& site = composing.input.installation.site;
    const Typesetter& type = composing.type;
    flow.section(QCoreApplication::translate("Report", "Periodic inspection and testing"),
                 PageForm::Portrait);
    const QString intro = site.description.empty()
                              ? text(site.name)
                              : QStringLiteral("%1: %2").arg(text(site.name), text(site.description));
    flow.add(type.paragraph(intro, introduction, fullWidth), 0, Keep::WithNext);
    flow.add(type.paragraph(QCoreApplication::translate("Report", "Report on the electrical installation"),
                            reportTitle, fullWidth),
             0.5 * mm, Keep::WithNext);
    flow.add(plate(composing), 6 * mm);

    const Box figures = twoColumns(lookedAt(composing), checksSay(composing));
    const Box signatures = whoSaysSo(composing);
    constexpr double gapAbove = 8 * mm;
    const double below = figures.height + signatures.height + 2 * gapAbove;
    writeActions(composing, flow, sheetOf(PageForm::Portrait).bodyHeight - below);
    flow.add(figures, gapAbove);
    flow.add(signatures, gapAbove);
}

} // namespace loopwright::report
