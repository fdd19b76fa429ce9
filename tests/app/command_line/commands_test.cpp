// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/command_line/spoken.h"
#include "tests/support/temporary_folder.h"

#include <gmock/gmock.h>

#include <QProcess>

#include <filesystem>

namespace loopwright {
namespace {

using test::spoken;
using testing::HasSubstr;
using testing::Not;

TEST(CommandLine, HelpIsThereForEveryCommand) {
    for (const std::string command : {"demo", "assess", "report", "import", "export", "sums", "sum"}) {
        const auto outcome = spoken({command, "--help"});
        EXPECT_EQ(outcome.code, 0) << command;
        EXPECT_THAT(outcome.out, HasSubstr(command));
        EXPECT_EQ(outcome.err, "") << command;
        EXPECT_THAT(spoken({"--help"}).out, HasSubstr(command));
    }
    EXPECT_THAT(spoken({"--version"}).out, HasSubstr("0.1"));
}

TEST(CommandLine, HelpIsInItsOwnWords) {
    EXPECT_EQ(spoken({"report", "--help"}).out,
              R"(Write the report of a visit as PDF

  loopwright report FILE --pdf PDF [--site NAME] [--visit NAME] [--label GRADE=TEXT]

  FILE                 Workbook or site file
  --pdf PDF            PDF file to write; one that is there is replaced
  --site NAME          Name or id of the site, where a workbook holds several
  --visit NAME         Name or id of the visit; the newest when left out
  --label GRADE=TEXT   What your local scheme calls a grade, printed beside it: put-right=TEXT; once for each
  --help               Show this page
)");
    const std::string whole = spoken({"--help"}).out;
    for (const char* strange : {"REQUIRED", "OPTIONS", "SUBCOMMAND", "Positionals", "TEXT", ":FILE"})
        EXPECT_THAT(whole, Not(HasSubstr(strange)));
    EXPECT_THAT(whole, HasSubstr("loopwright [WORKBOOK]"));
}

TEST(CommandLine, WhatIsNotUnderstoodIsNamed) {
    EXPECT_THAT(spoken({"report", "x"}).err,
                testing::StartsWith("Something is missing: --pdf PDF.\n\"loopwright report --help\""));
    EXPECT_THAT(spoken({"import"}).err, testing::StartsWith("Something is missing: SITE-FILE and WORKBOOK."));
    EXPECT_THAT(spoken({"assess", "x", "--jsn"}).err, testing::StartsWith("This is not understood: --jsn."));
    EXPECT_THAT(spoken({"sum"}).err, testing::StartsWith("Something is missing: NAME or --batch FILE."));
    EXPECT_THAT(spoken({"sum", "drop", "--batch", "x"}).err,
                testing::StartsWith("These do not go together: NAME and --batch FILE."));
    EXPECT_THAT(spoken({"report", "x", "--pdf"}).err,
                testing::StartsWith("This takes one word after it: --pdf PDF."));
}

TEST(CommandLine, WrongUsageIsNotARefusal) {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"assess"}, {"report", "x"}, {"import", "x"}, {"assess", "x", "--jsn"}}) {
        const auto outcome = spoken(arguments);
        EXPECT_EQ(outcome.code, 2) << arguments.front();
        EXPECT_NE(outcome.err, "") << arguments.front();
        EXPECT_EQ(outcome.out, "") << arguments.front();
    }
}

TEST(CommandLine, AssessSaysWhatNeedsAPerson) {
    const auto outcome = spoken({"assess", test::demoSiteFile});
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    EXPECT_THAT(outcome.out, HasSubstr("Oakum Row Works"));
    EXPECT_THAT(outcome.out, HasSubstr("41.7"));
    const auto faults = test::plantedFaults();
    for (const auto& fault : faults.at("faults"))
        EXPECT_THAT(outcome.out, HasSubstr(fault.at("subject").get<std::string>().substr(
                                     fault.at("subject").get<std::string>().find(" / ") + 3)));
    EXPECT_THAT(outcome.out, Not(HasSubstr("_"))) << "marks of subscripts are for the screen";
}

TEST(CommandLine, AVisitIsChosenByItsLabel) {
    const auto json = nlohmann::json::parse(
        spoken({"assess", test::demoSiteFile, "--visit", "2021, periodic", "--json"}).out);
    EXPECT_EQ(json.at("visit").at("label"), "2021, periodic");
    const auto newest = nlohmann::json::parse(spoken({"assess", test::demoSiteFile, "--json"}).out);
    EXPECT_EQ(newest.at("visit").at("label"), "2026, periodic");
    const auto unknown = spoken({"assess", test::demoSiteFile, "--visit", "1999"});
    EXPECT_EQ(unknown.code, 1);
    EXPECT_THAT(unknown.err, HasSubstr("1999"));
    EXPECT_THAT(unknown.err, HasSubstr("2026, periodic"));
}

TEST(CommandLine, ASiteComesIntoAWorkbookAndGoesOutTheSame) {
    const TemporaryFolder folder;
    const std::string workbook = (folder / "w.loopwright").string();
    const std::string first = (folder / "first.site.json").string(),
                      second = (folder / "second.site.json").string();
    const auto imported = spoken({"import", test::demoSiteFile, workbook});
    ASSERT_EQ(imported.code, 0) << imported.err;
    ASSERT_EQ(spoken({"export", workbook, first}).code, 0);
    const std::string other = (folder / "other.loopwright").string();
    const auto again = spoken({"import", first, other});
    ASSERT_EQ(again.code, 0) << again.err;
    ASSERT_EQ(spoken({"export", other, second}).code, 0);
    EXPECT_EQ(test::bytesOf(first), test::bytesOf(second));
    EXPECT_EQ(spoken({"assess", workbook, "--json"}).out, spoken({"assess", first, "--json"}).out);
}

TEST(CommandLine, SeveralSitesAreToldApartByName) {
    const TemporaryFolder folder;
    const std::string workbook = (folder / "w.loopwright").string();
    const std::string hut = (folder / "hut.site.json").string(), out = (folder / "out.site.json").string();
    test::writeBytes(
        hut, R"({"loopwright": "site", "version": 1, "name": "Hut", "visits": [{"label": "first"}]})");
    ASSERT_EQ(spoken({"import", hut, workbook}).code, 0);
    ASSERT_EQ(spoken({"import", test::demoSiteFile, workbook}).code, 0);
    const auto unclear = spoken({"export", workbook, out});
    EXPECT_EQ(unclear.code, 1);
    EXPECT_THAT(unclear.err,
                testing::AllOf(HasSubstr("Hut"), HasSubstr("Oakum Row Works"), HasSubstr("--site")));
    EXPECT_EQ(spoken({"export", workbook, out, "--site", "Hut"}).code, 0);
    EXPECT_EQ(nlohmann::json::parse(test::bytesOf(out)).at("name"), "Hut");
}

TEST(CommandLine, GradesAreLabelledAsAnOfficeAsks) {
    const TemporaryFolder folder;
    const std::string pdf = (folder / "report.pdf").string();
    const auto refused = spoken({"report", test::demoSiteFile, "--pdf", pdf, "--label", "urgent=do it"});
    EXPECT_NE(refused.code, 0);
    EXPECT_THAT(refused.err, testing::AllOf(HasSubstr("urgent=do it"), HasSubstr("put-right=TEXT")));
    EXPECT_FALSE(std::filesystem::exists(pdf));

    const auto written = spoken({"report", "--label", "make-safe=Harbour stop", "--label",
                                 "put-right=Harbour mend", test::demoSiteFile, "--pdf", pdf});
    ASSERT_EQ(written.code, 0) << written.err;
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {QString::fromStdString(pdf), QStringLiteral("-")});
    ASSERT_TRUE(reader.waitForFinished());
    const std::string said = reader.readAllStandardOutput().toStdString();
    EXPECT_THAT(said, testing::AllOf(HasSubstr("Harbour stop"), HasSubstr("Harbour mend")));
}

TEST(CommandLine, TheDemoWritesWorkbookAndReport) {
    const TemporaryFolder folder;
    const auto outcome = spoken({"demo", "--folder", (folder / "demo").string()});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("Kiln, glaze room"));
    EXPECT_TRUE(test::bytesOf(folder / "demo" / "oakum-row-report.pdf").starts_with("%PDF-"));
    EXPECT_EQ(spoken({"assess", (folder / "demo" / "oakum-row.loopwright").string()}).code, 0);
}

} // namespace
} // namespace loopwright
