// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

/// The parts of page one that have a file of their own.
namespace loopwright::report {

/// How much of the site the visit looked at.
struct Coverage {
    int boards = 0;
    int boardsRead = 0;   ///< where anything was read, at the board or at one of its circuits
    int circuits = 0;     ///< that are in use
    int circuitsRead = 0; ///< of which every reading that applies was taken
    int readings = 0;     ///< that apply
    int readingsTaken = 0;
    int limited = 0; ///< readings that apply and could not be taken
};
Coverage coverageOf(const ReportInput& input);

/// "What must be done, and by when": every observation that asks to make safe, and as many others, the most
/// urgent first, until the flow is `end` high; the rest is counted, with the page where it stands.
void writeActions(const Composing& composing, Flow& flow, double end);

} // namespace loopwright::report
