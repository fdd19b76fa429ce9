// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/verdict.h"
#include "core/reference/reference_tables.h"
#include "core/working/terms.h"

namespace loopwright {

template <class Q>
Measure measure(const Figure<Q>& figure, const Unit& unit) {
    const bool wasRead = figure.decimals >= 0;
    return measure(figure.value, unit, figure.decimals, wasRead ? figure.bound : Bound::Exact);
}

} // namespace loopwright
