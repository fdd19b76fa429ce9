// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

#include <array>

namespace loopwright {

/// What is asked for together in L1, L2 and L3. Where the load of a circuit is not known, which is noted, the
/// known part counts and is that or more.
struct Demand {
    std::array<Figure<Current>, 3> lines;
    int circuits = 0; ///< that were counted, spare ways and those taken out of use left out

    void add(const Demand& other);
    /// The line that is asked most of: 0 is L1.
    std::size_t most() const;
};

/// The name of a line as a word of a sentence: 0 is L1.
Word lineWord(std::size_t line);

/// The demand of a board's circuits: the inspector's own figure where there is one, otherwise design currents
/// with the published allowances for the site's premises, which are reckoned line by line. A circuit that
/// feeds boards brings their demand. Shown circuit by circuit; of boards further out only their sum.
Demand demandOfCircuits(const VisitContext& visit, const Board& board, Worksheet& sheet);

/// The same, but the inspector's own figure for the circuit that feeds the board goes before.
Demand demandOfBoard(const BoardContext& context, Worksheet& sheet);

/// The demand of all boards that no circuit feeds; the inspector's own figure goes before.
Demand demandAtIntake(const VisitContext& visit, Worksheet& sheet);

} // namespace loopwright
