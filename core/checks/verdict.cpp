// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/verdict.h"

#include <cmath>

namespace loopwright {
namespace {

/// Two figures that differ by less than this share differ only by the rounding of their arithmetic.
constexpr double roundingShare = 1e-9;

/// Whether the true margin may be better or worse than the one worked out.
Bound marginBound(Relation relation, Bound result, Bound limit) {
    return relation == Relation::AtLeast ? combined(result, reversed(limit))
                                         : combined(reversed(result), limit);
}

} // namespace

Bound combined(Bound a, Bound b) {
    if (a == Bound::Exact) return b;
    if (b == Bound::Exact || a == b) return a;
    return Bound::Open;
}

const Uncertainty* lessSure(const Uncertainty* a, const Uncertainty* b) {
    if (!a || !b) return a ? a : b;
    return a->share < b->share ? b : a;
}

Bound reversed(Bound bound) {
    switch (bound) {
    case Bound::OrLess:
        return Bound::OrMore;
    case Bound::OrMore:
        return Bound::OrLess;
    default:
        return bound;
    }
}

Judgement judge(Relation relation, const Figure<double>& result, const Figure<double>& limit,
                Ratio closeBand) {
    if (!std::isfinite(result.value) || !std::isfinite(limit.value) || limit.value <= 0) return {};
    double margin = (limit.value - result.value) / limit.value;
    if (relation == Relation::AtLeast) margin = -margin;
    if (std::abs(margin) < roundingShare) margin = 0;

    const Bound bound = marginBound(relation, result.bound, limit.bound);
    const bool isPast = margin == 0 && bound == Bound::OrLess && (result.isStrict || limit.isStrict);
    const bool fails = margin < 0 || isPast;
    const bool mayBeBetter = bound == Bound::OrMore || bound == Bound::Open;
    const bool mayBeWorse = bound == Bound::OrLess || bound == Bound::Open;
    if ((fails && mayBeBetter) || (!fails && mayBeWorse)) return {};
    if (fails) return {Verdict::Fails, margin};
    return {margin < closeBand ? Verdict::Close : Verdict::Holds, margin};
}

} // namespace loopwright
