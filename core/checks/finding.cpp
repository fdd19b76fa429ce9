// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/finding.h"

namespace loopwright {

std::string_view verdictKey(Verdict verdict) {
    switch (verdict) {
    case Verdict::Fails:
        return "fails";
    case Verdict::CannotTell:
        return "cannot-tell";
    case Verdict::Close:
        return "close";
    case Verdict::Holds:
        return "holds";
    case Verdict::DoesNotApply:
        return "does-not-apply";
    }
    return {};
}

} // namespace loopwright
