// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report_input.h"

namespace loopwright::report {

/// The board, circuit or equipment that something is about; those that do not apply are nullptr.
struct Place {
    const Board* board = nullptr;
    const Circuit* circuit = nullptr;
    const Equipment* equipment = nullptr;

    /// The innermost record, none for the site.
    Id id() const;
};

Place placeOf(const Installation& installation, const Subject& subject);
Place placeOf(const Installation& installation, const Observation& observation);

/// "Board C, way F1"; the site's name where it is about no board.
QString addressOf(const Installation& installation, const Place& place);
/// "Board C, way F1: Kiln, glaze room".
QString fullNameOf(const Installation& installation, const Place& place);
/// "Board C, kiln room and long walk".
QString nameOf(const Board& board);

/// The circuits of a board in the order in which they are shown.
std::vector<const Circuit*> circuitsOf(const Installation& installation, Id board);

/// A circuit's worst verdict, the equipment that it feeds included.
Verdict worstOf(const ReportInput& input, const Circuit& circuit);

/// The visit's observations, most urgent first and otherwise in the order in which they were noted.
std::vector<const Observation*> observationsOf(const ReportInput& input);

/// Indices of failing findings whose place no observation of the visit is about.
std::vector<std::size_t> unmentionedFailures(const ReportInput& input);
/// Indices of the findings with this verdict about the observation's place, its equipment included.
std::vector<std::size_t> findingsAt(const ReportInput& input, const Observation& observation,
                                    Verdict verdict);

} // namespace loopwright::report
