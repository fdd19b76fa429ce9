// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report.h"

#include <QImage>

#include <string>
#include <vector>

/// Sites to make reports of.
namespace loopwright::test {

/// A site with what its report is made from.
class ReportedSite {
  public:
    Installation installation;
    Id visit;
    std::array<QString, 4> officeLabels;
    std::vector<Attachment> attachments;

    /// The assessment is kept: the findings that a report was made from can be looked up in it.
    Report report();
    ReportInput input();
    const Assessment& assessment() const { return assessment_; }
    const Words& words() const { return words_; }

  private:
    Assessment assessment_;
    Words words_{QLocale(QLocale::English, QLocale::UnitedKingdom)};
};

/// Two boards, eight circuits, one open visit; a load that is too big, an insulation reading that is too low,
/// a loop that is close, readings that are missing or could not be taken, two observations, one photo.
ReportedSite smallSite();
/// A site without anything but its name and an empty visit.
ReportedSite emptySite();
/// Everything that strains a page: names longer than their column, names of one word without a space, letters
/// of many scripts, 60 circuits on a board and none on another, observations of several pages, figures of
/// many digits.
ReportedSite nastySite();
/// The demo site at its last visit.
ReportedSite demoSite();

/// A picture of that size and colour as a PNG file.
Attachment paintedPhoto(int width, int height, Qt::GlobalColor colour);

} // namespace loopwright::test
