// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/working/working.h"

namespace loopwright {

std::string_view originKey(TermOrigin origin) {
    switch (origin) {
    case TermOrigin::Read:
        return "read";
    case TermOrigin::Typed:
        return "typed";
    case TermOrigin::Carried:
        return "carried";
    case TermOrigin::Computed:
        return "computed";
    case TermOrigin::Assumed:
        return "assumed";
    case TermOrigin::Table:
        return "table";
    case TermOrigin::Rule:
        return "rule";
    }
    return {};
}

} // namespace loopwright
