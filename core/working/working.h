// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/message.h"
#include "core/reference/source.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// How a figure was reached: the same data for checks and for sums.
namespace loopwright {

/// Where a term of a working came from.
enum class TermOrigin : std::uint8_t { Read, Typed, Carried, Computed, Assumed, Table, Rule };

/// "read", "typed", "carried", "computed", "assumed", "table", "rule": stable, as verdictKey is.
std::string_view originKey(TermOrigin origin);

/// One line of a working: symbol, value and where it came from.
struct Term {
    std::string symbol; ///< plain text with `_` before a subscript: "I_n", "Z_s", "R_1+R_2"
    Measure value;
    TermOrigin origin = TermOrigin::Read;
    Message note;  ///< what it is, or how it was got: "9.6 kW at 230 V"; empty key: nothing to add
    Source source; ///< of a Table or Rule term; otherwise empty
    friend bool operator==(const Term&, const Term&) = default;
};

enum class Relation : std::uint8_t { AtMost, AtLeast, Between, Equal };

/// How a verdict or a result was reached. Data, not text: screen, report and JSON print the same one.
struct Working {
    std::string formula; ///< "I_b ≤ I_n", with `_` before subscripts and `^` before superscripts
    std::vector<Term> terms;
    std::string resultSymbol;
    std::optional<Measure> result;
    Relation relation = Relation::AtMost;
    std::optional<Measure> limit;
    Source source;                  ///< of the rule that sets the limit, or of the formula
    std::string clause;             ///< "433.1.1"
    bool restsOnAssumption = false; ///< a term is assumed, and so is the answer
    friend bool operator==(const Working&, const Working&) = default;
};

} // namespace loopwright
