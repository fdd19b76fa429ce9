// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/files/files.h"
#include "app/report/report.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int dotsPerInch = 300;
constexpr double millimetresPerInch = 25.4;

QPageLayout layoutOf(const Report::Page& page) {
    const bool lies = page.form == report::PageForm::Landscape;
    return {QPageSize(QPageSize::A4), lies ? QPageLayout::Landscape : QPageLayout::Portrait,
            QMarginsF(0, 0, 0, 0)};
}

/// Draws the pages onto a device whose new pages take the layout that was set before them. False when the
/// device refused.
template <class Device>
bool drawPages(const std::vector<Report::Page>& pages, Device& device, int resolution) {
    QPainter painter;
    bool isFirst = true;
    for (const Report::Page& page : pages) {
        device.setPageLayout(layoutOf(page));
        if (isFirst ? !painter.begin(&device) : !device.newPage()) return false;
        isFirst = false;
        painter.save();
        painter.scale(resolution / millimetresPerInch, resolution / millimetresPerInch);
        paintPage(painter, page);
        painter.restore();
    }
    return painter.end();
}

/// Qt writes no author of its own, so title and author go into the metadata stream (XMP, ISO 16684-1).
QByteArray metadataOf(const Report& report) {
    return QStringLiteral(R"(<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">%1</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>%2</rdf:li></rdf:Seq></dc:creator>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="w"?>)")
        .arg(report.title.toHtmlEscaped(), report.author.toHtmlEscaped())
        .toUtf8();
}

/// The whole file in memory: a device that fills up half way is none of QPdfWriter's concern, and it would
/// not tell. Empty when it could not be drawn.
QByteArray pdfOf(const Report& report) {
    QBuffer file;
    file.open(QIODevice::WriteOnly);
    QPdfWriter writer(&file);
    writer.setResolution(dotsPerInch);
    writer.setTitle(report.title);
    writer.setCreator(QStringLiteral("Loopwright"));
    writer.setDocumentXmpMetadata(metadataOf(report));
    return drawPages(report.pages, writer, dotsPerInch) ? file.data() : QByteArray();
}

} // namespace

tl::expected<void, QString> writePdf(const Report& report, const QString& pdfPath) {
    if (report.pages.empty())
        return tl::unexpected(QCoreApplication::translate(
            "Report", "There is no such visit at this site. Choose one that is recorded."));
    const QByteArray bytes = pdfOf(report);
    if (bytes.isEmpty())
        return tl::unexpected(
            QCoreApplication::translate("Report", "The report could not be drawn; nothing was written."));
    return writeFile(pdfPath.toStdString(), {bytes.data(), static_cast<std::size_t>(bytes.size())});
}

tl::expected<void, QString> writeReport(const ReportInput& input, const QString& pdfPath) {
    return writePdf(composeReport(input), pdfPath);
}

bool printReport(const Report& report, QPrinter& printer, int first, int last) {
    const auto from = report.pages.begin() + std::clamp(first - 1, 0, static_cast<int>(report.pages.size()));
    const auto to = report.pages.begin() + std::clamp(last, 0, static_cast<int>(report.pages.size()));
    if (from >= to) return false;
    printer.setFullPage(true);
    printer.setDocName(report.title);
    return drawPages(std::vector<Report::Page>(from, to), printer, printer.resolution());
}

} // namespace loopwright
