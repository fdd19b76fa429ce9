// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/inspection_page.h"
#include "forms/inspection/inspection_view.h"
#include "forms/inspection/result_keys.h"
#include "forms/places/places_model.h"
#include "forms/sheet/cell_editor.h"
#include "tests/forms/bench.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QSignalSpy>
#include <QTest>

#include <map>

namespace loopwright {
namespace {

class InspectionTest : public testing::Test {
  protected:
    InspectionTest() {
        bench.changed = [this](const SiteViewPtr& view) { page.show(view); };
        page.resize(800, 500);
        page.setVisible(true);
        page.activateWindow();
        page.show(bench.view());
        page.setFocus();
        QCoreApplication::processEvents();
    }

    void press(const char* keys) {
        for (const QChar key : QString::fromUtf8(keys))
            QTest::keyClicks(QApplication::focusWidget(), key);
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
        QCoreApplication::processEvents();
    }
    const InspectionRow& current() { return model().rowAt(page.list().currentIndex().row()); }
    InspectionModel& model() { return *static_cast<InspectionModel*>(page.list().model()); }
    std::string item(std::size_t at) { return bench.view()->tables->inspectionItems()[at].key; }
    const InspectionOutcome* outcome(const std::string& item) {
        const auto& rows = bench.installation.inspectionOutcomes;
        const auto found = std::ranges::find(rows, item, &InspectionOutcome::item);
        return found == rows.end() ? nullptr : &*found;
    }
    /// The row of the inspection in the tree of places.
    std::unique_ptr<PlaceNode> inPlaces() {
        const auto root = placesOf(*bench.view());
        auto& children = root->children.front()->children;
        const auto found = std::ranges::find_if(
            children, [](const auto& node) { return node->subject.kind == RecordKind::InspectionOutcome; });
        return std::move(*found);
    }
    void issue() {
        std::ranges::find(bench.installation.visits, bench.visit, &Visit::id)->state = VisitState::Issued;
        bench.refresh();
        page.show(bench.view());
    }

    Bench bench;
    InspectionPage page{bench.appearance, bench.ids, bench.door()};
};

TEST_F(InspectionTest, ListsEveryItemUnderItsGroup) {
    const auto items = bench.view()->tables->inspectionItems();
    ASSERT_FALSE(items.empty());
    EXPECT_TRUE(model().rowAt(0).isHeading());
    EXPECT_EQ(utf8(model().rowAt(0).text), items.front().group);
    std::vector<std::string> listed;
    QString group;
    for (int row = 0; row < model().rowCount(); ++row) {
        const InspectionRow& shown = model().rowAt(row);
        if (shown.isHeading())
            group = shown.text;
        else
            listed.push_back(utf8(group) + ": " + shown.item);
    }
    std::vector<std::string> known;
    for (const InspectionItem& item : items)
        known.push_back(item.group + ": " + item.key);
    EXPECT_EQ(listed, known);
}

TEST_F(InspectionTest, OneKeyGivesAResultAndGoesOnToTheNextItem) {
    EXPECT_EQ(current().item, item(0));
    press("1240");
    EXPECT_EQ(current().item, item(4));
    ASSERT_EQ(bench.installation.inspectionOutcomes.size(), 3U) << "what is not looked at needs no record";
    EXPECT_EQ(outcome(item(0))->result, InspectionResult::InOrder);
    EXPECT_EQ(outcome(item(1))->result, InspectionResult::Observed);
    EXPECT_EQ(outcome(item(2))->result, InspectionResult::NotApplicable);
    EXPECT_EQ(outcome(item(0))->visit, bench.visit);
    EXPECT_THAT(utf8(page.facts()), testing::HasSubstr("3 of 77 items"));
    press("3");
    EXPECT_THAT(utf8(page.facts()), testing::HasSubstr("3 of 77 items")) << "the last could not be looked at";
}

TEST_F(InspectionTest, AResultIsChangedInItsOwnRecordAndChosenAgainChangesNothing) {
    press("1");
    key(Qt::Key_Up);
    press("3");
    ASSERT_EQ(bench.installation.inspectionOutcomes.size(), 1U);
    EXPECT_EQ(outcome(item(0))->result, InspectionResult::Limited);
    const std::size_t before = bench.changes.size();
    key(Qt::Key_Up);
    press("3");
    EXPECT_EQ(bench.changes.size(), before);
}

TEST_F(InspectionTest, ALetterBeginsARemarkAndEnterGoesOn) {
    press("2");
    key(Qt::Key_Up);
    press("Cover cracked at way 4");
    key(Qt::Key_Return);
    EXPECT_EQ(outcome(item(0))->remark, "Cover cracked at way 4");
    EXPECT_EQ(outcome(item(0))->result, InspectionResult::Observed);
    EXPECT_EQ(current().item, item(1));
    EXPECT_EQ(page.list().currentIndex().column(), static_cast<int>(InspectionColumn::Outcome));
    press("1");
    EXPECT_EQ(outcome(item(1))->result, InspectionResult::InOrder);
}

TEST_F(InspectionTest, ThePageSaysWhereAnItemIsFrom) {
    QSignalSpy described(&page, &InspectionPage::described);
    std::map<std::string, std::string> said;
    for (int row = 0; row < model().rowCount(); ++row) {
        if (model().rowAt(row).isHeading()) continue;
        page.list().setCurrentIndex(model().index(row, static_cast<int>(InspectionColumn::Outcome)));
        page.tellItem();
        said[utf8(model().rowAt(row).pointer)] = utf8(described.back().front().toString());
    }
    EXPECT_EQ(said["IEC 60364-1 / 6"], "This item follows IEC 60364-1 and IEC 60364-6 (named from memory)");
    EXPECT_EQ(said["IEC 60364-5-52 (521 / 522.8)"],
              "This item follows IEC 60364-5-52 (521 and 522.8) (named from memory)");
    EXPECT_EQ(said["IEC 60364-5-51 / 4-42 (422)"],
              "This item follows IEC 60364-5-51 and IEC 60364-4-42 (422) (named from memory)");
}

TEST_F(InspectionTest, FiguresInARemarkAreText) {
    key(Qt::Key_Tab);
    press("2 of 4 clamps loose");
    key(Qt::Key_Return);
    ASSERT_NE(outcome(item(0)), nullptr);
    EXPECT_EQ(outcome(item(0))->remark, "2 of 4 clamps loose");
    EXPECT_EQ(outcome(item(0))->result, InspectionResult::NotLooked);
}

TEST_F(InspectionTest, EscapeGivesUpARemarkAndThenTheList) {
    QSignalSpy left(&page, &InspectionPage::left);
    press("half a rem");
    key(Qt::Key_Escape);
    EXPECT_TRUE(bench.installation.inspectionOutcomes.empty());
    EXPECT_EQ(left.count(), 0);
    key(Qt::Key_Escape);
    EXPECT_EQ(left.count(), 1);
}

TEST_F(InspectionTest, HeadingsArePassedOver) {
    for (int step = 0; step < model().rowCount(); ++step) {
        EXPECT_FALSE(current().isHeading()) << "at step " << step;
        key(Qt::Key_Down);
    }
    EXPECT_EQ(page.list().currentIndex().row(), model().rowCount() - 1);
    key(Qt::Key_Home);
    key(Qt::Key_PageUp);
    EXPECT_FALSE(current().isHeading());
}

TEST_F(InspectionTest, NothingOfAnIssuedVisitChangesAndThePageSaysWhy) {
    press("1");
    issue();
    QSignalSpy refused(&page, &InspectionPage::refused);
    const std::size_t before = bench.changes.size();
    for (const char* keys : {"3", "x"}) {
        press(keys);
        key(Qt::Key_Escape);
        EXPECT_EQ(bench.changes.size(), before) << keys;
    }
    ASSERT_EQ(refused.count(), 2);
    EXPECT_THAT(refused.front().front().toString().toStdString(), testing::HasSubstr("is issued"));
    EXPECT_FALSE(page.findChild<ResultButton*>()->isEnabled());
}

TEST_F(InspectionTest, WhatTheTableDoesNotKnowIsListedAtTheEnd) {
    bench.installation.inspectionOutcomes.push_back(
        {bench.ids.next(), bench.visit, "Lightning rods", InspectionResult::InOrder, "seen"});
    bench.refresh();
    page.show(bench.view());
    const InspectionRow& last = model().rowAt(model().rowCount() - 1);
    EXPECT_EQ(last.item, "Lightning rods");
    EXPECT_EQ(last.result, InspectionResult::InOrder);
    EXPECT_TRUE(model().rowAt(model().rowCount() - 2).isHeading());
}

TEST_F(InspectionTest, ASiteWithoutAVisitSaysWhatToDo) {
    bench.installation.visits.clear();
    bench.visit = {};
    bench.refresh();
    page.show(bench.view());
    EXPECT_EQ(model().rowCount(), 0);
    EXPECT_TRUE(page.facts().isEmpty());
    press("1");
    EXPECT_TRUE(bench.installation.inspectionOutcomes.empty());
}

TEST_F(InspectionTest, PlacesCountsWhatNobodyHasLookedAt) {
    press("14");
    EXPECT_EQ(inPlaces()->count, 75);
    EXPECT_EQ(inPlaces()->worst, Verdict::CannotTell);
}

TEST_F(InspectionTest, InPlacesTheInspectionHoldsWhereEverythingWasSeenInOrder) {
    for (const InspectionItem& known : bench.view()->tables->inspectionItems())
        bench.installation.inspectionOutcomes.push_back(
            {bench.ids.next(), bench.visit, known.key, InspectionResult::InOrder, {}});
    bench.refresh();
    EXPECT_EQ(inPlaces()->worst, Verdict::Holds);
    InspectionResult& first = bench.installation.inspectionOutcomes.front().result;
    first = InspectionResult::Observed;
    bench.refresh();
    EXPECT_EQ(inPlaces()->worst, std::nullopt) << "its observation carries the mark";
    EXPECT_EQ(inPlaces()->count, 0);
    first = InspectionResult::Limited;
    bench.refresh();
    EXPECT_EQ(inPlaces()->worst, Verdict::CannotTell);
    EXPECT_EQ(inPlaces()->count, 1);
}

TEST(ResultKeysTest, EveryResultHasOneKey) {
    for (const Choice& choice : choicesOf<InspectionResult>().choices)
        EXPECT_EQ(
            std::ranges::count(resultKeys, static_cast<InspectionResult>(choice.value), &ResultKey::result),
            1)
            << choice.key;
}

} // namespace
} // namespace loopwright
