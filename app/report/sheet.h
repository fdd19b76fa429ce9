// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/ink.h"
#include "app/report/paginate.h"

#include <QSizeF>

namespace loopwright::report {

/// The parts of an A4 page (ISO 216), in hundredths of a millimetre from the paper's top left corner.
struct Sheet {
    QSizeF paper;
    double left = 0;
    double width = 0; ///< between the margins
    double headTop = 0;
    double headRule = 0;
    double bodyTop = 0;
    double bodyHeight = 0;
    double footRule = 0;
    double footTop = 0;
};

inline Sheet sheetOf(PageForm form) {
    if (form == PageForm::Portrait)
        return {{210 * mm, 297 * mm},
                20 * mm,
                174 * mm,
                10 * mm,
                15.6 * mm,
                24.5 * mm,
                250 * mm,
                280 * mm,
                281.5 * mm};
    return {{297 * mm, 210 * mm},
            14 * mm,
            269 * mm,
            9 * mm,
            14.6 * mm,
            19.8 * mm,
            170 * mm,
            194 * mm,
            195.5 * mm};
}

/// Two columns side by side on a portrait page.
inline constexpr double columnGap = 8.2 * mm;
inline constexpr double columnWidth = (174 * mm - columnGap) / 2;

inline constexpr double hairline = 0.15 * mm;
inline constexpr double headLine = 0.3 * mm;

/// The styles that sections share.
namespace style {
inline constexpr TextStyle body{PageText::Body, Weight::Regular};
inline constexpr TextStyle strong{PageText::Body, Weight::Semibold};
inline constexpr TextStyle soft{PageText::Body, Weight::Regular, &Look::inkSoft};
inline constexpr TextStyle title{PageText::WorkingTitle, Weight::Semibold};
inline constexpr TextStyle subject{PageText::Subject, Weight::Semibold};
inline constexpr TextStyle cell{PageText::Table, Weight::Regular};
inline constexpr TextStyle cellStrong{PageText::Table, Weight::Semibold};
inline constexpr TextStyle cellSoft{PageText::Table, Weight::Regular, &Look::inkSoft};
inline constexpr TextStyle head{PageText::Head, Weight::Regular, &Look::inkSoft};
inline constexpr TextStyle foot{PageText::Foot, Weight::Regular, &Look::inkSoft};
inline constexpr TextStyle footStrong{PageText::Foot, Weight::Semibold};
inline TextStyle inked(TextStyle style, Role ink) {
    style.ink = ink;
    return style;
}
} // namespace style

} // namespace loopwright::report
