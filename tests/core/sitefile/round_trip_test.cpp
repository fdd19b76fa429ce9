// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/site_file.h"

#include "tests/core/sitefile/any_installation.h"
#include "tests/core/sitefile/site_text.h"

#include <gtest/gtest.h>
#include <random>
#include <rapidcheck/gtest.h>

namespace loopwright {
namespace {

AttachmentSource attachmentsOf(const test::AnyInstallation& any) {
    return [&any](std::string_view digest) -> std::optional<std::string> {
        const auto found = any.attachments.find(digest);
        return found == any.attachments.end() ? std::nullopt : std::optional(found->second);
    };
}

RC_GTEST_PROP(SiteFileRoundTrip, ImportGivesBackWhatExportWrote, ()) {
    const test::AnyInstallation any = test::anyInstallation();
    const std::string text = exportSite(any.installation, attachmentsOf(any));
    SequentialIds ids(1'000'000);
    const auto back = importSite(text, ids, test::noAttachments);
    if (!back) RC_FAIL(test::told(back.error()) + "\n" + text);
    const std::string again = exportSite(back->installation, attachmentsOf(any));
    RC_ASSERT(again == text);
    RC_ASSERT(back->installation == any.installation);
    RC_ASSERT(ids.next() == SequentialIds(1'000'000).next());
    std::map<std::string, std::string, std::less<>> brought;
    for (const Attachment& each : back->attachments)
        brought[each.digest] = each.bytes;
    RC_ASSERT(brought == any.attachments);
}

RC_GTEST_PROP(SiteFileRoundTrip, RowsInAnyOrderComeBackGrouped, ()) {
    test::AnyInstallation any = test::anyInstallation();
    std::mt19937 random(*rc::gen::arbitrary<unsigned>());
    std::ranges::shuffle(any.installation.circuits, random);
    std::ranges::shuffle(any.installation.equipment, random);
    std::ranges::shuffle(any.installation.circuitReadings, random);
    std::ranges::shuffle(any.installation.photos, random);
    std::ranges::shuffle(any.installation.currentLogs, random);
    SequentialIds ids;
    const auto back = importSite(exportSite(any.installation, attachmentsOf(any)), ids, test::noAttachments);
    if (!back) RC_FAIL(test::told(back.error()));
    RC_ASSERT(back->installation == groupedByOwner(any.installation));
}

TEST(SiteFileRoundTrip, FiguresKeepTheirDigitsStateAndOrigin) {
    const std::vector<std::string> figures{
        "0.3",  "0.30", "7",    "7.0",         ">999",         "<0.05",         "N/A",
        "0.00", "1000", "2.50", "LIM: locked", "58 (carried)", "12.5 (assumed)"};
    for (const std::string& figure : figures) {
        Installation installation = test::smallSite();
        const auto set = fieldsOf<CircuitReading>();
        const auto field =
            std::ranges::find(set, "insulationEarth_Mohm", [](const auto& f) { return f.info.key; });
        ASSERT_TRUE(field->set(installation.circuitReadings.front(), figure)) << figure;
        SequentialIds ids;
        const auto back = importSite(exportSite(installation, test::noPictures), ids, test::noAttachments);
        ASSERT_TRUE(back) << figure << ": " << test::told(back.error());
        EXPECT_EQ(field->get(back->installation.circuitReadings.front()), figure);
        EXPECT_EQ(back->installation, installation) << figure;
    }
}

} // namespace
} // namespace loopwright
