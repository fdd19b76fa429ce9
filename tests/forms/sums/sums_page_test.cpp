// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sums/sums_page.h"

#include "core/sums/registry.h"
#include "forms/frame/labels.h"
#include "forms/look/style.h"
#include "forms/sums/sum_answer.h"
#include "forms/sums/sum_fields.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QDir>
#include <QLineEdit>
#include <QListView>
#include <QSignalSpy>
#include <QTest>

namespace loopwright {
namespace {

class SumsPageTest : public testing::Test {
  protected:
    SumsPageTest() {
        applyLook(*qApp, appearance.look(), appearance.type);
        page.resize(1000, 640);
        page.show(tables, rules.front());
        page.setVisible(true);
        page.activateWindow();
        QCoreApplication::processEvents();
    }
    /// With plain spaces, as a test writes them.
    std::string answered() { return utf8(plainSpaces(page.answer().spoken())); }
    static QString plainSpaces(QString read) { return read.replace(QChar(QChar::Nbsp), u' '); }
    /// Types every input as the sum's own example does.
    void tryExample(const sums::Sum& sum) {
        page.choose(sum.key);
        for (const QString& each :
             QString::fromUtf8(sum.example.data(), static_cast<qsizetype>(sum.example.size())).split(u' ')) {
            const qsizetype at = each.indexOf(u'=');
            page.fields()->enter(utf8(each.left(at)), each.mid(at + 1));
        }
    }
    void picture(const char* name) {
        const QDir directory(QStringLiteral(LOOPWRIGHT_PICTURES_DIR));
        directory.mkpath(QStringLiteral("."));
        QCoreApplication::processEvents();
        EXPECT_TRUE(page.grab().save(directory.filePath(QString::fromLatin1(name))));
    }

    ReferenceTables tables = ReferenceTables::builtIn();
    std::vector<RuleSet> rules = builtInRuleSets();
    Appearance appearance{QLocale::c()};
    SumsPage page{appearance};
};

TEST_F(SumsPageTest, ListsEverySumOfTheRegistry) {
    EXPECT_EQ(static_cast<std::size_t>(page.list().model()->rowCount()), sums::allSums().size());
    ASSERT_NE(page.chosen(), nullptr) << "the first one is open";
}

TEST_F(SumsPageTest, EverySumAnswersItsExample) {
    for (const sums::Sum& sum : sums::allSums()) {
        tryExample(sum);
        ASSERT_EQ(page.chosen(), &sum) << sum.key;
        const auto inputs = sums::readInputs(sum, page.fields()->given(), {tables, rules.front()});
        ASSERT_TRUE(inputs.has_value()) << sum.key << ": " << inputs.error().what.key;
        const auto answers = sums::answer(sum, *inputs, {tables, rules.front()});
        ASSERT_TRUE(answers.has_value()) << sum.key;
        for (const Working& working : answers->cases.front().workings()) {
            const QString figure = appearance.words.measure(working.result.value());
            EXPECT_THAT(answered(), testing::HasSubstr(utf8(plainSpaces(figure)))) << sum.key;
        }
    }
}

TEST_F(SumsPageTest, AnAnswerFollowsWhatIsTyped) {
    page.choose("loop-from-parts");
    QCoreApplication::processEvents();
    EXPECT_THAT(answered(), testing::HasSubstr("Still to give: External loop impedance"));
    page.fields()->takeKeyboard();
    for (const char* typed : {"0.35", "7.41", "12.1", "30"}) {
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(typed));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    EXPECT_THAT(answered(), testing::HasSubstr("0.935 Ω")) << "0.35 + (7.41 + 12.1) 30 / 1000";
    page.fields()->enter("length_m", QStringLiteral("0.03 km"));
    picture("sums-refused.png");
    page.fields()->enter("length_m", QStringLiteral("60"));
    EXPECT_THAT(answered(), testing::HasSubstr("1.52 Ω")) << "0.35 + 1.1706";
    std::vector<std::string> shown;
    for (const auto* label : page.answer().findChildren<RoleLabel*>())
        shown.push_back(utf8(label->text()));
    EXPECT_THAT(shown, testing::Contains(testing::StartsWith("<i>Z</i><sub"))) << "symbols are italic";
    EXPECT_THAT(shown, testing::Contains(testing::EndsWith("<i>l</i> <i>F</i>"))) << "in formulas too";
    picture("sums-loop.png");
}

TEST_F(SumsPageTest, WhatIsMissingOrWrongIsSaidAndNothingIsAnswered) {
    page.choose("current-from-power");
    EXPECT_THAT(answered(), testing::HasSubstr("Still to give: Power; Voltage, between lines"));
    EXPECT_THAT(answered(), testing::Not(testing::HasSubstr(" A")));
    page.fields()->enter("power_W", QStringLiteral("8.5 kW"));
    page.fields()->enter("voltage_V", QStringLiteral("nan"));
    EXPECT_THAT(answered(), testing::HasSubstr("nan"));
    EXPECT_THAT(answered(), testing::Not(testing::HasSubstr(" A")));
    page.fields()->enter("voltage_V", QStringLiteral("240"));
    EXPECT_THAT(answered(), testing::HasSubstr("35.4 A")) << "8500 / 240";
}

TEST_F(SumsPageTest, ASumIsFoundByItsWords) {
    page.search().setFocus();
    QTest::keyClicks(&page.search(), QStringLiteral("heater at"));
    ASSERT_NE(page.chosen(), nullptr);
    EXPECT_EQ(page.chosen()->key, "heater-power");
    QTest::keyClick(&page.search(), Qt::Key_Return);
    EXPECT_NE(QApplication::focusWidget(), &page.search());
    QSignalSpy closed(&page, &SumsPage::closed);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_EQ(closed.count(), 1);
}

} // namespace
} // namespace loopwright
