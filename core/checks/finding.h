// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"
#include "core/phrases/message.h"
#include "core/reference/source.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What a check answers: a verdict, how near the limit it is, and the working that a person can follow.
namespace loopwright {

/// Worst first, so that sorting by it puts first what needs a person.
enum class Verdict : std::uint8_t { Fails, CannotTell, Close, Holds, DoesNotApply };

/// "fails", "cannot-tell", "close", "holds", "does-not-apply": stable, in files and on the command line.
std::string_view verdictKey(Verdict verdict);

/// How much a check writes down.
enum class Detail : std::uint8_t {
    VerdictOnly, ///< verdict, margin, result and limit alone: no sentence, no working, no missing inputs
    Full,
};

/// What a finding is about.
struct Subject {
    RecordKind kind = RecordKind::Site;
    Id id;
    friend bool operator==(const Subject&, const Subject&) = default;
};

/// Where a term of a working came from.
enum class TermOrigin : std::uint8_t { Read, Typed, Carried, Computed, Assumed, Table, Rule };

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

/// How a verdict was reached. Data, not text: screen, report and JSON print the same one.
struct Working {
    std::string formula; ///< "I_b ≤ I_n", with `_` before subscripts and `^` before superscripts
    std::vector<Term> terms;
    std::string resultSymbol;
    std::optional<Measure> result;
    Relation relation = Relation::AtMost;
    std::optional<Measure> limit;
    Source source;                  ///< of the rule that sets the limit
    std::string clause;             ///< "433.1.1"
    bool restsOnAssumption = false; ///< a term is assumed, and so is the answer
    friend bool operator==(const Working&, const Working&) = default;
};

/// An input that a check needed and did not have.
struct MissingInput {
    RecordKind kind = RecordKind::Circuit; ///< whose field
    Id id;                                 ///< none when the record itself does not exist yet
    std::string_view field;                ///< its key: "loopImpedance_ohm"; static storage
    friend bool operator==(const MissingInput&, const MissingInput&) = default;
};

struct Finding {
    Subject subject;
    std::string_view check; ///< stable key: "load-device"; static storage
    Verdict verdict = Verdict::DoesNotApply;
    std::optional<double>
        margin; ///< share of the limit still free: 0.25 is a quarter; below 0 the limit is passed
    std::optional<Measure> result;
    std::optional<Measure> limit;
    std::vector<MissingInput> missing;
    Message sentence; ///< what a person reads; empty key without detail
    Working working;  ///< empty without detail
    friend bool operator==(const Finding&, const Finding&) = default;
};

} // namespace loopwright
