// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report_input.h"
#include "core/remedy/remedy.h"
#include "forms/words/overload_words.h"

#include <QPicture>
#include <QSizeF>

#include <vector>

namespace loopwright::report {

/// A log of a circuit's current: what was found in it, and its picture.
struct LogSheet {
    QString name;
    QString said; ///< sentences; why nothing was found, where there are no facts
    std::vector<OverloadFact> facts;
    QPicture picture;
};

/// A circuit whose load over time needs a person: its findings, pictures, facts and remedies. Of a circuit
/// that nothing is found in, only what was logged.
struct OverloadSheet {
    Id circuit;
    std::vector<std::size_t> findings; ///< indices into the assessment, the plainest first; none: logs only
    std::vector<OverloadFact> facts;
    std::vector<Remedy> remedies;
    QPicture band;
    QPicture heat;
    std::vector<LogSheet> logs;
};

/// The sheets of a report, worked out and drawn once, however often the pages are laid out.
class OverloadAlbum {
  public:
    /// Pictures are `size` pixels of the look, those of logs `logSize`.
    OverloadAlbum(const ReportInput& input, const QSizeF& size, const QSizeF& logSize);

    const std::vector<OverloadSheet>& sheets() const { return sheets_; }
    const QSizeF& size() const { return size_; }
    const QSizeF& logSize() const { return logSize_; }

  private:
    std::vector<OverloadSheet> sheets_;
    QSizeF size_;
    QSizeF logSize_;
};

} // namespace loopwright::report
