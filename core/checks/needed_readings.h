// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/records.h"

#include <string_view>

/// Which readings a visit cannot be issued without, by the kind of circuit, board and supply.
namespace loopwright {

/// One cell that applies, and what stands in it.
struct NeededReading {
    std::string_view field; ///< of the record's row of readings
    EntryState state = EntryState::Missing;
    const std::string* reason = nullptr; ///< of Limited, where one is recorded
};

namespace detail {

inline EntryState stateOf(TestOutcome outcome) {
    switch (outcome) {
    case TestOutcome::NotDone:
        return EntryState::Missing;
    case TestOutcome::Limited:
        return EntryState::Limited;
    case TestOutcome::NotApplicable:
        return EntryState::NotApplicable;
    default:
        return EntryState::Value;
    }
}
template <class Reading, class Q>
NeededReading needed(const Reading* reading, Entry<Q> Reading::*member, std::string_view field) {
    if (!reading) return {field};
    return {field, (reading->*member).state, &(reading->*member).reason};
}
template <class Reading>
NeededReading needed(const Reading* reading, TestOutcome Reading::*member, std::string_view field) {
    return {field, reading ? stateOf(reading->*member) : EntryState::Missing};
}

} // namespace detail

/// Calls `visit` with each reading that a circuit needs; none for a spare way and for what is taken out of
/// use.
template <class Visitor>
void forEachNeeded(const Circuit& circuit, const CircuitReading* reading, Visitor&& visit) {
    using R = CircuitReading;
    if (!isInUse(circuit)) return;
    if (circuit.topology == Topology::Ring) {
        visit(detail::needed(reading, &R::ringLine, "ringLine_ohm"));
        visit(detail::needed(reading, &R::ringNeutral, "ringNeutral_ohm"));
        visit(detail::needed(reading, &R::ringProtective, "ringProtective_ohm"));
    }
    visit(detail::needed(reading, &R::continuity, "continuity_ohm"));
    visit(detail::needed(reading, &R::insulationLive, "insulationLive_Mohm"));
    visit(detail::needed(reading, &R::insulationEarth, "insulationEarth_Mohm"));
    visit(detail::needed(reading, &R::polarity, "polarity"));
    visit(detail::needed(reading, &R::loopImpedance, "loopImpedance_ohm"));
    if (circuit.residual.fitted) {
        visit(detail::needed(reading, &R::residualTime, "residualTime_ms"));
        visit(detail::needed(reading, &R::residualButton, "residualButton"));
    }
}

template <class Visitor>
void forEachNeeded(const Board& board, const BoardReading* reading, Visitor&& visit) {
    using R = BoardReading;
    visit(detail::needed(reading, &R::loopImpedance, "loopImpedance_ohm"));
    visit(detail::needed(reading, &R::prospectiveFaultCurrent, "prospectiveFaultCurrent_kA"));
    visit(detail::needed(reading, &R::polarity, "polarity"));
    if (board.phases == Phases::Three) visit(detail::needed(reading, &R::phaseSequence, "phaseSequence"));
    if (board.earthing == BoardEarthing::OwnElectrode)
        visit(detail::needed(reading, &R::electrodeResistance, "electrodeResistance_ohm"));
    if (board.residual.fitted) visit(detail::needed(reading, &R::residualTime, "residualTime_ms"));
}

template <class Visitor>
void forEachNeeded(const Supply& supply, const SupplyReading* reading, Visitor&& visit) {
    using R = SupplyReading;
    visit(detail::needed(reading, &R::externalLoopImpedance, "externalLoopImpedance_ohm"));
    visit(detail::needed(reading, &R::prospectiveFaultCurrent, "prospectiveFaultCurrent_kA"));
    visit(detail::needed(reading, &R::polarity, "polarity"));
    if (supply.phases == Phases::Three) visit(detail::needed(reading, &R::phaseSequence, "phaseSequence"));
    if (supply.earthing == Earthing::Tt)
        visit(detail::needed(reading, &R::electrodeResistance, "electrodeResistance_ohm"));
}

} // namespace loopwright
