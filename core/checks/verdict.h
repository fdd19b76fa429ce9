// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/checks/uncertainty.h"
#include "core/units/bound.h"
#include "core/units/entry.h"

#include <cmath>
#include <type_traits>

/// How a result and a limit become a verdict.
namespace loopwright {

/// A value to reckon with.
template <class Q>
struct Figure {
    Q value{};
    Bound bound = Bound::Exact;
    int decimals = -1;                        ///< as it was typed; -1 for one that was worked out
    const Uncertainty* uncertainty = nullptr; ///< of the reading that it rests on; nullptr: it rests on none
    /// The truth is not the figure itself: ">300" is more than 300. Only readings are so; a bound that was
    /// worked out, such as a load taken at its device's rating, may be met.
    bool isStrict = false;
};

/// Whether a figure can be reckoned with: finite, and above 0 unless it is a temperature.
template <class Q>
bool isUsable(Q value) {
    const double base = detail::baseOf(value);
    return std::isfinite(base) && (std::is_same_v<Q, Temperature> || base > 0);
}
/// The figure where it is exact and can be reckoned with. For what a check can do without; what it needs is
/// asked of its Worksheet.
template <class Q>
std::optional<Q> usable(const Entry<Q>& entry) {
    const auto exact = entry.exact();
    return exact && isUsable(*exact) ? exact : std::nullopt;
}

/// The bound of a sum or product that rises with both, and of a reciprocal.
Bound combined(Bound a, Bound b);
Bound reversed(Bound bound);

/// The one that may be off further.
const Uncertainty* lessSure(const Uncertainty* a, const Uncertainty* b);

/// The value of a function that rises with its argument.
template <class Q, class A>
Figure<Q> rising(Q value, const Figure<A>& a) {
    return {value, a.bound, -1, a.uncertainty};
}
/// The value of a function that falls as its argument rises.
template <class Q, class A>
Figure<Q> falling(Q value, const Figure<A>& a) {
    return {value, reversed(a.bound), -1, a.uncertainty};
}
/// The value of a function that rises with each of its arguments.
template <class Q, class A, class B>
Figure<Q> rising(Q value, const Figure<A>& a, const Figure<B>& b) {
    return {value, combined(a.bound, b.bound), -1, lessSure(a.uncertainty, b.uncertainty)};
}

struct Judgement {
    Verdict verdict = Verdict::CannotTell;
    std::optional<double> margin; ///< nothing where there is no verdict to go with it
};

/// Margin = (limit - result) / limit for AtMost, (result - limit) / limit for AtLeast. Below 0 fails, below
/// `closeBand` is close. A bound counts only on the safe side: where the truth could turn the verdict nobody
/// can tell. A strict bound at the limit that points past it fails with a margin of 0. Nobody can tell either
/// with figures that are not finite and with limits that are not above 0.
Judgement judge(Relation relation, const Figure<double>& result, const Figure<double>& limit,
                Ratio closeBand);

} // namespace loopwright
