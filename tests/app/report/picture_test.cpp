// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/report/proof.h"
#include "tests/app/report/sites.h"

#include "app/report/page_painter.h"
#include "app/report/preview.h"
#include "forms/look/look.h"

#include <gtest/gtest.h>

#include <QPainter>
#include <QScrollBar>
#include <QTest>

#include <set>

namespace loopwright::test {
namespace {

QImage painted(const Report::Page& page, double dotsPerMillimetre) {
    QImage image((paperOf(page) * dotsPerMillimetre).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(dotsPerMillimetre, dotsPerMillimetre);
    paintPage(painter, page);
    painter.end();
    return image;
}

/// Share of a grey picture that is dark.
double inked(const QImage& picture) {
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    int dark = 0;
    for (int y = 0; y < grey.height(); ++y)
        for (int x = 0; x < grey.width(); ++x)
            dark += qGray(grey.pixel(x, y)) < 200 ? 1 : 0;
    return static_cast<double>(dark) / (grey.width() * grey.height());
}

TEST(ReportPicture, hasInkOnEveryPage) {
    ReportedSite site = demoSite();
    for (const Report::Page& page : site.report().pages)
        EXPECT_GT(inked(painted(page, 2)), 0.005);
}

/// A mark as a grey printer shows it, black or white.
QImage greyMark(Mark mark, Role ink) {
    QImage image(32, 32, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    const report::Ink drawn = report::MarkInk{QRectF(0, 0, 32, 32), mark, ink};
    report::paintInks(painter, std::span(&drawn, 1), printLook());
    painter.end();
    return image.convertToFormat(QImage::Format_Grayscale8);
}

double difference(const QImage& first, const QImage& second) {
    int differing = 0;
    for (int y = 0; y < first.height(); ++y)
        for (int x = 0; x < first.width(); ++x)
            differing += (qGray(first.pixel(x, y)) < 160) != (qGray(second.pixel(x, y)) < 160) ? 1 : 0;
    return static_cast<double>(differing) / (first.width() * first.height());
}

TEST(ReportPicture, keepsMarksApartWithoutColour) {
    std::vector<std::pair<std::string, QImage>> marks;
    for (const Verdict verdict :
         {Verdict::Fails, Verdict::CannotTell, Verdict::Close, Verdict::Holds, Verdict::DoesNotApply})
        marks.emplace_back(verdictKey(verdict), greyMark(markOf(verdict), inkOf(verdict)));
    for (const Grade grade : {Grade::MakeSafe, Grade::PutRight, Grade::LookFurther, Grade::WorthImproving})
        marks.emplace_back(choiceKey(grade), greyMark(markOf(grade), inkOf(grade)));
    for (std::size_t first = 0; first < marks.size(); ++first)
        for (std::size_t second = first + 1; second < marks.size(); ++second)
            EXPECT_GT(difference(marks[first].second, marks[second].second), 0.08)
                << marks[first].first << " and " << marks[second].first;
}

TEST(ReportPicture, drawsPhotosWhole) {
    ReportedSite site = smallSite();
    bool any = false;
    for (const Report::Page& page : site.report().pages)
        for (const report::Ink& ink : page.inks)
            if (const auto* photo = std::get_if<report::PictureInk>(&ink)) {
                any = true;
                EXPECT_NEAR(photo->place.width() / photo->place.height(), 4.0 / 3, 0.01);
                EXPECT_NEAR(static_cast<double>(photo->picture.width()) / photo->picture.height(), 4.0 / 3,
                            0.01);
            }
    EXPECT_TRUE(any);
}

TEST(ReportPicture, sealRingTellsDigestsApart) {
    const auto ring = [](std::optional<report::SealDigest> digest) {
        QImage image(200, 200, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        const report::Ink ink = report::RingInk{QRectF(10, 10, 180, 180), digest};
        report::paintInks(painter, std::span(&ink, 1), printLook());
        return image;
    };
    report::SealDigest digest{};
    digest[3] = 0x41;
    EXPECT_EQ(ring(report::SealDigest{}), ring(std::nullopt))
        << "a digest without bits has equal ticks as well";
    EXPECT_NE(ring(digest), ring(std::nullopt));
}

TEST(ReportPreview, showsEachPageInItsForm) {
    ReportedSite site = smallSite();
    ReportPreview preview(lightLook());
    preview.resize(900, 700);
    preview.setReport(site.report());
    preview.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&preview));
    EXPECT_EQ(preview.currentPage(), 1);
    std::set<int> seen;
    QObject::connect(&preview, &ReportPreview::currentPageChanged, &preview,
                     [&](int page) { seen.insert(page); });
    for (int page = 2; page <= preview.pageCount(); ++page)
        QTest::keyClick(&preview, Qt::Key_PageDown);
    EXPECT_EQ(preview.currentPage(), preview.pageCount());
    EXPECT_EQ(static_cast<int>(seen.size()), preview.pageCount() - 1);
    QTest::keyClick(&preview, Qt::Key_Home);
    EXPECT_EQ(preview.currentPage(), 1);
    EXPECT_GT(inked(preview.viewport()->grab().toImage()), 0.005);

    const double fitted = preview.zoom();
    preview.zoomIn();
    EXPECT_GT(preview.zoom(), fitted);
    EXPECT_GT(preview.horizontalScrollBar()->maximum(), 0);
    preview.fitWidth();
    EXPECT_DOUBLE_EQ(preview.zoom(), fitted);
}

} // namespace
} // namespace loopwright::test
