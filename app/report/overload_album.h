// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report_input.h"
#include "core/remedy/remedy.h"
#include "forms/words/overload_words.h"

#include <QPicture>
#include <QSizeF>

#include <vector>

namespace loopwright::report {

/// A circuit whose load over time needs a person: its findings, pictures, facts and remedies.
struct OverloadSheet {
    Id circuit;
    std::vector<std::size_t> findings; ///< indices into the assessment, the plainest first
    std::vector<OverloadFact> facts;
    std::vector<Remedy> remedies;
    QPicture band;
    QPicture heat;
};

/// The sheets of a report, worked out and drawn once, however often the pages are laid out.
class OverloadAlbum {
  public:
    /// Pictures are `size` pixels of the look.
    OverloadAlbum(const ReportInput& input, const QSizeF& size);

    const std::vector<OverloadSheet>& sheets() const { return sheets_; }
    const QSizeF& size() const { return size_; }

  private:
    std::vector<OverloadSheet> sheets_;
    QSizeF size_;
};

} // namespace loopwright::report
