// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/input.h"

#include <span>
#include <vector>

namespace loopwright::sums {

/// A figure that was given, and with how many decimals.
struct GivenFigure {
    double value = 0; ///< in base units
    int decimals = -1;
};

/// What stands for one input: figures of a number or list, or the option of a choice.
struct GivenInput {
    std::vector<GivenFigure> figures; ///< empty: an optional input that was left out
    std::string option;               ///< of a choice; "yes" or "no" of a flag
    bool byDefault = false;
    Source source; ///< of a default
};

/// What stands for every input of a sum, in its order, checked against its declaration. Only readInputs makes
/// these: nothing that is not a finite figure within its range is ever among them.
using Inputs = std::vector<GivenInput>;

/// The inputs of one case: where a number is given several times, one of them.
class Given {
  public:
    Given(std::span<const Input> declared, const Inputs& inputs, std::size_t index)
      : declared_(declared)
      , inputs_(inputs)
      , index_(index) {}

    template <class Q>
    Q operator[](const NumberInput<Q>& input) const {
        return Q(figure(of(input)).value);
    }
    template <class Q>
    std::optional<Q> operator[](const OptionalInput<Q>& input) const {
        const GivenInput& given = of(input);
        return given.figures.empty() ? std::nullopt : std::optional<Q>(Q(figure(given).value));
    }
    template <class Q>
    std::vector<Q> operator[](const ListInput<Q>& input) const {
        std::vector<Q> list;
        for (const GivenFigure& each : of(input).figures)
            list.push_back(Q(each.value));
        return list;
    }
    template <class E>
    E operator[](const ChoiceInput<E>& input) const {
        for (const Choice& each : choicesOf<E>().choices)
            if (each.key == of(input).option) return static_cast<E>(each.value);
        throwUndeclared(input.key);
    }
    const std::string& operator[](const NameInput& input) const { return of(input).option; }
    bool operator[](const FlagInput& input) const { return of(input).option == "yes"; }

    /// The figures of one input in this case: one of a number, all of a list.
    std::span<const GivenFigure> figures(std::size_t input) const;

  private:
    /// Throws std::logic_error for an input that the sum does not declare.
    const GivenInput& of(const Input& input) const;
    const GivenFigure& figure(const GivenInput& given) const {
        return given.figures.size() == 1 ? given.figures.front() : given.figures.at(index_);
    }
    [[noreturn]] static void throwUndeclared(std::string_view key);

    std::span<const Input> declared_;
    const Inputs& inputs_;
    std::size_t index_;
};

} // namespace loopwright::sums
