// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/records/record_form.h"

#include "forms/records/field_editor.h"
#include "tests/forms/bench.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <set>

namespace loopwright {
namespace {

class RecordForms : public testing::Test {
  protected:
    RecordForms() {
        bench.changed = [this](const SiteViewPtr& view) { form.setView(view); };
        form.resize(900, 700);
        form.show();
    }

    /// Types into a field as a person does, and leaves it.
    void type(const char* field, const char* typed) {
        auto* line = form.findChild<QLineEdit*>(field);
        ASSERT_NE(line, nullptr) << "no field " << field;
        line->setFocus();
        line->selectAll();
        QTest::keyClicks(line, typed);
        QTest::keyClick(line, Qt::Key_Return);
    }
    QString shown(const char* field) { return form.findChild<QLineEdit*>(field)->text(); }
    QString refusal() {
        for (const QLabel* label : form.findChildren<QLabel*>("refusal"))
            if (!label->isHidden()) return label->text();
        return {};
    }

    Bench bench;
    RecordForm form{bench.appearance, bench.door(), bench.ids};
};

TEST_F(RecordForms, StoreAFieldTheMomentItIsLeft) {
    const Id circuit = bench.circuit("1");
    form.open(bench.view(), RecordKind::Circuit, circuit);
    type("wiring.length_m", "61.5");
    EXPECT_EQ(fieldText(bench.installation, RecordKind::Circuit, circuit, "wiring.length_m"), "61.5");
    ASSERT_EQ(bench.changes.size(), 1u);
    EXPECT_EQ(shown("wiring.length_m"), "61.5");
}

TEST_F(RecordForms, StoreWhatIsBeingTypedBeforeAnotherRecordTakesItsPlace) {
    const Id first = bench.circuit("1"), other = bench.circuit("4");
    form.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&form));
    form.open(bench.view(), RecordKind::Circuit, first);
    auto* line = form.findChild<QLineEdit*>("wiring.length_m");
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, "61.5");
    form.open(bench.view(), RecordKind::Circuit, other);
    EXPECT_EQ(fieldText(bench.installation, RecordKind::Circuit, first, "wiring.length_m"), "61.5");
    EXPECT_EQ(bench.changes.size(), 1u);
    form.open(bench.view(), RecordKind::Circuit, first);
    EXPECT_EQ(shown("wiring.length_m"), "61.5");
}

TEST_F(RecordForms, RefuseWhatCannotBeAValueAndKeepTheOldOne) {
    const Id circuit = bench.circuit("1");
    const auto before = fieldText(bench.installation, RecordKind::Circuit, circuit, "wiring.lineSize_mm2");
    form.open(bench.view(), RecordKind::Circuit, circuit);
    for (const char* typed : {"abc", "-2.5", "0"}) {
        type("wiring.lineSize_mm2", typed);
        EXPECT_FALSE(refusal().isEmpty()) << typed << " was not refused";
        EXPECT_EQ(fieldText(bench.installation, RecordKind::Circuit, circuit, "wiring.lineSize_mm2"), before)
            << typed;
    }
    EXPECT_TRUE(bench.changes.empty());
    QTest::keyClick(form.findChild<QLineEdit*>("wiring.lineSize_mm2"), Qt::Key_Escape);
    EXPECT_EQ(shown("wiring.lineSize_mm2").toStdString(), before);
    EXPECT_TRUE(refusal().isEmpty());
}

TEST_F(RecordForms, MakeTheReadingsRowWithTheFirstReading) {
    form.open(bench.view(), RecordKind::Board, bench.board);
    const auto rows = bench.installation.boardReadings.size();
    type("loopImpedance_ohm", "0.24");
    type("prospectiveFaultCurrent_kA", "1.0");
    ASSERT_EQ(bench.installation.boardReadings.size(), rows + 1);
    const BoardReading& row = bench.installation.boardReadings.back();
    EXPECT_EQ(row.visit, bench.visit);
    EXPECT_EQ(row.board, bench.board);
    EXPECT_EQ(row.loopImpedance, Entry<Resistance>::of(ohms(0.24), 2));
    EXPECT_EQ(row.prospectiveFaultCurrent, Entry<Current>::of(kiloamperes(1.0), 1));
}

TEST_F(RecordForms, DaysAndFiguresReadAsElsewhereAndStandAsWrittenWhileTheyAreTyped) {
    Visit& visit = *std::ranges::find(bench.installation.visits, bench.visit, &Visit::id);
    visit.started = Date(std::chrono::year{2026} / 3 / 9);
    bench.refresh();
    form.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&form));
    form.open(bench.view(), RecordKind::Visit, bench.visit);
    EXPECT_EQ(shown("started"), "9 March 2026");
    form.findChild<QLineEdit*>("started")->setFocus();
    EXPECT_EQ(shown("started"), "2026-03-09");
    form.findChild<QLineEdit*>("label")->setFocus();
    EXPECT_EQ(shown("started"), "9 March 2026");

    const Id circuit = bench.circuit("4");
    form.open(bench.view(), RecordKind::Circuit, circuit);
    EXPECT_EQ(shown("load_A"), "14.8");
    EXPECT_EQ(form.findChild<QLineEdit*>("load_A")->accessibleDescription(), "A, typed");
    form.findChild<QLineEdit*>("load_A")->setFocus();
    EXPECT_EQ(shown("load_A"), "14.8 (typed)");
    QTest::keyClick(form.findChild<QLineEdit*>("load_A"), Qt::Key_Return);
    EXPECT_TRUE(bench.changes.empty()) << "looking at a field changes nothing";
    type("load_A", "15.2");
    EXPECT_EQ(fieldText(bench.installation, RecordKind::Circuit, circuit, "load_A"), "15.2");
}

TEST_F(RecordForms, FieldsOfAllSectionsBeginAtOneLine) {
    for (const RecordKind kind : {RecordKind::Circuit, RecordKind::Board}) {
        form.open(bench.view(), kind, kind == RecordKind::Board ? bench.board : bench.circuit("4"));
        QCoreApplication::processEvents();
        std::set<int> lefts;
        for (const auto* line : form.findChildren<QLineEdit*>())
            lefts.insert(line->mapTo(&form, QPoint()).x());
        EXPECT_EQ(lefts.size(), 1U) << recordName(kind);
    }
}

TEST_F(RecordForms, AddEquipmentToACircuitAndOpenIt) {
    const Id circuit = bench.circuit("1");
    form.open(bench.view(), RecordKind::Circuit, circuit);
    QSignalSpy wanted(&form, &RecordForm::recordWanted);
    const auto before = bench.installation.equipment.size();
    form.findChild<QPushButton*>("add equipment")->click();
    ASSERT_EQ(bench.installation.equipment.size(), before + 1);
    EXPECT_EQ(bench.installation.equipment.back().circuit, circuit);
    ASSERT_EQ(wanted.count(), 1);
    form.open(bench.view(), RecordKind::Equipment, bench.installation.equipment.back().id);
    type("power_W", "9.6 kW");
    EXPECT_EQ(bench.installation.equipment.back().power.value, watts(9600));
}

TEST_F(RecordForms, CloseWhenTheirRecordIsGone) {
    const Id circuit = bench.circuit("1");
    form.open(bench.view(), RecordKind::Circuit, circuit);
    QSignalSpy closed(&form, &RecordForm::closed);
    ASSERT_TRUE(bench.door()({{}, {removeRecord(RecordKind::Circuit, circuit)}}));
    EXPECT_EQ(closed.count(), 1);
    EXPECT_FALSE(form.isOpen());
}

TEST_F(RecordForms, NothingOfAnIssuedVisitCanBeTyped) {
    std::ranges::find(bench.installation.visits, bench.visit, &Visit::id)->state = VisitState::Issued;
    bench.refresh();
    form.open(bench.view(), RecordKind::Board, bench.board);
    EXPECT_TRUE(form.findChild<QLineEdit*>("loopImpedance_ohm")->isReadOnly());
    EXPECT_FALSE(form.findChild<QLineEdit*>("description")->isReadOnly());
}

TEST_F(RecordForms, EveryFieldOfEveryPlanExistsAndIsNamed) {
    for (const RecordKind kind :
         {RecordKind::Site, RecordKind::Supply, RecordKind::Board, RecordKind::Circuit, RecordKind::Equipment,
          RecordKind::Visit, RecordKind::Instrument, RecordKind::Observation, RecordKind::Photo,
          RecordKind::CurrentLog}) {
        EXPECT_FALSE(formPlan(kind).empty()) << recordName(kind);
        for (const FormSection& section : formPlan(kind))
            for (const std::string_view key : section.fields)
                EXPECT_NE(fieldInfo(section.kind, key), nullptr) << recordName(section.kind) << " " << key;
    }
}

} // namespace
} // namespace loopwright
