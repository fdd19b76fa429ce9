// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/input.h"
#include "core/working/terms.h"

#include <span>
#include <variant>
#include <vector>

/// What a sum answers. Results are declared once, with their quantity in their type, as inputs are.
namespace loopwright::sums {

enum class ResultKind : std::uint8_t { Number, List, Word };

struct Result {
    std::string_view key;    ///< "loopImpedance_ohm"
    std::string_view symbol; ///< "Z_s"
    Unit unit = units::ratio;
    ResultKind kind = ResultKind::Number;
    std::span<const std::string_view> words; ///< that a Word can be; people read "sum.word.<word>"
};

template <class Q>
struct NumberResult : Result {};
template <class Q>
struct ListResult : Result {};
struct WordResult : Result {};

template <class Q>
constexpr NumberResult<Q> result(std::string_view key, std::string_view symbol, const Unit& unit) {
    const Input checked = detail::figure<Q>(key, symbol, unit, InputKind::Number);
    return {{checked.key, checked.symbol, checked.unit, ResultKind::Number, {}}};
}
template <class Q>
constexpr ListResult<Q> listResult(std::string_view key, std::string_view symbol, const Unit& unit) {
    const Input checked = detail::figure<Q>(key, symbol, unit, InputKind::Number);
    return {{checked.key, checked.symbol, checked.unit, ResultKind::List, {}}};
}
template <std::size_t N>
constexpr WordResult wordResult(std::string_view key, const std::string_view (&words)[N]) {
    return {{.key = key, .kind = ResultKind::Word, .words = words}};
}

inline constexpr std::string_view verdictWords[]{"holds", "fails"};
/// Whether the last comparison holds, of sums that were given a limit.
inline constexpr WordResult verdict = wordResult("verdict", verdictWords);

/// The value of one result, in its unit. Nothing where there is none to tell: no limit was given, or the
/// device may never operate.
using ResultValue = std::variant<std::monostate, double, std::vector<double>, std::string_view>;

/// The answer to one case. A sum fills it step by step; the first step begins with what was given.
class Answer {
  public:
    struct Filled {
        std::string_view key;
        ResultValue value;
    };

    /// A result and how it was reached. Terms added before it stand in its working.
    template <class Q>
    Answer& step(std::string_view formula, const NumberResult<Q>& declared, Q value,
                 const Source& source = {}) {
        fill(declared, declared.unit.fromBase(loopwright::detail::baseOf(value)));
        return addWorking(formula, declared.symbol, measure(value, declared.unit), source);
    }
    /// A list, with a working for each of its items.
    template <class Q>
    Answer& step(std::string_view formula, const ListResult<Q>& declared, const std::vector<Q>& values,
                 const Source& source = {}) {
        std::vector<double> list;
        for (const Q& value : values) {
            list.push_back(declared.unit.fromBase(loopwright::detail::baseOf(value)));
            addWorking(formula, declared.symbol, measure(value, declared.unit), source);
        }
        fill(declared, std::move(list));
        return *this;
    }
    /// A line of the next step's working.
    Answer& term(Term term);
    Answer& word(const WordResult& declared, std::string_view word);

    /// Sets a limit to the last step and says in `declared` whether it holds.
    template <class Q>
    Answer& judge(Relation relation, Q value, Q limit, const Unit& unit,
                  const WordResult& declared = verdict) {
        const bool holds = relation == Relation::AtLeast ? value >= limit : value <= limit;
        setLimit(relation, measure(limit, unit));
        return word(declared, verdictWords[holds ? 0 : 1]);
    }

    /// Puts terms before those of the first step.
    void beginWith(std::vector<Term> terms);

    std::span<const Filled> results() const { return results_; }
    std::span<const Working> workings() const { return workings_; }
    /// The value of a result; nothing where it was not filled.
    const ResultValue& value(std::string_view key) const;

  private:
    void fill(const Result& declared, ResultValue value);
    Answer& addWorking(std::string_view formula, std::string_view symbol, Measure result, Source source);
    void setLimit(Relation relation, Measure limit);

    std::vector<Filled> results_;
    std::vector<Working> workings_;
    std::vector<Term> pending_;
};

} // namespace loopwright::sums
