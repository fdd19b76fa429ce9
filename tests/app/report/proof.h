// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report.h"

#include <QStringList>

/// Reads a report as a proof-reader would, from its ink: measured again, not as the sections measured it.
namespace loopwright::test {

/// Texts that are wider than their place, that lie outside the margins, or that lie over each other; empty
/// when all is well.
QStringList faultsIn(const Report& report);

/// Everything that a page says, top to bottom and left to right, a line a text.
QStringList saidOn(const Report::Page& page);
/// All of it, lines joined by spaces, so that a sentence is found across lines.
QString textOf(const Report& report);
QString textOf(const Report::Page& page);

/// The first page, from 1, that says this; 0 when none does.
int pageThatSays(const Report& report, const QString& said, int from = 1);

} // namespace loopwright::test
