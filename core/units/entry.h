// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/message.h"
#include "core/units/unit.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace loopwright {

/// What stands in a field that a person fills with a figure. Nothing here is ever said by 0 or -1.
enum class EntryState : std::uint8_t {
    Missing,       ///< nothing entered
    Value,         ///< a figure
    Above,         ///< beyond the instrument's range: more than the figure (">999")
    Below,         ///< beyond the instrument's range: less than the figure ("<0.01")
    Limited,       ///< could not be found out, and why ("LIM: locked")
    NotApplicable, ///< does not exist here ("N/A")
};

/// Where a figure came from.
enum class Origin : std::uint8_t {
    Read,     ///< measured, or read off by the inspector, in this visit
    Typed,    ///< told by somebody, or taken from a plate or a drawing
    Carried,  ///< taken over from a visit before
    Computed, ///< worked out from other figures
    Assumed,  ///< nobody knows; a stand-in
};

/// The quantity-free part of an Entry, so that cells, forms and the store need no templates.
struct EntryText {
    EntryState state = EntryState::Missing;
    Origin origin = Origin::Read;
    std::uint8_t decimals = 0; ///< as many as were typed; shown again as they were typed
    double value = 0;          ///< in the field's own unit
    std::string reason;        ///< of Limited
    friend bool operator==(const EntryText&, const EntryText&) = default;
};

/// How people write numbers where the text comes from. Files and the workbook always use the C form.
struct NumberFormat {
    char decimalPoint = '.';
    std::string_view groupSeparator; ///< accepted and skipped between digits; empty in the C form
};

/// Reads what a person typed into a field that counts in `unit`: "0.32", "0,32", ">999 MΩ", "8.5 kW", "LIM:
/// locked", "N/A", each optionally followed by where it came from: "58 (carried)". An empty text is Missing.
/// A decimal comma is understood in every format unless it is the group separator. The refusal says what
/// cannot be read and what can.
tl::expected<EntryText, Message> parseEntry(std::string_view text, const Unit& unit,
                                            const NumberFormat& format = {});

/// The text that parseEntry reads back to the same entry; with `format` C this is the stored form. Read is
/// the default origin and is not written.
std::string formatEntry(const EntryText& entry, const NumberFormat& format = {});

/// What stands in a cell: formatEntry without the origin, which the screen draws as a sign.
std::string formatFigure(const EntryText& entry, const NumberFormat& format = {});

std::string_view originWord(Origin origin);
std::optional<Origin> originNamed(std::string_view word);

namespace detail {
constexpr double baseOf(double ratio) {
    return ratio;
}
template <class Q>
constexpr double baseOf(Q quantity) {
    return quantity.base();
}
} // namespace detail

/// A figure with its state and origin, as a quantity of type Q.
template <class Q>
struct Entry {
    EntryState state = EntryState::Missing;
    Origin origin = Origin::Read;
    std::uint8_t decimals = 0;
    Q value{}; ///< the figure; for Above and Below the bound that was shown
    std::string reason;

    static Entry of(Q value, int decimals, Origin origin = Origin::Read) {
        return {EntryState::Value, origin, static_cast<std::uint8_t>(decimals), value, {}};
    }
    bool isMissing() const { return state == EntryState::Missing; }
    bool hasFigure() const {
        return state == EntryState::Value || state == EntryState::Above || state == EntryState::Below;
    }
    /// The figure where it is exact; nothing when it is missing, limited, not applicable or beyond range.
    std::optional<Q> exact() const {
        return state == EntryState::Value ? std::optional<Q>(value) : std::nullopt;
    }
    friend bool operator==(const Entry&, const Entry&) = default;
};

template <class Q>
EntryText toText(const Entry<Q>& entry, const Unit& unit) {
    const double shown = entry.hasFigure() ? unit.fromBase(detail::baseOf(entry.value)) : 0;
    return {entry.state, entry.origin, entry.decimals, shown, entry.reason};
}
template <class Q>
Entry<Q> fromText(const EntryText& text, const Unit& unit) {
    return {text.state, text.origin, text.decimals, Q(unit.toBase(text.value)), text.reason};
}

} // namespace loopwright
