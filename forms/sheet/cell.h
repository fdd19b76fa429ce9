// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"

#include <QMetaType>
#include <QString>

#include <optional>

namespace loopwright {

/// Where a figure came from, as the sheet shows it. Measured in this visit needs no sign.
enum class CellSign : std::uint8_t { None, Typed, Carried, Computed, Assumed, Table };

/// The sign of a recorded figure. Read has none.
CellSign signOf(Origin origin);
/// The sign of a term of a working.
CellSign signOf(TermOrigin origin);

/// What one cell of the board's sheet says.
struct SheetCell {
    QString text;
    CellSign sign = CellSign::None;
    std::optional<Verdict> verdict;  ///< of the worst check that this cell answers for
    bool missing = false;            ///< a check needed it and did not have it
    std::optional<double> loadShare; ///< load by rating, for the bar at the foot of a load cell
    friend bool operator==(const SheetCell&, const SheetCell&) = default;
};

} // namespace loopwright

Q_DECLARE_METATYPE(loopwright::SheetCell)
