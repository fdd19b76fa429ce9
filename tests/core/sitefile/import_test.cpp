// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/digest.h"
#include "core/sitefile/attachment.h"
#include "core/sitefile/document.h"
#include "core/sitefile/place.h"
#include "core/sitefile/problems.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/sitefile/site_text.h"

#include <gtest/gtest.h>

namespace loopwright {
namespace {

TEST(SiteFileImport, NamesBecomeReferences) {
    const Installation site = test::smallSite();
    const Circuit& kiln = site.circuits.at(1);
    EXPECT_EQ(site.boards.at(1).fedFrom, site.circuits.at(0).id);
    EXPECT_EQ(site.circuitReadings.at(0).circuit, kiln.id);
    EXPECT_EQ(site.boardReadings.at(0).board, site.boards.at(1).id);
    EXPECT_EQ(site.equipment.at(0).circuit, kiln.id);
    EXPECT_EQ(site.instruments.at(0).visit, site.visits.at(0).id);
}

TEST(SiteFileImport, WhatIsLeftOutIsWhatTheSchemaSays) {
    const Installation site = test::smallSite();
    EXPECT_EQ(site.supplyReadings.at(0).supply, site.supplies.at(0).id) << "the only supply";
    EXPECT_EQ(site.observations.at(0).board, site.boards.at(1).id) << "the circuit's board";
    EXPECT_EQ(site.circuits.at(1).use, CircuitUse::Fixed);
    EXPECT_TRUE(site.circuits.at(1).generalSockets);
    EXPECT_TRUE(site.circuits.at(1).device.breakingCapacity.isMissing());
    EXPECT_EQ(site.visits.at(0).state, VisitState::Open);
}

TEST(SiteFileImport, FiguresCarryUnitDecimalsStateAndOrigin) {
    const Installation site = test::smallSite();
    const Wiring& wiring = site.circuits.at(1).wiring;
    EXPECT_EQ(wiring.lineSize, Entry<CrossSection>::of(squareMillimetres(6), 0));
    EXPECT_EQ(wiring.length, Entry<Length>::of(metres(18), 1));
    EXPECT_EQ(wiring.protectiveSize.state, EntryState::NotApplicable);
    EXPECT_EQ(site.circuits.at(1).residual.residualCurrent, Entry<Current>::of(milliamperes(30), 0));
    const CircuitReading& reading = site.circuitReadings.at(0);
    EXPECT_EQ(reading.loopImpedance, Entry<Resistance>::of(ohms(0.54), 2, Origin::Carried));
    EXPECT_EQ(reading.insulationEarth.state, EntryState::Above);
    EXPECT_EQ(reading.insulationEarth.value, megohms(999));
    EXPECT_EQ(site.supplyReadings.at(0).externalLoopImpedance, Entry<Resistance>::of(ohms(0.2), 2));
}

TEST(SiteFileImport, ReferencesMayBeIds) {
    const std::string id = "3b241101-e2bb-4255-8caf-4136c566a962";
    SequentialIds ids;
    const auto site = importSite(R"({"loopwright": "site", "version": 1, "boards": [{"id": ")" + id +
                                     R"("}], "visits": [{"boardReadings": [{"board": ")" + id + R"("}]}]})",
                                 ids, test::noAttachments);
    ASSERT_TRUE(site) << test::told(site.error());
    EXPECT_EQ(site->installation.boardReadings.at(0).board.text(), id);
}

TEST(SiteFileImport, PicturesComeOnceWithTheirDigest) {
    const std::string png = "\x89PNG\r\n\x1A\nbytes";
    std::vector<std::string> asked;
    const AttachmentReader reader = [&](std::string_view path) -> tl::expected<std::string, Message> {
        asked.emplace_back(path);
        return png;
    };
    SequentialIds ids;
    const auto site =
        importSite(R"({"loopwright": "site", "version": 1, "visits": [{"observations": [{"photos": [
        {"file": "photos/kiln.png", "caption": "The fuse"}, {"data": ")" +
                       sitefile::encodedBase64(png) + R"("}]}]}]})",
                   ids, reader);
    ASSERT_TRUE(site) << test::told(site.error());
    EXPECT_EQ(asked, std::vector<std::string>{"photos/kiln.png"});
    const std::string digest = test::digestOfText(png);
    EXPECT_EQ(site->attachments, (std::vector<Attachment>{{digest, "image/png", png}}));
    EXPECT_EQ(site->installation.photos.at(0).digest, digest);
    EXPECT_EQ(site->installation.photos.at(1).mediaType, "image/png");
}

TEST(SiteFileImport, LogsStandInTheReadingsOfTheirCircuit) {
    const std::string log = "time_s,I1 [A]\n0,4\n1,5\n";
    const AttachmentReader reader = [&](std::string_view) -> tl::expected<std::string, Message> {
        return log;
    };
    const auto taken = [&](const std::string& logs) {
        SequentialIds ids;
        return importSite(R"({"loopwright": "site", "version": 1, "boards": [{"name": "A", "circuits": [
            {"way": "1"}]}], "visits": [{"circuitReadings": [{"circuit": "A / 1", "currentLogs": [)" +
                              logs + "]}]}]}",
                          ids, reader);
    };
    const auto site = taken(R"({"file": "logs/kiln.csv", "name": "Kiln", "channel": "I1 [A]"})");
    ASSERT_TRUE(site) << test::told(site.error());
    const CurrentLog& row = site->installation.currentLogs.at(0);
    EXPECT_EQ(row.reading, site->installation.circuitReadings.at(0).id);
    EXPECT_EQ(row.channel, "I1 [A]");
    EXPECT_EQ(row.mediaType, "text/csv");
    EXPECT_EQ(site->attachments, (std::vector<Attachment>{{test::digestOfText(log), "text/csv", log}}));

    const auto backwards =
        taken(R"({"data": ")" + sitefile::encodedBase64("time_s,I1\n0,4\n5,4\n3,4\n") + R"("})");
    ASSERT_FALSE(backwards) << "times run backwards";
    EXPECT_EQ(backwards.error().front().what.key, "log.time-backwards");
    EXPECT_NE(backwards.error().front().where.find("currentLogs, 1st"), std::string::npos)
        << backwards.error().front().where;
}

TEST(SiteFileImport, TheDemoSiteComesInWholeAndGoesOutAsItCame) {
    SequentialIds ids;
    const auto site = importSite(test::bytesOf(test::demoFolder / "oakum-row.site.json"), ids,
                                 [](std::string_view path) -> tl::expected<std::string, Message> {
                                     return test::bytesOf(test::demoFolder / std::string(path));
                                 });
    ASSERT_TRUE(site) << test::told(site.error());
    EXPECT_GE(site->installation.circuits.size(), 45U);
    EXPECT_FALSE(site->attachments.empty());
    const AttachmentSource attachments = [&](std::string_view digest) -> std::optional<std::string> {
        for (const Attachment& each : site->attachments)
            if (each.digest == digest) return each.bytes;
        return std::nullopt;
    };
    const auto again = importSite(exportSite(site->installation, attachments), ids, test::noAttachments);
    ASSERT_TRUE(again) << test::told(again.error());
    EXPECT_EQ(again->installation, site->installation);
    EXPECT_EQ(again->attachments, site->attachments);
}

TEST(SiteFileParts, OrdinalsCountAsPeopleDo) {
    const std::vector<std::pair<std::size_t, std::string>> ordinals{
        {1, "1st"},   {2, "2nd"},   {3, "3rd"},   {4, "4th"},     {11, "11th"},   {12, "12th"},
        {13, "13th"}, {21, "21st"}, {22, "22nd"}, {111, "111th"}, {102, "102nd"}, {1013, "1013th"}};
    for (const auto& [number, text] : ordinals)
        EXPECT_EQ(sitefile::ordinal(number), text);
}

TEST(SiteFileParts, NearestIsWhatAPersonMeant) {
    const std::vector<std::string> known{"lineSize_mm2", "length_m", "Board C"};
    EXPECT_EQ(nearest("linesize_mm2", known), "lineSize_mm2");
    EXPECT_EQ(nearest("length", known), "length_m");
    EXPECT_EQ(nearest("Bord C", known), "Board C");
    EXPECT_EQ(nearest("colour", known), "");
    EXPECT_EQ(nearest("", known), "");
    EXPECT_EQ(nearest(std::string(100'000, 'x'), known), "");
}

TEST(SiteFileParts, Utf8IsCheckedToTheLetter) {
    // RFC 3629, section 4; the boundaries are those of its table
    for (const char* good : {"", "a", "\u00DF", "\u6F22", "\U0001F525", "\xF4\x8F\xBF\xBF", "\xEF\xBF\xBF"})
        EXPECT_FALSE(sitefile::firstBadUtf8(good)) << good;
    for (const char* bad :
         {"a\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xF0\x8F\xBF\xBF",
          "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xC3", "\xE6\xBC", "\xFF"})
        EXPECT_TRUE(sitefile::firstBadUtf8(bad)) << bad;
}

TEST(Digest, IsThePublishedOne) {
    // FIPS 180-4 examples (NIST, "SHA256.pdf"): one block, and the empty text of RFC 6234's test driver
    EXPECT_EQ(test::digestOfText("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(test::digestOfText(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

} // namespace
} // namespace loopwright
