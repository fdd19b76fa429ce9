// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/working_json.h"
#include "core/sums/read_inputs.h"

/// Sums as resources/schema/sums.schema.json describes them, for other programs. Titles and sentences are
/// those that a person reads; everything else does not depend on the language.
namespace loopwright::sums {

/// Every sum with what it takes and gives.
Json listJson(const SumContext& context, const Words& words);

/// What a sum answered, or why it did not.
Json answerJson(const Sum& sum, const tl::expected<Answers, Refusal>& answers, const SumContext& context,
                const Words& words);
/// The same where it is not known which sum was meant.
Json refusalJson(const std::string& sum, const Refusal& refusal, const Words& words);

/// Answers one line of a batch: {"sum": NAME, "inputs": {...}, "id": anything}. A line that cannot be read is
/// answered too.
Json batchAnswer(std::string_view line, const SumContext& context, const Words& words);

} // namespace loopwright::sums
