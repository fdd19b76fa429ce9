// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/style.h"

#include "tests/forms/look/specimen.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QDir>
#include <QLineEdit>
#include <QMenu>
#include <QPainter>
#include <QPushButton>
#include <QSplitter>
#include <QStyle>

#include <memory>

namespace loopwright {
namespace {

struct Theme {
    const char* name;
    const Look& look;
};
std::ostream& operator<<(std::ostream& out, const Theme& theme) {
    return out << theme.name;
}

/// The page of controls under one look, shown as far as the platform shows anything.
class Style : public testing::TestWithParam<Theme> {
  protected:
    void SetUp() override {
        applyLook(*qApp, look(), type_);
        page_.reset(controlSpecimen(look(), type_, icons_));
        page_->show();
        page_->activateWindow();
        QApplication::processEvents();
    }
    const Look& look() const { return GetParam().look; }

    template <class Widget = QWidget>
    Widget& find(const char* name) {
        auto* widget = page_->findChild<Widget*>(QLatin1String(name));
        if (!widget) throw std::runtime_error(std::string("no widget ") + name);
        return *widget;
    }
    static QImage pictureOf(QWidget& widget) { return widget.grab().toImage(); }

    Type type_;
    Icons icons_{GetParam().look};
    std::unique_ptr<QWidget> page_;
};

INSTANTIATE_TEST_SUITE_P(Look, Style, testing::Values(Theme{"light", lightLook()}, Theme{"dark", darkLook()}),
                         [](const auto& theme) { return std::string(theme.param.name); });

bool contains(const QImage& image, const QColor& colour) {
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (image.pixelColor(x, y) == colour) return true;
    return false;
}

TEST_P(Style, OnlyThePrimaryButtonIsFilledWithTheAccent) {
    EXPECT_EQ(pictureOf(find("primary")).pixelColor(6, 6), look().accent);
    for (const char* other : {"plain", "default", "off", "primaryOff", "Sheet", "Diagram"})
        EXPECT_FALSE(contains(pictureOf(find(other)), look().accent)) << other;
}

TEST_P(Style, TheCheckedPartOfAViewSwitchIsInk) {
    EXPECT_EQ(pictureOf(find("Sheet")).pixelColor(5, 5), look().ink);
    EXPECT_EQ(pictureOf(find("Diagram")).pixelColor(5, 5), look().sheet);
}

TEST_P(Style, TheFocusRingIsInsideTheEdgeOfWhatTheKeyboardIsOn) {
    for (const char* name : {"field", "plain", "combo", "quiet", "primary"}) {
        auto& widget = find(name);
        EXPECT_FALSE(contains(pictureOf(widget), look().focus)) << name << " before it has the keyboard";
        widget.setFocus(Qt::TabFocusReason);
        QApplication::processEvents();
        const QImage picture = pictureOf(widget);
        const int middle = picture.height() / 2;
        EXPECT_EQ(picture.pixelColor(0, middle), look().focus) << name;
        EXPECT_EQ(picture.pixelColor(1, middle), look().focus) << name;
        EXPECT_NE(picture.pixelColor(2, middle), look().focus) << name;
        widget.clearFocus();
    }
}

TEST_P(Style, ARefusedFieldHasAnEdgeInTheColourOfFails) {
    auto& field = find<QLineEdit>("refused");
    EXPECT_EQ(pictureOf(field).pixelColor(1, field.height() / 2), look().fails);
    setRefused(field, false);
    EXPECT_FALSE(contains(pictureOf(field), look().fails));
}

TEST_P(Style, AnUncheckedBoxCanBeSeen) {
    // Its edge must stand out from the window around it and from its own inside: 3 to 1, WCAG 2.1, 1.4.11.
    auto& box = find<QCheckBox>("unchecked");
    const QImage picture = pictureOf(box);
    const int middle = picture.height() / 2;
    const QColor edge = picture.pixelColor(0, middle), inside = picture.pixelColor(8, middle);
    EXPECT_GE(contrast(edge, look().window), 3.0) << edge.name().toStdString();
    EXPECT_GE(contrast(edge, inside), 3.0) << inside.name().toStdString();
}

TEST_P(Style, NothingMoves) {
    EXPECT_EQ(qApp->style()->styleHint(QStyle::SH_Widget_Animation_Duration), 0);
    EXPECT_FALSE(QApplication::isEffectEnabled(Qt::UI_AnimateMenu));
}

TEST_P(Style, ASplitterIsAHairlineThatCanStillBeGrabbed) {
    auto& splitter = find<QSplitter>("splitter");
    EXPECT_EQ(splitter.handleWidth(), 1);
    EXPECT_GE(splitter.handle(1)->width(), 3);
}

/// For a person to look at: the pictures lie in the build folder.
TEST_P(Style, IsDrawnAsASheetOfSpecimens) {
    find("field").setFocus(Qt::TabFocusReason);
    DrawingSpecimen drawings(look(), type_, icons_);
    auto& menu = find<QMenu>("book");
    menu.setActiveAction(menu.actions().front());
    menu.adjustSize();

    QImage sheet(1260, 720, QImage::Format_RGB32);
    sheet.fill(look().window);
    QPainter painter(&sheet);
    painter.drawPixmap(5, 10, page_->grab());
    painter.drawPixmap(635, 10, drawings.grab());
    painter.drawPixmap(1040, 520, menu.grab());
    painter.end();

    const QDir folder(QStringLiteral(LOOPWRIGHT_PICTURES_DIR));
    ASSERT_TRUE(folder.mkpath(QStringLiteral(".")));
    EXPECT_TRUE(
        sheet.save(folder.filePath(QStringLiteral("look-%1.png").arg(QLatin1String(GetParam().name)))));
}

} // namespace
} // namespace loopwright
