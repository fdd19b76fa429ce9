// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/sitefile/site_text.h"

#include <algorithm>
#include <gmock/gmock.h>

namespace loopwright {
namespace {

using testing::HasSubstr;

/// Why a text is refused, in English; empty if it is taken.
std::string refusalOf(std::string_view text) {
    SequentialIds ids;
    const auto imported = importSite(text, ids, test::noAttachments);
    return imported ? std::string() : test::told(imported.error());
}

/// The small site with the first `from` replaced.
std::string smallSiteWith(std::string_view from, std::string_view to) {
    std::string text = test::smallSiteText;
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

struct Refusal {
    std::string name;
    std::string from, to;
    std::vector<std::string> says; ///< what the sentence must mention
};

class SiteFileRefusal : public testing::TestWithParam<Refusal> {};

TEST_P(SiteFileRefusal, SaysWhereAndWhat) {
    const std::string refusal = refusalOf(smallSiteWith(GetParam().from, GetParam().to));
    for (const std::string& part : GetParam().says)
        EXPECT_THAT(refusal, HasSubstr(part));
}

std::string nameOf(const testing::TestParamInfo<Refusal>& refusal) {
    return refusal.param.name;
}

const std::string kiln = "boards, 2nd, circuits, 1st";
const std::string reading = "visits, 1st, circuitReadings, 1st";

INSTANTIATE_TEST_SUITE_P(
    Values, SiteFileRefusal,
    testing::Values(
        Refusal{"NegativeSize",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": -6)",
                {kiln + ", wiring, lineSize_mm2: ", "-6", "below zero"}},
        Refusal{"NegativeSizeAsText",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": "-6")",
                {kiln + ", wiring, lineSize_mm2: ", "below zero"}},
        Refusal{"ZeroSize", R"("lineSize_mm2": 6)", R"("lineSize_mm2": 0)", {"lineSize_mm2: ", "zero"}},
        Refusal{"NaNText",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": "NaN")",
                {"lineSize_mm2: ", "NaN", "not a figure"}},
        Refusal{"InfinityText",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": "inf")",
                {"lineSize_mm2: ", "not a figure"}},
        Refusal{"NaNToken", R"("lineSize_mm2": 6)", R"("lineSize_mm2": NaN)", {"line 16, column 3", "NaN"}},
        Refusal{"TooLarge",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": 1e999)",
                {kiln + ", wiring, lineSize_mm2: ", "larger than any"}},
        Refusal{"TooManyDigits",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": 1e300)",
                {"lineSize_mm2: ", "more digits"}},
        Refusal{
            "WrongUnit", R"("lineSize_mm2": 6)", R"("lineSize_mm2": "6 A")", {"lineSize_mm2: ", "A", "mm²"}},
        Refusal{"FlagForFigure",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm2": true)",
                {"lineSize_mm2: ", "a number or a text", "true or false"}},
        Refusal{
            "NullForFigure", R"("lineSize_mm2": 6)", R"("lineSize_mm2": null)", {"lineSize_mm2: ", "null"}},
        Refusal{"FractionOfACount",
                R"("power_W": 8500)",
                R"("count": 2.5)",
                {kiln + ", equipment, 1st, count: ", "2.5", "whole"}},
        Refusal{"TextForFlag",
                R"("fitted": true)",
                R"("fitted": "true")",
                {"residual, fitted: ", "true or false", "a text"}},
        Refusal{"UnknownFamily",
                R"("family": "1361")",
                R"("family": "60898-E")",
                {kiln + ", device, family: ", "60898-E", "60898-D"}},
        Refusal{"UnknownOption",
                R"("phases": "L2")",
                R"("phases": "L4")",
                {kiln + ", phases: ", "L4", "L1, L2, L3, three"}},
        Refusal{"UnknownItem",
                R"("intake-sound")",
                R"("intake-sund")",
                {"visits, 1st, inspection, 1st, item: ", "intake-sund", "Did you mean “intake-sound”"}},
        Refusal{"StrangeItem",
                R"("intake-sound")",
                R"("chimney")",
                {"inspection, 1st, item: ", "chimney", "schema lists"}},
        Refusal{"UnknownRuleSet",
                R"("bs-7671-2018")",
                R"("rules")",
                {"visits, 1st, ruleSet: ", "rules", "iec-60364"}},
        Refusal{"NoDay",
                R"("2026-03-10")",
                R"("2026-02-30")",
                {"visits, 1st, started: ", "2026-02-30", "not a date"}},
        Refusal{"EmptyDay", R"("2026-03-10")", R"("")", {"visits, 1st, started: ", "empty"}},
        Refusal{"TextForObject",
                R"({ "family": "1361", "ratedCurrent_A": 30 })",
                R"("1361")",
                {kiln + ", device: ", "an object", "a text"}},
        Refusal{"ObjectForList",
                R"([{ "name": "Tester 2" }])",
                R"({ "name": "Tester 2" })",
                {"visits, 1st, instruments: ", "a list"}},
        Refusal{"TextInList",
                R"({ "way": "F2", "use": "spare" })",
                R"("F2")",
                {"boards, 2nd, circuits, 2nd: ", "an object"}},
        Refusal{"ControlCharacters",
                R"("Kiln, glaze room")",
                R"("Kiln\u0000")",
                {kiln + ", name: ", "cannot be shown"}},
        Refusal{"TooLongText",
                R"("Kiln, glaze room")",
                '"' + std::string(2001, 'k') + '"',
                {kiln + ", name: ", "2001", "2000"}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Structure, SiteFileRefusal,
    testing::Values(
        Refusal{"MistypedKey",
                R"("lineSize_mm2": 6)",
                R"("lineSize_mm": 6)",
                {kiln + ", wiring: ", "lineSize_mm”", "Did you mean “lineSize_mm2”"}},
        Refusal{"StrangeKey", R"("lineSize_mm2": 6)", R"("colour": 6)", {kiln + ", wiring: ", "colour"}},
        Refusal{"KeyOfTheHolder",
                R"("way": "F2")",
                R"("way": "F2", "board": "Board C")",
                {"circuits, 2nd: ", "board"}},
        Refusal{"KeyTwice",
                R"("way": "F2")",
                R"("way": "F2", "way": "F3")",
                {"boards, 2nd, circuits, 2nd: ", "way", "twice"}},
        Refusal{"OtherVersion", R"("version": 1)", R"("version": 2)", {"version 2", "version 1"}},
        Refusal{"NoVersion", R"("version": 1,)", "", {"version is missing"}},
        Refusal{"OtherFile", R"("loopwright": "site")", R"("loopwright": "hut")", {"not a site file"}},
        Refusal{"ReadingOfNothing",
                R"("circuit": "Board C / F1", "ins)",
                R"("ins)",
                {reading + ": ", "circuit", "missing"}},
        Refusal{"NoItem",
                R"("item": "intake-sound", )",
                "",
                {"visits, 1st, inspection, 1st: ", "item", "missing"}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Relations, SiteFileRefusal,
    testing::Values(
        Refusal{"UnknownBoard",
                R"("board": "Board C")",
                R"("board": "Bord C")",
                {"visits, 1st, boardReadings, 1st, board: ", "Bord C", "Did you mean “Board C”"}},
        Refusal{"UnknownCircuit",
                R"("circuit": "Board C / F1", "ins)",
                R"("circuit": "Board C / F9", "ins)",
                {reading + ", circuit: ", "Board C / F9", "Did you mean “Board C / F"}},
        Refusal{"UnknownFeeder",
                R"("Main switchboard / 3")",
                R"("elsewhere")",
                {"boards, 2nd, fedFrom: ", "elsewhere"}},
        Refusal{"FeedsItself",
                R"("Main switchboard / 3")",
                R"("Board C / F1")",
                {"boards, 2nd: ", "Board C", "itself"}},
        Refusal{
            "NameTwice", R"("name": "Main switchboard")", R"("name": "Board C")", {"boards, 2nd", "Board C"}},
        Refusal{"WayTwice", R"("way": "F2")", R"("way": "F1")", {"Board C / F1"}},
        Refusal{"ReadTwice",
                R"("boardReadings": [)",
                R"("boardReadings": [{ "board": "Board C" }, )",
                {"boardReadings, 2nd: ", "boardReadings, 1st"}},
        Refusal{"CircuitOfOtherBoard",
                R"("circuit": "Board C / F1", "grade")",
                R"("board": "Main switchboard", "circuit": "Board C / F1", "grade")",
                {"observations, 1st: ", "Board C / F1", "not a circuit of that board"}},
        Refusal{"WhichSupply",
                R"("supplies": [)",
                R"("supplies": [{}, )",
                {"supplyReadings, 1st: ", "Say which supply", "2"}},
        Refusal{"NotAnId", R"("way": "F2")", R"("id": "F2")", {"circuits, 2nd, id: ", "not an id"}},
        Refusal{
            "IdTwice",
            R"("way": "3", )",
            R"("way": "3", "id": "3b241101-e2bb-4255-8caf-4136c566a962" }, { "id": "3b241101-e2bb-4255-8caf-4136c566a962", )",
            {"circuits, 2nd, id: ", "boards, 1st, circuits, 1st"}},
        Refusal{"PictureNowhere",
                R"("grade")",
                R"("photos": [{}], "grade")",
                {"photos, 1st: ", "file, data or digest"}},
        Refusal{"PictureWithoutDigest",
                R"("grade")",
                R"("photos": [{ "digest": "abc" }], "grade")",
                {"photos, 1st: ", "not a digest"}},
        Refusal{"PictureOutside",
                R"("grade")",
                R"("photos": [{ "file": "../../etc/passwd" }], "grade")",
                {"photos, 1st: ", "leads out"}},
        Refusal{"PictureAbsolute",
                R"("grade")",
                R"("photos": [{ "file": "/etc/passwd" }], "grade")",
                {"leads out"}},
        Refusal{"PictureNotBase64",
                R"("grade")",
                R"("photos": [{ "data": "!!!" }], "grade")",
                {"photos, 1st: ", "base64"}},
        Refusal{"PictureOfOtherKind",
                R"("grade")",
                R"("photos": [{ "data": "R0lGODlh" }], "grade")",
                {"neither JPEG nor PNG"}}),
    nameOf);

TEST(SiteFileText, EveryProblemIsToldUpToAScreenful) {
    std::string text = smallSiteWith(R"("lineSize_mm2": 6)", R"("lineSize_mm2": -6, "colour": 1)");
    const std::string both = refusalOf(text);
    EXPECT_THAT(both, HasSubstr("below zero"));
    EXPECT_THAT(both, HasSubstr("colour"));
    std::string many = R"({"loopwright": "site", "version": 1, "boards": [)";
    for (int i = 0; i < 1000; ++i)
        many += R"({"nam": "B"},)";
    many.back() = ']';
    const std::string refusal = refusalOf(many + "}");
    EXPECT_EQ(std::ranges::count(refusal, '\n'), 20) << refusal;
}

TEST(SiteFileText, TextThatIsNotJsonSaysTheLine) {
    EXPECT_THAT(refusalOf(""), HasSubstr("cut off"));
    EXPECT_THAT(refusalOf("{\n  \"ß\": ?"), HasSubstr("line 2, column 8"));
    EXPECT_THAT(refusalOf("{\n  \"ß\": "), HasSubstr("cut off"));
    EXPECT_THAT(refusalOf("[1, 2]"), HasSubstr("not a site file"));
    EXPECT_THAT(refusalOf("\"site\""), HasSubstr("not a site file"));
    EXPECT_THAT(refusalOf("{\"name\": \"\xE9\"}"), HasSubstr("UTF-8: line 1, column 11"));
    EXPECT_THAT(refusalOf("\xFF\xFE{\0"), HasSubstr("UTF-8"));
    EXPECT_THAT(refusalOf("{} {}"), HasSubstr("line 1, column 4"));
}

TEST(SiteFileText, CutOffAnywhereIsRefused) {
    const std::string whole = test::smallSiteText;
    for (std::size_t length = 0; length + 1 < whole.size(); ++length)
        EXPECT_THAT(refusalOf(whole.substr(0, length)), HasSubstr("cut off")) << length;
}

TEST(SiteFileText, LimitsHoldInBoundedTime) {
    EXPECT_THAT(refusalOf(std::string(1'000'000, '[')), HasSubstr("deeper than 16"));
    std::string deep;
    for (int i = 0; i < 100'000; ++i)
        deep += R"({"boards":[)";
    EXPECT_THAT(refusalOf(deep), HasSubstr("deeper than 16"));
    std::string wide = R"({"loopwright":"site","boards":[)";
    wide.reserve(5'000'000);
    for (int i = 0; i < 2'100'000; ++i)
        wide += "1,";
    EXPECT_THAT(refusalOf(wide), HasSubstr("more than 2000000 values"));
    EXPECT_THAT(refusalOf(std::string(siteFileSizeLimit + 1, ' ')), HasSubstr("larger than 256 MB"));
}

TEST(SiteFileText, ManyBoardsInALongChainTakeNoUndueTime) {
    std::string text =
        R"({"loopwright": "site", "version": 1, "boards": [{"name": "0", "circuits": [{"way": "1"}]})";
    for (int i = 1; i < 20'000; ++i)
        text += R"(,{"name": ")" + std::to_string(i) + R"(", "fedFrom": ")" + std::to_string(i - 1) +
                R"( / 1", "circuits": [{"way": "1"}]})";
    EXPECT_EQ(refusalOf(text + "]}"), "");
}

} // namespace
} // namespace loopwright
