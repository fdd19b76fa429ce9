// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/report/proof.h"

#include "app/report/typeset.h"
#include "forms/look/rich_symbol.h"

#include <algorithm>

namespace loopwright::test {
namespace {

using namespace report;

/// A text with the room that its letters take.
struct Printed {
    QString said;
    QRectF letters;
    double room = 0;
};

QRectF lettersOf(const QRectF& place, Align align, double width, const QFontMetricsF& metrics) {
    const double left = align == Align::Right    ? place.right() - width
                        : align == Align::Centre ? place.center().x() - width / 2
                                                 : place.left();
    const double base = place.top() + baseLineOf(metrics, place.height());
    return {left, base - metrics.capHeight(), width, metrics.capHeight()};
}

std::vector<Printed> printedOn(const Report::Page& page) {
    std::vector<Printed> all;
    for (const Ink& ink : page.inks) {
        if (const auto* text = std::get_if<TextInk>(&ink)) {
            const QFontMetricsF metrics(fontOf(text->style));
            const double width = metrics.horizontalAdvance(text->text);
            all.push_back(
                {text->text, lettersOf(text->place, text->align, width, metrics), text->place.width()});
        }
        if (const auto* symbol = std::get_if<SymbolInk>(&ink)) {
            const QFont font = fontOf(symbol->style);
            const double width = loopwright::symbolWidth(symbol->notation, font);
            all.push_back({symbol->notation,
                           lettersOf(symbol->place, symbol->align, width, QFontMetricsF(font)),
                           symbol->place.width()});
        }
    }
    return all;
}

} // namespace

QStringList faultsIn(const Report& report) {
    constexpr double rounding = 3; // hundredths of a millimetre: far less than is seen
    QStringList faults;
    for (std::size_t index = 0; index < report.pages.size(); ++index) {
        const Report::Page& page = report.pages[index];
        const auto complain = [&](const QString& what) {
            faults << QStringLiteral("page %1: %2").arg(index + 1).arg(what);
        };
        const std::vector<Printed> printed = printedOn(page);
        const QRectF paper(QPointF(0, 0), paperOf(page) * mm);
        const QRectF margins = paper.adjusted(13 * mm, 9 * mm, -13 * mm, -8 * mm);
        for (std::size_t at = 0; at < printed.size(); ++at) {
            const Printed& each = printed[at];
            if (each.said.trimmed().isEmpty()) complain(QStringLiteral("an empty text"));
            if (each.letters.width() > each.room + rounding)
                complain(QStringLiteral("too wide: ") + each.said);
            if (!margins.contains(each.letters))
                complain(QStringLiteral("outside the margins: ") + each.said);
            for (std::size_t other = at + 1; other < printed.size(); ++other)
                if (each.letters.adjusted(rounding, rounding, -rounding, -rounding)
                        .intersects(printed[other].letters))
                    complain(QStringLiteral("“%1” lies over “%2”").arg(each.said, printed[other].said));
        }
    }
    return faults;
}

QStringList saidOn(const Report::Page& page) {
    std::vector<Printed> printed = printedOn(page);
    std::ranges::stable_sort(printed, [](const Printed& a, const Printed& b) {
        constexpr double line = 100;
        if (std::abs(a.letters.bottom() - b.letters.bottom()) > line)
            return a.letters.bottom() < b.letters.bottom();
        return a.letters.left() < b.letters.left();
    });
    QStringList said;
    for (const Printed& each : printed)
        said << each.said;
    return said;
}

QString textOf(const Report::Page& page) {
    QStringList said;
    for (const Printed& each : printedOn(page))
        said << each.said;
    return said.join(u' ');
}

QString textOf(const Report& report) {
    QStringList pages;
    for (const Report::Page& page : report.pages)
        pages << textOf(page);
    return pages.join(u' ');
}

int pageThatSays(const Report& report, const QString& said, int from) {
    for (int page = from; page <= static_cast<int>(report.pages.size()); ++page)
        if (textOf(report.pages[static_cast<std::size_t>(page - 1)]).contains(said)) return page;
    return 0;
}

} // namespace loopwright::test
