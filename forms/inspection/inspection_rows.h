// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/installation.h"
#include "core/reference/reference_tables.h"
#include "forms/look/mark.h"

#include <QString>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace loopwright {

/// One item of the inspection with what the visit says about it, or the heading of a group of items.
struct InspectionRow {
    std::string item; ///< its key; empty: a heading
    QString text;     ///< of the item or of the heading
    QString pointer;  ///< where the rules speak of it
    InspectionResult result = InspectionResult::NotLooked;
    QString remark;
    Id outcome; ///< the record; none while nothing was recorded
    bool isHeading() const { return item.empty(); }
    friend bool operator==(const InspectionRow&, const InspectionRow&) = default;
};

/// Every known item under its group, in the order of the table, and after them what the visit recorded about
/// items that the table does not know.
std::vector<InspectionRow> inspectionRows(const Installation& installation, Id visit,
                                          const ReferenceTables& tables);

inline constexpr int inspectionResultCount = 5;

/// Items by result.
class ResultCounts {
  public:
    explicit ResultCounts(const std::vector<InspectionRow>& rows = {});
    int of(InspectionResult result) const { return counts_[static_cast<std::size_t>(result)]; }
    int all() const;
    /// Those of which nobody can say how they are, because nobody looked or nobody could.
    int unseen() const { return of(InspectionResult::NotLooked) + of(InspectionResult::Limited); }
    friend bool operator==(const ResultCounts&, const ResultCounts&) = default;

  private:
    std::array<int, inspectionResultCount> counts_{};
};

/// The verdict whose mark stands at a result. What was seen and noted has none: its observation carries the
/// mark of a grade.
std::optional<Verdict> verdictOf(InspectionResult result);

/// "choice.inspection-result.in-order".
std::string wordKey(InspectionResult result);

} // namespace loopwright
