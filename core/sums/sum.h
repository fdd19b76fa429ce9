// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/answer.h"
#include "core/sums/given.h"

#include <tl/expected.hpp>

namespace loopwright::sums {

/// Why a sum was not done.
struct Refusal {
    std::string input; ///< the key that it is about; empty when it is about none
    Message what;
    friend bool operator==(const Refusal&, const Refusal&) = default;
};

using Outcome = tl::expected<Answer, Refusal>;

/// A named calculation that a person asks for on its own. People read "sum.<key>.title", its inputs as
/// "sum.input.<input key>" and its results as "sum.result.<result key>": the same key is the same thing in
/// every sum.
struct Sum {
    std::string_view key; ///< "loop-from-parts"
    std::vector<Input> inputs;
    std::vector<Result> results;
    std::string_view example; ///< inputs as a person types them, for those who try it and for the tests
    /// Pure: the answer to one case.
    Outcome (*work)(const Given&, const SumContext&);
};

/// The answer to every case that was asked for.
struct Answers {
    std::vector<Answer> cases; ///< one, or one for each of several figures given for a number
    bool several = false;      ///< a number was given as a list: results are lists too
};

/// Answers every case. Refuses where a sum has no answer, or one that is not finite.
tl::expected<Answers, Refusal> answer(const Sum& sum, const Inputs& inputs, const SumContext& context);

} // namespace loopwright::sums
