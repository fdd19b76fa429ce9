// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/running_heads.h"

#include <QCoreApplication>
#include <QDate>

namespace loopwright::report {
namespace {

constexpr double between = 4 * mm; ///< parts of a line

/// Texts beside each other, from the left or from the right margin; returns the width that they take.
class HeadLine {
  public:
    HeadLine(std::vector<Ink>& inks, const Typesetter& type, const Sheet& sheet, double top)
      : inks_(inks)
      , type_(type)
      , top_(top)
      , left_(sheet.left)
      , right_(sheet.left + sheet.width) {}

    void fromRight(const QString& text, const TextStyle& style) {
        if (text.isEmpty()) return;
        const double width = std::min(type_.width(text, style), right_ - left_);
        put(type_.shortened(text, style, width), right_ - width);
        right_ -= width + between;
    }
    /// `share` of what is free at most.
    void fromLeft(const QString& text, const TextStyle& style, double share = 1) {
        if (text.isEmpty()) return;
        const double width = std::min(type_.width(text, style), share * (right_ - left_));
        put(type_.shortened(text, style, width), left_);
        left_ += width + between;
    }
    void skip(double width) { left_ += width; }

  private:
    void put(const Box& box, double x) {
        for (const Ink& ink : box.inks)
            inks_.push_back(moved(ink, {x, top_}));
    }

    std::vector<Ink>& inks_;
    const Typesetter& type_;
    double top_;
    double left_;
    double right_;
};

QDate dateOf(const Date& date) {
    return {static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
            static_cast<int>(static_cast<unsigned>(date.day()))};
}

QString printedOn(const Composing& composing) {
    const auto day = std::chrono::floor<std::chrono::days>(composing.input.clock.now());
    return QCoreApplication::translate("Report", "Printed %1").arg(composing.input.words.date(Date(day)));
}

} // namespace

QString daysOf(const Visit& visit, const Words& words) {
    const std::optional<Date> from = visit.started ? visit.started : visit.ended;
    const std::optional<Date> to = visit.ended ? visit.ended : visit.started;
    if (!from || !from->ok() || !to->ok()) return {};
    QString last = words.date(*to);
    if (*from == *to) return last;
    const QString day = words.locale().toString(dateOf(*from), QStringLiteral("d"));
    const QString lastDay = words.locale().toString(dateOf(*to), QStringLiteral("d"));
    const bool dayComesFirst = last.startsWith(lastDay);
    const bool sameMonth = from->year() == to->year() && from->month() == to->month();
    return QCoreApplication::translate("Report", "%1 to %2", "days of a visit")
        .arg(sameMonth && dayComesFirst ? day : words.date(*from), last);
}

QString standingOf(const Visit& visit) {
    return visit.state == VisitState::Open ? QCoreApplication::translate("Report", "Not issued")
                                           : QCoreApplication::translate("Report", "Issued, without a seal");
}

std::vector<Ink> runningHeads(const Composing& composing, PageForm form, const QString& section, int page,
                              int pages) {
    const Sheet sheet = sheetOf(form);
    const Visit& visit = composing.visit;
    const Words& words = composing.input.words;
    std::vector<Ink> inks;

    HeadLine head(inks, composing.type, sheet, sheet.headTop);
    head.fromRight(standingOf(visit), style::foot);
    const QString days = daysOf(visit, words);
    if (!days.isEmpty())
        head.fromRight(QCoreApplication::translate("Report", "Visit %1").arg(days), style::foot);
    head.fromLeft(text(composing.input.installation.site.name), style::footStrong, 0.5);
    head.fromLeft(section, style::foot);
    inks.emplace_back(std::in_place_type<LineInk>, LineInk{{sheet.left, sheet.headRule},
                                                           {sheet.left + sheet.width, sheet.headRule},
                                                           headLine,
                                                           &Look::ink});

    constexpr double ring = 6 * mm;
    inks.emplace_back(std::in_place_type<LineInk>, LineInk{{sheet.left, sheet.footRule},
                                                           {sheet.left + sheet.width, sheet.footRule},
                                                           hairline,
                                                           &Look::ink});
    inks.emplace_back(std::in_place_type<RingInk>,
                      RingInk{QRectF(sheet.left, sheet.footRule + 2 * mm, ring, ring), std::nullopt});
    HeadLine foot(inks, composing.type, sheet, sheet.footTop);
    foot.skip(ring + 2.5 * mm);
    foot.fromRight(QCoreApplication::translate("Report", "%1 of %2", "page")
                       .arg(words.number(std::int64_t{page}), words.number(std::int64_t{pages})),
                   style::footStrong);
    foot.fromRight(
        QCoreApplication::translate("Report", "Judged by %1, %2")
            .arg(text(composing.input.assessment.ruleSet), text(composing.input.assessment.ruleSetRevision)),
        style::foot);
    foot.fromLeft(standingOf(visit), style::footStrong);
    foot.fromLeft(printedOn(composing), style::foot);
    return inks;
}

} // namespace loopwright::report
