// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/working/terms.h"

namespace loopwright {

TermOrigin termOrigin(Origin origin) {
    switch (origin) {
    case Origin::Read:
        return TermOrigin::Read;
    case Origin::Typed:
        return TermOrigin::Typed;
    case Origin::Carried:
        return TermOrigin::Carried;
    case Origin::Computed:
        return TermOrigin::Computed;
    case Origin::Assumed:
        return TermOrigin::Assumed;
    }
    return TermOrigin::Assumed;
}

Bound boundOf(EntryState state) {
    if (state == EntryState::Above) return Bound::OrMore;
    if (state == EntryState::Below) return Bound::OrLess;
    return Bound::Exact;
}

Message rangeNote(EntryState state) {
    if (state == EntryState::Above) return {"check.note.or-more", {}};
    if (state == EntryState::Below) return {"check.note.or-less", {}};
    return {};
}

} // namespace loopwright
