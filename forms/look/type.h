// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>

namespace loopwright {

/// What a text on the screen is for.
enum class ScreenText : std::uint8_t {
    PageTitle,  ///< title of a page or board
    PanelTitle, ///< title of a panel, its subject
    Body,       ///< menus, fields, dialogs
    Figure,     ///< figures in the grid, reasons, strip, tree
    Note,       ///< grid heads, origin notes, key caps
};

/// What a text on paper is for.
enum class PageText : std::uint8_t {
    Title,        ///< of the report
    Answer,       ///< the one line on page one that says whether it is safe
    WorkingTitle, ///< of a page of workings
    Subject,      ///< of a section
    Body,
    Table,
    Schedule, ///< figures of a board's schedule
    Head,     ///< heads of tables
    Foot,
};

enum class Weight : std::uint8_t { Regular, Semibold };

/// Fonts by role. Open Sans, because its default digits are all equally wide, which columns of figures need.
class Type {
  public:
    /// `factor` scales every text on the screen: 1, 1.15 or 1.3. Needs a QGuiApplication.
    explicit Type(double factor = 1);

    /// Titles are Semibold whatever is asked for.
    QFont screen(ScreenText role, Weight weight = Weight::Regular) const;
    /// The same for paper, in points; the factor does not count there.
    QFont page(PageText role, Weight weight = Weight::Regular) const;

    double factor() const { return factor_; }
    /// A length of the screen's grid (row height, column width) under the factor, in whole pixels.
    int scaled(double pixels) const;
    /// Whether Open Sans is missing, so that the fallback stands in and columns may be wider than planned.
    bool usesFallback() const { return usesFallback_; }

  private:
    double factor_;
    bool usesFallback_;
};

/// The italic of a font: carried figures and symbols of quantities.
QFont italic(QFont font);

} // namespace loopwright
