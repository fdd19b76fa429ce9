// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"
#include "forms/words/words.h"

#include <string>

/// Sums as a person reads them at a terminal.
namespace loopwright::sums {

/// Every sum: what it takes, what it gives, and an example to try.
std::string listText(const SumContext& context, const Words& words);

/// The answers with their workings, step by step.
std::string answerText(const Sum& sum, const Answers& answers, const SumContext& context, const Words& words);

} // namespace loopwright::sums
