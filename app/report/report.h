// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/ink.h"
#include "app/report/paginate.h"
#include "app/report/report_input.h"

#include <tl/expected.hpp>

class QPainter;
class QPrinter;

namespace loopwright {

/// A report as pages of ink: what preview, printer and PDF draw. A plain value; it refers to nothing that it
/// was made from.
struct Report {
    struct Page {
        report::PageForm form = report::PageForm::Portrait;
        std::vector<report::Ink> inks;
    };
    QString title;  ///< "Report on the electrical installation: Oakum Row Works"
    QString author; ///< the inspector; empty when none is recorded
    std::vector<Page> pages;
};

/// Writes and lays out the whole report. A visit that the installation does not have gives a report without
/// pages. Needs a QGuiApplication for its fonts.
Report composeReport(const ReportInput& input);

/// Paper size of a page, upright or lying, in millimetres.
QSizeF paperOf(const Report::Page& page);

/// Draws one page with a painter whose unit is a millimetre and whose origin is the paper's top left corner.
void paintPage(QPainter& painter, const Report::Page& page);

/// Writes the report as a PDF file in place of whatever was there. When it cannot be written, the old file,
/// if any, stays as it was and nothing half-written is left; the refusal is a sentence that says where and
/// why.
tl::expected<void, QString> writeReport(const ReportInput& input, const QString& pdfPath);
tl::expected<void, QString> writePdf(const Report& report, const QString& pdfPath);

/// Prints the pages from `first` to `last`, counted from 1, each on paper of its own form. False when the
/// printer refused.
bool printReport(const Report& report, QPrinter& printer, int first, int last);

} // namespace loopwright
