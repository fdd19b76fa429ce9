// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/assessment.h"
#include "core/model/change.h"

#include <QByteArray>
#include <QString>

#include <functional>
#include <memory>

namespace loopwright {

/// What every form shows: one site, one of its visits, and what was found out about it. Made anew after every
/// change and handed to each form whole; forms keep the pointer and never write through it.
struct SiteView {
    Installation installation;
    Assessment assessment; ///< of `visit`
    Id visit;
    const ReferenceTables* tables = nullptr; ///< owned by the program, outlives every form
    const RuleSet* rules = nullptr;          ///< the one the visit is judged by
    std::function<QByteArray(const std::string& digest)>
        attachment; ///< bytes of a picture or a log; empty when it is not there
};

using SiteViewPtr = std::shared_ptr<const SiteView>;

/// The one door for edits: a form describes the change, `app` commits it, journals it, assesses the site
/// again and hands every form a new SiteView before it returns. The refusal is for the person who typed: the
/// form shows it where it happened and keeps the old value.
using ChangeDoor = std::function<tl::expected<void, Message>(const Change&)>;

} // namespace loopwright
