// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"
#include "core/phrases/message.h"
#include "core/working/boxed.h"
#include "core/working/working.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What a check answers: a verdict, how near the limit it is, and the working that a person can follow.
namespace loopwright {

/// Worst first, so that sorting by it puts first what needs a person.
enum class Verdict : std::uint8_t { Fails, CannotTell, Close, Holds, DoesNotApply };

inline constexpr std::array worstFirst{Verdict::Fails, Verdict::CannotTell, Verdict::Close, Verdict::Holds,
                                       Verdict::DoesNotApply};

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
    Message sentence;       ///< what a person reads; empty key without detail
    Boxed<Working> working; ///< empty without detail
    friend bool operator==(const Finding&, const Finding&) = default;
};

} // namespace loopwright
