// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"
#include "forms/words/words.h"

/// What people read of a sum, at a terminal and on screen. Names are in notation.
namespace loopwright::sums {

QString sumTitle(const Sum& sum, const Words& words);
QString inputName(const Input& input, const Words& words);
QString resultName(const Result& result, const Words& words);
/// An option of a choice, in words where the choice has some.
QString optionName(const Input& input, const std::string& option, const Words& words);
/// What a result that is a word says.
QString wordName(std::string_view word, const Words& words);

/// "0.001 to 1 000 m".
QString rangeText(const Input& input, const Words& words);
/// What stands where the input is left out: "230 V", "no"; empty where nothing does.
QString presetText(const Input& input, const SumContext& context, const Words& words);

} // namespace loopwright::sums
