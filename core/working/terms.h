// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/bound.h"
#include "core/units/entry.h"
#include "core/working/working.h"

#include <string>
#include <string_view>
#include <utility>

/// Lines of a working: what each figure is called, and where it came from.
namespace loopwright {

TermOrigin termOrigin(Origin origin);
/// What ">" and "<" before a figure say about it.
Bound boundOf(EntryState state);
/// "beyond range: more than this", for the figure of ">999"; no note for an exact one.
Message rangeNote(EntryState state);

template <class Q>
Measure measure(Q value, const Unit& unit, int decimals = -1, Bound bound = Bound::Exact) {
    return {unit.fromBase(detail::baseOf(value)), unit, decimals, bound};
}

/// A figure that somebody recorded. Without a note of its own it says when it is beyond range.
template <class Q>
Term recordedTerm(std::string_view symbol, const Entry<Q>& entry, const Unit& unit, Message note = {}) {
    if (note.key.empty()) note = rangeNote(entry.state);
    return {std::string(symbol),
            measure(entry.value, unit, entry.decimals, boundOf(entry.state)),
            termOrigin(entry.origin),
            std::move(note),
            {}};
}
template <class Q>
Term computedTerm(std::string_view symbol, Q value, const Unit& unit, Message note = {}) {
    return {std::string(symbol), measure(value, unit), TermOrigin::Computed, std::move(note), {}};
}
template <class Q>
Term tableTerm(std::string_view symbol, Q value, const Unit& unit, const Source& source, Message note = {}) {
    return {std::string(symbol), measure(value, unit), TermOrigin::Table, std::move(note), source};
}
/// A figure that the rule set gives.
template <class Q>
Term ruleTerm(std::string_view symbol, Q value, const Unit& unit, const Source& source, Message note = {}) {
    return {std::string(symbol), measure(value, unit), TermOrigin::Rule, std::move(note), source};
}
/// A stand-in for what nobody recorded; the note says what it stands for.
template <class Q>
Term assumedTerm(std::string_view symbol, Q value, const Unit& unit, Message note,
                 const Source& source = {}) {
    return {std::string(symbol), measure(value, unit), TermOrigin::Assumed, std::move(note), source};
}

} // namespace loopwright
