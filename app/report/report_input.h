// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/assessment.h"
#include "core/model/clock.h"
#include "core/model/installation.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"
#include "core/sitefile/site_file.h"
#include "forms/words/words.h"

#include <QString>

#include <array>

namespace loopwright {

inline constexpr std::size_t gradeCount = 4;
/// What an office's local scheme calls each grade, by Grade; empty: nothing is printed beside ours.
using OfficeLabels = std::array<QString, gradeCount>;

/// Everything a report is made from. What it refers to must outlive the making of the report, not the report
/// itself.
struct ReportInput {
    const Installation& installation;
    const Assessment& assessment; ///< of the visit that is reported; its `visit` says which
    const ReferenceTables& tables;
    const RuleSet& rules;
    const Words& words;                ///< of the report's language, which need not be the screen's
    const Clock& clock;                ///< for "printed on" while it is not issued
    AttachmentSource attachments = {}; ///< bytes by digest; where they are not at hand the report says so
    OfficeLabels officeLabels = {};
};

} // namespace loopwright
