// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/model/installation.h"
#include "forms/look/icons.h"

#include <QString>

#include <vector>

namespace loopwright {

/// A place that a person may have meant.
struct Match {
    Subject subject;
    QString title; ///< "F1 Kiln, glaze room"
    QString where; ///< "Board C"
    Icon icon = Icon::Circuit;
};

/// Boards, circuits, equipment and observations that hold every word of `query`, in any order and case. Those
/// whose title begins with the query come first; within that, boards before circuits before equipment before
/// observations. Nothing for an empty query.
std::vector<Match> findByWords(const Installation& installation, const QString& query, std::size_t most);

} // namespace loopwright
