// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/report/proof.h"
#include "tests/app/report/sites.h"
#include "tests/support/full_disk.h"
#include "tests/support/temporary_folder.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QPrinter>
#include <QProcess>
#include <QRegularExpression>

namespace loopwright::test {
namespace {

QString pathIn(const TemporaryFolder& folder, std::string_view name) {
    return QString::fromStdString((folder / name).string());
}

QByteArray bytesOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll();
}

/// What the program prints; fails the test when it does not end well.
QByteArray printedBy(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished()) << program.toStdString();
    EXPECT_EQ(process.exitCode(), 0) << program.toStdString() << ": "
                                     << process.readAllStandardError().toStdString();
    return process.readAllStandardOutput();
}

QByteArray withoutDate(QByteArray pdf) {
    const qsizetype at = pdf.indexOf("/CreationDate");
    EXPECT_GE(at, 0);
    return pdf.remove(at, pdf.indexOf(')', at) - at);
}

TEST(ReportPdf, isSoundAndSaysWhatThePagesSay) {
    const TemporaryFolder folder;
    ReportedSite site = demoSite();
    const Report report = site.report();
    const QString path = pathIn(folder, "report.pdf");
    ASSERT_TRUE(writePdf(report, path));
    printedBy(QStringLiteral("qpdf"), {QStringLiteral("--check"), path});

    const QString info = QString::fromUtf8(printedBy(QStringLiteral("pdfinfo"), {path}));
    EXPECT_TRUE(info.contains(QRegularExpression(QStringLiteral("Pages:\\s+%1\\n").arg(report.pages.size()))))
        << info.toStdString();
    EXPECT_TRUE(info.contains(QStringLiteral("Report on the electrical installation: Oakum Row Works")))
        << info.toStdString();

    const QString metadata =
        QString::fromUtf8(printedBy(QStringLiteral("pdfinfo"), {QStringLiteral("-meta"), path}));
    EXPECT_TRUE(metadata.contains(QStringLiteral("Inspector 2"))) << metadata.toStdString();

    const QString fonts = QString::fromUtf8(printedBy(QStringLiteral("pdffonts"), {path}));
    for (const QString& line : fonts.split(u'\n').mid(2))
        EXPECT_TRUE(line.isEmpty() || line.contains(QStringLiteral(" yes ")))
            << "not embedded: " << line.toStdString();

    const QString said =
        QString::fromUtf8(printedBy(QStringLiteral("pdftotext"), {path, QStringLiteral("-")})).simplified();
    // The tool reads a name that takes two lines apart where its row's figures stand between them.
    for (const Circuit& circuit : site.installation.circuits)
        for (const QString& word : text(circuit.name).split(u' '))
            EXPECT_TRUE(said.contains(word)) << circuit.name;
    for (std::size_t page = 1; page <= report.pages.size(); ++page)
        EXPECT_TRUE(said.contains(QStringLiteral("%1 of %2").arg(page).arg(report.pages.size())));
    for (const char* part : {"Logged current of Kiln, glaze room: A day of firing", "1.40 times the rating",
                             "Nothing was logged for 28 min of it, and no current is reckoned with there"})
        EXPECT_TRUE(said.contains(QString::fromLatin1(part))) << part;
}

TEST(ReportPdf, saysWhereALogIsNotAtHand) {
    ReportedSite site = demoSite();
    std::erase_if(site.attachments, [](const Attachment& each) { return each.mediaType == "text/csv"; });
    const QString said = textOf(site.report());
    EXPECT_TRUE(said.contains(QStringLiteral("Logged current of Kiln, glaze room: A day of firing")));
    EXPECT_TRUE(said.contains(QStringLiteral("The log is not in the workbook.")));
}

TEST(ReportPdf, printsALogOfACircuitThatNothingIsFoundIn) {
    ReportedSite site = demoSite();
    Installation& here = site.installation;
    CurrentLog& log = here.currentLogs.front();
    const Id visit = find(here.circuitReadings, log.reading)->visit;
    const auto lighting = std::ranges::find_if(here.circuits, [](const Circuit& circuit) {
        return circuit.use == CircuitUse::Lighting && isInUse(circuit);
    });
    ASSERT_NE(lighting, here.circuits.end());
    log.reading = findReading(here.circuitReadings, visit, &CircuitReading::circuit, lighting->id)->id;
    const Report report = site.report();
    std::size_t printed = 0;
    for (const Report::Page& page : report.pages) {
        const QString said = textOf(page);
        if (!said.contains(QStringLiteral("Logged current of"))) continue;
        ++printed;
        EXPECT_TRUE(
            said.contains(QStringLiteral("Logged current of %1: A day of firing").arg(text(lighting->name))))
            << said.toStdString();
    }
    EXPECT_EQ(printed, 1u);
}

TEST(ReportPdf, hasEachPageInItsOwnForm) {
    const TemporaryFolder folder;
    ReportedSite site = smallSite();
    const Report report = site.report();
    const QString path = pathIn(folder, "report.pdf");
    ASSERT_TRUE(writePdf(report, path));
    const QString info = QString::fromUtf8(printedBy(
        QStringLiteral("pdfinfo"), {QStringLiteral("-l"), QString::number(report.pages.size()), path}));
    static const QRegularExpression size(QStringLiteral("Page +(\\d+) size: +([\\d.]+) x ([\\d.]+)"));
    std::size_t pages = 0;
    for (auto each = size.globalMatch(info); each.hasNext(); ++pages) {
        const auto match = each.next();
        const bool lies = match.captured(2).toDouble() > match.captured(3).toDouble();
        EXPECT_EQ(lies, report.pages[pages].form == report::PageForm::Landscape) << "page " << pages + 1;
    }
    EXPECT_EQ(pages, report.pages.size());
}

TEST(ReportPdf, isTheSameForTheSameSiteButForItsDate) {
    const TemporaryFolder folder;
    ReportedSite site = smallSite();
    ASSERT_TRUE(writeReport(site.input(), pathIn(folder, "first.pdf")));
    ASSERT_TRUE(writeReport(site.input(), pathIn(folder, "second.pdf")));
    EXPECT_EQ(withoutDate(bytesOf(pathIn(folder, "first.pdf"))),
              withoutDate(bytesOf(pathIn(folder, "second.pdf"))));
}

TEST(ReportPdf, refusesAFolderThatIsNotThere) {
    const TemporaryFolder folder;
    ReportedSite site = smallSite();
    const auto written = writeReport(site.input(), pathIn(folder, "nowhere/report.pdf"));
    ASSERT_FALSE(written);
    EXPECT_TRUE(written.error().contains(QStringLiteral("nowhere/report.pdf cannot be written")))
        << written.error().toStdString();
    EXPECT_TRUE(std::filesystem::is_empty(folder.path()));
}

TEST(ReportPdf, refusesAVisitThatIsNotThere) {
    const TemporaryFolder folder;
    ReportedSite site = smallSite();
    site.visit = Id{};
    EXPECT_TRUE(site.report().pages.empty());
    const auto written = writeReport(site.input(), pathIn(folder, "report.pdf"));
    ASSERT_FALSE(written);
    EXPECT_TRUE(written.error().contains(QStringLiteral("no such visit"))) << written.error().toStdString();
    EXPECT_TRUE(std::filesystem::is_empty(folder.path()));
}

TEST(ReportPdf, leavesTheOldFileWhereTheDiskIsFull) {
    const TemporaryFolder folder;
    const QString path = pathIn(folder, "report.pdf");
    QFile old(path);
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("the one before");
    old.close();
    ReportedSite site = smallSite();
    const Report report = site.report();
    {
        const FullDisk full(8000);
        const auto written = writePdf(report, path);
        ASSERT_FALSE(written);
        EXPECT_TRUE(written.error().contains(path)) << written.error().toStdString();
    }
    EXPECT_EQ(bytesOf(path), "the one before");
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1)
        << "something half-written is left";
}

TEST(ReportPrint, printsTheChosenPages) {
    const TemporaryFolder folder;
    ReportedSite site = smallSite();
    const Report report = site.report();
    QPrinter printer;
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(pathIn(folder, "printed.pdf"));
    ASSERT_TRUE(printReport(report, printer, 2, 4));
    const QString info =
        QString::fromUtf8(printedBy(QStringLiteral("pdfinfo"), {pathIn(folder, "printed.pdf")}));
    EXPECT_TRUE(info.contains(QRegularExpression(QStringLiteral("Pages:\\s+3\\n")))) << info.toStdString();
    EXPECT_FALSE(printReport(report, printer, 99, 100));
}

} // namespace
} // namespace loopwright::test
