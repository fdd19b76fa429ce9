// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"

/// The figures of a finding, for tests to compare: below 0 where it has none, as no figure of theirs is.
namespace loopwright::test {

inline double resultOf(const Finding& finding) {
    return finding.result ? finding.result->value : -1;
}
inline double limitOf(const Finding& finding) {
    return finding.limit ? finding.limit->value : -1;
}

} // namespace loopwright::test
