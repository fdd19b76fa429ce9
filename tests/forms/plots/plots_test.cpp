// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/heat_plot.h"
#include "forms/plots/log_plot.h"
#include "forms/plots/plot_view.h"
#include "forms/plots/time_current_plot.h"
#include "tests/forms/plots/example_pictures.h"

#include <gmock/gmock.h>

#include <QDir>
#include <QPainter>

namespace loopwright {
namespace {

using ::testing::Contains;
using ::testing::Not;
using ::testing::UnorderedElementsAre;

const Words& words() {
    static const Words english{QLocale::c()};
    return english;
}

void keep(const QImage& image, const char* name) {
    const QDir directory(QStringLiteral(LOOPWRIGHT_PICTURES_DIR));
    ASSERT_TRUE(directory.mkpath(QStringLiteral(".")));
    EXPECT_TRUE(image.save(directory.filePath(QString::fromLatin1(name))));
}

QImage shown(PlotView& view) {
    view.resize(view.sizeHint());
    return view.grab().toImage();
}

int pixelsOf(const QImage& image, const QColor& colour) {
    int found = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            found += image.pixelColor(x, y) == colour;
    return found;
}

std::vector<QCPItemText*> labelsOf(const QCustomPlot& plot) {
    std::vector<QCPItemText*> labels;
    for (int i = 0; i < plot.itemCount(); ++i)
        if (auto* label = qobject_cast<QCPItemText*>(plot.item(i))) labels.push_back(label);
    return labels;
}

std::vector<std::string> textsOf(const QCustomPlot& plot) {
    std::vector<std::string> texts;
    for (const QCPItemText* label : labelsOf(plot))
        texts.push_back(label->text().toStdString());
    return texts;
}

std::vector<std::string> keyOf(const QCustomPlot& plot) {
    std::vector<std::string> names;
    for (auto* entry : plot.findChildren<QCPPlottableLegendItem*>())
        names.push_back(entry->plottable()->name().toStdString());
    return names;
}

double topOf(const QCustomPlot& plot, int panel) {
    return plot.axisRect(panel)->axis(QCPAxis::atLeft)->range().upper;
}

TEST(Plots, AreDrawnInEveryLook) {
    Appearance appearance{QLocale::c()};
    for (const auto& [look, name] : {std::pair(&lightLook(), "light"), std::pair(&darkLook(), "dark")}) {
        appearance.use(*look);
        PlotView band(appearance), heat(appearance);
        band.show(test::kilnOnFuse());
        heat.show(test::kilnDuty());
        const QImage bandImage = shown(band), heatImage = shown(heat);
        EXPECT_EQ(bandImage.pixelColor(1, 1), look->sheet) << name;
        EXPECT_GT(pixelsOf(bandImage, look->accent), 300) << "the load's line, " << name;
        EXPECT_GT(pixelsOf(heatImage, look->accent), 300) << "the conductor's curve, " << name;
        EXPECT_GT(pixelsOf(heatImage, look->accentWash), 5000) << "while it runs, " << name;
        keep(bandImage, (std::string("plot-band-") + name + ".png").c_str());
        keep(heatImage, (std::string("plot-heat-") + name + ".png").c_str());
        PlotView log(appearance);
        log.show(test::kilnLog());
        log.resize(700, 400);
        const QImage logImage = log.grab().toImage();
        EXPECT_GT(pixelsOf(logImage, look->accent), 300) << "the logged current, " << name;
        keep(logImage, (std::string("plot-log-") + name + ".png").c_str());
    }
}

TEST(Plots, ReadTheBandInWords) {
    const overload::TimeCurrentPicture picture = test::kilnOnFuse();
    EXPECT_EQ(readTimeCurrent(picture, amperes(20), words()),
              QStringLiteral("20\u00a0A: holds, may never operate"));
    EXPECT_EQ(readTimeCurrent(picture, amperes(45), words()),
              QStringLiteral("45\u00a0A: not before 12\u00a0min, by 10\u00a0h at the latest"));
    EXPECT_EQ(readTimeCurrent(picture, amperes(125), words()).section(u',', 1),
              QStringLiteral(" by 5\u00a0s at the latest"));
    EXPECT_EQ(readTimeCurrent(picture, amperes(9000), words()).section(u',', 1),
              QStringLiteral(" by 0.012\u00a0s at the latest"))
        << "past the last point what holds there holds on";
}

TEST(Plots, ReadTheHeatInWords) {
    const QString read = readHeat(test::kilnDuty(), minutes(25), words());
    EXPECT_TRUE(read.startsWith(QStringLiteral("25\u00a0min: conductor 92"))) << qPrintable(read);
    EXPECT_EQ(readHeat(test::kilnDuty(), hours(9), words()), QString()) << "nothing is known there";
}

TEST(Plots, ReadTheLogInWords) {
    const overload::LogPicture picture = test::kilnLog();
    const QString read = readLog(picture, minutes(10.25), words());
    EXPECT_TRUE(read.contains(QStringLiteral(": 41.2 to 42.1\u00a0A; conductor "))) << qPrintable(read);
    EXPECT_TRUE(readLog(picture, minutes(40.25), words()).contains(QStringLiteral(": 0.4\u00a0A; ")))
        << qPrintable(readLog(picture, minutes(40.25), words()));
    EXPECT_TRUE(readLog(picture, minutes(165), words()).contains(QStringLiteral(": nothing logged; ")))
        << qPrintable(readLog(picture, minutes(165), words()));
    EXPECT_TRUE(
        readLog(picture, minutes(230), words()).contains(QStringLiteral("earliest fuse operated, latest 0.")))
        << qPrintable(readLog(picture, minutes(230), words()));
    EXPECT_EQ(readLog(picture, hours(9), words()), QString()) << "nothing is known there";
}

TEST(Plots, SayAtTheirLinesWhatTheReaderLooksFor) {
    const PlotStyle style = paperPlotStyle(words());
    QCustomPlot band, heat, log;
    overload::TimeCurrentPicture picture = test::kilnOnFuse();
    picture.load = amperes(65);
    drawTimeCurrent(band, picture, style);
    EXPECT_THAT(textsOf(band),
                UnorderedElementsAre("rated", "65\u00a0A, on for 25\u00a0min", "fault 310\u00a0A"));
    drawHeat(heat, test::kilnDuty(), style);
    EXPECT_THAT(textsOf(heat),
                UnorderedElementsAre("conductor, 92\u00a0°C at most", "the fuse operates at θ = 1"));
    EXPECT_THAT(keyOf(heat), UnorderedElementsAre("conductor", "insulation’s limit 70\u00a0°C",
                                                  "earliest fuse", "latest fuse"));
    drawLog(log, test::kilnLog(), style);
    EXPECT_THAT(textsOf(log), Contains("the earliest fuse would have operated"));
    EXPECT_THAT(keyOf(log), Contains("rated 30\u00a0A"));
}

TEST(Plots, DrawNoLineOfADeviceThatOperatesAtOnce) {
    const PlotStyle style = paperPlotStyle(words());
    overload::LogPicture picture = test::kilnLog();
    for (overload::LogPicture::Column& column : picture.columns)
        column.earliest.reset();
    picture.columns.front().earliest = 1.9;
    picture.earliestOperated = seconds(0);
    QCustomPlot log;
    drawLog(log, picture, style);
    EXPECT_THAT(keyOf(log), Not(Contains("earliest fuse")));
    EXPECT_THAT(keyOf(log), Contains("latest fuse"));
    EXPECT_THAT(textsOf(log), Contains("the earliest fuse would have operated at once"));
    picture.columns[1].earliest = 1.9;
    drawLog(log, picture, style);
    EXPECT_THAT(keyOf(log), Contains("earliest fuse"));
    EXPECT_LT(topOf(log, 2), 1.5) << "a state past the one at which it operates makes no ticks crowd";
}

TEST(Plots, CutNoLabel) {
    const PlotStyle style = paperPlotStyle(words());
    const auto expectWhole = [&](const auto& picture, auto draw, const QSizeF& size) {
        QCustomPlot plot;
        draw(plot, picture, style);
        recorded(plot, size);
        const QRectF whole(QPointF(), size);
        for (const QCPItemText* label : labelsOf(plot)) {
            const QRectF place(label->topLeft->pixelPosition(), label->bottomRight->pixelPosition());
            EXPECT_FALSE(label->clipToAxisRect()) << qPrintable(label->text());
            EXPECT_TRUE(whole.contains(place))
                << qPrintable(label->text()) << " from " << place.left() << ", " << place.top() << " to "
                << place.right() << ", " << place.bottom();
        }
    };
    for (const double share : {1.0, 0.8}) {
        expectWhole(test::kilnOnFuse(), drawTimeCurrent, QSizeF(313, 263) * share);
        expectWhole(test::kilnDuty(), drawHeat, QSizeF(313, 263) * share);
        expectWhole(test::kilnLog(), drawLog, QSizeF(660, 400) * share);
    }
}

TEST(Plots, GiveALongNameOfALoadTheWholeWidth) {
    const PlotStyle style = paperPlotStyle(words());
    overload::TimeCurrentPicture picture = test::kilnOnFuse();
    picture.loadName = "wall convector, fixed, on a fused outlet";
    QCustomPlot plot;
    drawTimeCurrent(plot, picture, style);
    recorded(plot, {313, 263}); // half a page
    for (auto* entry : plot.findChildren<QCPPlottableLegendItem*>()) {
        const QString name = entry->plottable()->name();
        const auto* legend = qobject_cast<QCPLegend*>(entry->layout());
        ASSERT_TRUE(legend) << qPrintable(name);
        const int room = entry->rect().width() - legend->iconSize().width() - legend->iconTextPadding();
        EXPECT_GE(room, QFontMetrics(style.text).horizontalAdvance(name)) << qPrintable(name);
    }
    EXPECT_THAT(keyOf(plot), Contains(picture.loadName));
}

TEST(Plots, AreRecordedAsVectorsForPaper) {
    const PlotStyle style = paperPlotStyle(words());
    QImage page(840, 840, QImage::Format_RGB32);
    page.fill(Qt::white);
    QPainter painter(&page);
    const auto put = [&](const auto& picture, auto draw, const QRect& place) {
        QCustomPlot plot;
        draw(plot, picture, style);
        const QPicture recording = recorded(plot, place.size());
        EXPECT_EQ(recording.boundingRect().isEmpty(), false);
        painter.drawPicture(place.topLeft(), recording);
    };
    put(test::kilnOnFuse(), drawTimeCurrent, {5, 10, 410, 400});
    put(test::kilnDuty(), drawHeat, {425, 10, 410, 400});
    put(test::kilnLog(), drawLog, {5, 430, 830, 400});
    painter.end();
    const QImage grey = page.convertToFormat(QImage::Format_Grayscale8);
    keep(grey, "plots-paper-grey.png");
    EXPECT_GT(pixelsOf(page, printLook().accent), 300);
}

} // namespace
} // namespace loopwright
