// SPDX-License-Identifier: GPL-3.0-or-later
#include "../bench.h"
#include "forms/places/go_to.h"
#include "forms/places/places_panel.h"
#include "forms/places/search.h"

#include <gmock/gmock.h>

#include <QAbstractItemModelTester>
#include <QListView>
#include <QTest>
#include <QTreeView>
#include <QVBoxLayout>

using namespace loopwright;

namespace {

/// The bench with a second board that way 6 feeds, a supply, equipment and an observation.
struct Site : Bench {
    Site() {
        const Id site = installation.site.id;
        installation.supplies = {{ids.next(), site, Earthing::TnCS}};
        installation.boards.push_back({ids.next(), site, "Board D", "yard and hoist", {}, circuit("6")});
        installation.equipment = {{ids.next(), circuit("F1"), "Pottery kiln"}};
        Observation observation{ids.next(),    visit,           board,
                                circuit("F1"), Grade::MakeSafe, "Fuse carrier is charred."};
        installation.observations = {observation};
        Visit earlier{ids.next(), site, "2021, periodic"};
        earlier.state = VisitState::Issued;
        installation.visits.insert(installation.visits.begin(), earlier);
        refresh();
    }
    Id boardD() const { return installation.boards.back().id; }
};

std::string title(const QModelIndex& index) {
    return index.data().toString().toStdString();
}

TEST(Places, BoardsStandUnderTheBoardsThatFeedThem) {
    Site site;
    PlacesModel model(site.appearance);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(site.view());
    ASSERT_EQ(model.rowCount(), 1);
    const QModelIndex top = model.index(0, 0);
    EXPECT_EQ(title(top), "Oakum Row Works");
    ASSERT_EQ(model.rowCount(top), 5);
    EXPECT_EQ(title(model.index(0, 0, top)), "Supply, TN-C-S");
    EXPECT_EQ(title(model.index(1, 0, top)), "Board C, kiln room and long walk");
    EXPECT_EQ(title(model.index(2, 0, top)), "Inspection");
    EXPECT_EQ(title(model.index(3, 0, top)), "Instruments");
    EXPECT_EQ(title(model.index(4, 0, top)), "Observations");
    EXPECT_EQ(model.index(4, 0, top).data(PlacesModel::CountRole), 1);
    const QModelIndex boardC = model.index(1, 0, top);
    ASSERT_EQ(model.rowCount(boardC), 1);
    EXPECT_EQ(title(model.index(0, 0, boardC)), "Board D, yard and hoist");
}

TEST(Places, ABoardIsTalliedByTheWorstOfItsCircuits) {
    Site site;
    PlacesModel model(site.appearance);
    model.show(site.view());
    const QModelIndex boardC = model.indexOf({RecordKind::Board, site.board});
    EXPECT_EQ(boardC.data(PlacesModel::WorstRole), static_cast<int>(Verdict::Fails));
    EXPECT_EQ(boardC.data(PlacesModel::CountRole), 2) << "F1 by its load, 12 by its insulation";
    EXPECT_EQ(boardC.data(Qt::AccessibleTextRole).toString(), "Board C, kiln room and long walk, 2, fails");
}

TEST(Places, TheTreeLeavesOutWhatItsIconSaysAndThenWhatItHasNoRoomFor) {
    Site site;
    Board& board = site.installation.boards.front();
    PlacesModel model(site.appearance);
    const auto names = [&](const char* name, const char* description) {
        board.name = name;
        board.description = description;
        site.refresh();
        model.show(site.view());
        return model.indexOf({RecordKind::Board, site.board}).data(PlacesModel::NamesRole).toStringList();
    };
    EXPECT_EQ(names("Board C", "kiln range: kiln room, bakehouse"),
              QStringList({"C, kiln range: kiln room, bakehouse", "C kiln range", "Board C"}));
    EXPECT_EQ(names("Main switchboard", "intake, feeders, services"),
              QStringList({"Main switchboard, intake, feeders, services", "Main switchboard, intake",
                           "Main switchboard"}));
    EXPECT_EQ(names("Board C", ""), QStringList({"C", "C", "Board C"}));
    EXPECT_EQ(model.indexOf({RecordKind::Board, site.board}).data(Qt::ToolTipRole).toString(), "Board C");
    EXPECT_EQ(model.index(0, 0).data(PlacesModel::NamesRole).toStringList(),
              QStringList({"Oakum Row Works"}));
}

TEST(Places, BoardsThatFeedEachOtherAreShownAllTheSame) {
    Site site;
    Circuit feeder;
    feeder.id = site.ids.next();
    feeder.board = site.boardD();
    site.installation.circuits.push_back(feeder);
    site.installation.boards.front().fedFrom = feeder.id;
    site.refresh();
    PlacesModel model(site.appearance);
    model.show(site.view());
    EXPECT_TRUE(model.indexOf({RecordKind::Board, site.board}).isValid());
    EXPECT_TRUE(model.indexOf({RecordKind::Board, site.boardD()}).isValid());
}

TEST(Places, ACircuitAndItsEquipmentStandUnderTheirBoard) {
    Site site;
    PlacesModel model(site.appearance);
    model.show(site.view());
    const QModelIndex board = model.indexOf({RecordKind::Board, site.board});
    EXPECT_EQ(model.indexOf({RecordKind::Circuit, site.circuit("F1")}), board);
    EXPECT_EQ(model.indexOf({RecordKind::Equipment, site.installation.equipment[0].id}), board);
}

TEST(Places, ChoosingByKeyboardSaysWhere) {
    Site site;
    PlacesPanel panel(site.appearance);
    panel.resize(200, 600);
    panel.show(site.view(), {RecordKind::Board, site.board});
    panel.setVisible(true);
    Subject chosen;
    QObject::connect(&panel, &PlacesPanel::placeChosen, [&](const Subject& subject) { chosen = subject; });
    QTest::keyClick(&panel.tree(), Qt::Key_Down);
    EXPECT_EQ(chosen, (Subject{RecordKind::Board, site.boardD()}));
    bool entered = false;
    QObject::connect(&panel, &PlacesPanel::entered, [&] { entered = true; });
    QTest::keyClick(&panel.tree(), Qt::Key_Return);
    EXPECT_TRUE(entered);
}

TEST(Places, TheNewestVisitStandsFirstAndTheOneInViewIsMarked) {
    Site site;
    VisitsModel model(site.appearance);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(site.view());
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(title(model.index(0)), "2026, periodic");
    EXPECT_TRUE(model.index(0).data(VisitsModel::CurrentRole).toBool());
    EXPECT_EQ(model.index(1).data(VisitsModel::StateRole).toString(), "issued");
}

TEST(Search, FindsBoardsCircuitsEquipmentAndObservationsByTheirWords) {
    const Site site;
    const auto found = [&](const char* query) {
        std::vector<std::string> titles;
        for (const Match& match : findByWords(site.installation, query, 20))
            titles.push_back(match.title.toStdString());
        return titles;
    };
    EXPECT_THAT(found("kiln"), testing::ElementsAre("Board C, kiln room and long walk", "F1 Kiln, glaze room",
                                                    "Pottery kiln"));
    EXPECT_THAT(found("  GLAZE   kiln "), testing::ElementsAre("F1 Kiln, glaze room"));
    EXPECT_THAT(found("charred"), testing::ElementsAre("Fuse carrier is charred."));
    EXPECT_THAT(found("F1"), testing::Contains("F1 Kiln, glaze room"));
    EXPECT_EQ(found("f1").front(), "F1 Kiln, glaze room") << "what begins with the query comes first";
    EXPECT_THAT(found(""), testing::IsEmpty());
    EXPECT_THAT(found("zebra"), testing::IsEmpty());
    EXPECT_EQ(findByWords(site.installation, "o", 3).size(), 3U);
}

TEST(GoTo, EnterGoesToTheChosenMatchAndEscGivesTheKeyboardBack) {
    Site site;
    QWidget window;
    window.resize(700, 500);
    auto* column = new QVBoxLayout(&window);
    auto* field = new GoToField(site.appearance);
    column->addWidget(field);
    column->addStretch();
    field->setView(site.view());
    window.show();
    field->setFocus();
    Subject chosen;
    bool givenUp = false;
    QObject::connect(field, &GoToField::chosen, [&](const Subject& subject) { chosen = subject; });
    QObject::connect(field, &GoToField::givenUp, [&] { givenUp = true; });

    QTest::keyClicks(field, "kiln");
    ASSERT_NE(field->matches(), nullptr);
    ASSERT_TRUE(field->matches()->isVisible());
    const QAbstractItemModelTester tester(field->matches()->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(field->matches()->model()->rowCount(), 3);
    QTest::keyClick(field, Qt::Key_Down);
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(chosen, (Subject{RecordKind::Circuit, site.circuit("F1")}));
    EXPECT_FALSE(field->matches()->isVisible());
    EXPECT_TRUE(field->text().isEmpty());

    QTest::keyClicks(field, "board");
    QTest::keyClick(field, Qt::Key_Escape);
    EXPECT_TRUE(givenUp);
    EXPECT_FALSE(field->matches()->isVisible());
}

} // namespace
