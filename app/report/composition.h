// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/flow.h"
#include "app/report/overload_album.h"
#include "app/report/photo_album.h"
#include "app/report/report_input.h"
#include "app/report/sheet.h"
#include "app/report/table.h"
#include "app/report/typeset.h"

#include <set>

namespace loopwright::report {

/// What every section writes from. `pages` is where the last attempt put things; sections are written again
/// until it agrees with what comes out.
struct Composing {
    const ReportInput& input;
    const Visit& visit;
    const Typesetter& type;
    const PhotoAlbum& album;
    const OverloadAlbum& overloads;
    const PageIndex& pages;

    /// The page of `anchor`; a stand-in of the usual width while nothing is known.
    int pageOf(const std::string& anchor) const;
};

/// The sections in their order.
Manuscript compose(const Composing& composing);

void writePageOne(const Composing& composing, Flow& flow);
void writeCovered(const Composing& composing, Flow& flow);
void writeObservations(const Composing& composing, Flow& flow);
void writeUndecided(const Composing& composing, Flow& flow);
void writeSupply(const Composing& composing, Flow& flow);
void writeInspection(const Composing& composing, Flow& flow);
void writeSchedules(const Composing& composing, Flow& flow);
void writeOverloads(const Composing& composing, Flow& flow);
void writeWorkings(const Composing& composing, Flow& flow);
void writeKey(const Composing& composing, Flow& flow);

/// A section's heading; the section flows on below what stands before it.
void writeTitle(const Composing& composing, Flow& flow, const QString& title);
void writeSubject(const Composing& composing, Flow& flow, const QString& subject, double gapBefore = 7 * mm);

/// Anchors.
std::string observationAnchor(Id observation);
std::string workingAnchor(std::size_t finding); ///< index into the assessment's findings
std::string boardAnchor(Id board);
inline constexpr const char* unmentionedAnchor = "unmentioned";
inline constexpr const char* instrumentsAnchor = "instruments";
inline constexpr const char* undecidedAnchor = "undecided";
inline constexpr const char* lastScheduleAnchor = "schedules-end";

/// "page 6", "pages 6, 7, 10", "pages 8 to 14"; empty for none.
QString pagesText(const Composing& composing, const std::set<int>& pages);

} // namespace loopwright::report
