// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/rich_symbol.h"

#include "forms/look/type.h"

#include <gtest/gtest.h>

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <QTextCursor>
#include <QTextDocument>

namespace loopwright {
namespace {

/// "I_b ≤ I_n" as "/I/ _b_  ≤ /I/ _n_": italics in slashes, subscripts in low lines, superscripts in carets.
std::string spelled(const char* notation) {
    QString result;
    for (const SymbolRun& run : symbolRuns(QString::fromUtf8(notation))) {
        const QString piece = run.italic ? u'/' + run.text + u'/' : run.text;
        if (run.level == SymbolRun::Level::Below)
            result += u'_' + piece + u'_';
        else if (run.level == SymbolRun::Level::Above)
            result += u'^' + piece + u'^';
        else
            result += piece;
    }
    return result.toStdString();
}

struct Case {
    const char* notation;
    const char* runs;
};
std::ostream& operator<<(std::ostream& out, const Case& row) {
    return out << row.notation;
}

class Notation : public testing::TestWithParam<Case> {};

TEST_P(Notation, BecomesRuns) {
    EXPECT_EQ(spelled(GetParam().notation), GetParam().runs);
}

INSTANTIATE_TEST_SUITE_P(
    RichSymbol, Notation,
    testing::Values(Case{"I_n", "/I/_n_"}, Case{"I_b ≤ I_n ≤ I_z", "/I/_b_ ≤ /I/_n_ ≤ /I/_z_"},
                    Case{"R_1+R_2", "/R/_1_+/R/_2_"},
                    Case{"Z_s ≤ 0.8 · Z_s,max", "/Z/_s_ ≤ 0.8 · /Z/_s,max_"},
                    Case{"R_A·I_Δn ≤ 50 V", "/R/_A_·/I/_Δn_ ≤ 50 V"},
                    Case{"I^2·t ≤ k^2·S^2", "/I/^2^·/t/ ≤ /k/^2^·/S/^2^"}, Case{"e^{-t/τ}", "e^−t/τ^"},
                    Case{"S^0.5", "/S/^0.5^"}, Case{"10^-3", "10^−3^"}, Case{"max(a, b)", "max(/a/, /b/)"},
                    Case{"θ' - θ", "/θ/' − /θ/"}, Case{"on-time", "on−time"},
                    Case{"I_b, I_n", "/I/_b_, /I/_n_"}, Case{"0.3 Ω", "0.3 Ω"}, Case{"", ""},
                    Case{"I_", "/I/"}, Case{"e^{2", "e^2^"}, Case{"I_{b, new}", "/I/_b, new_"}));

TEST(RichSymbol, EscapesWhatHtmlWouldTakeForMarkup) {
    EXPECT_EQ(richSymbol(u"I_b < 2·I_n").toStdString(), "<i>I</i><sub>b</sub> &lt; 2·<i>I</i><sub>n</sub>");
    EXPECT_EQ(richSymbol(u"x^2").toStdString(), "<i>x</i><sup>2</sup>");
}

TEST(RichSymbol, SubscriptsOfHtmlAreAsSmallAsDrawnOnes) {
    const Type type;
    for (const ScreenText role : {ScreenText::PageTitle, ScreenText::PanelTitle, ScreenText::Body,
                                  ScreenText::Figure, ScreenText::Note}) {
        QTextDocument document;
        document.setDefaultFont(type.screen(role));
        document.setHtml(withScriptSize(QStringLiteral("Z<sub>db</sub>"), document.defaultFont()));
        QTextCursor cursor(&document);
        cursor.movePosition(QTextCursor::End);
        EXPECT_EQ(cursor.charFormat().verticalAlignment(), QTextCharFormat::AlignSubScript);
        // As the text engine of Qt does it.
        const double drawn = cursor.charFormat().font().pointSize() * 2 / 3;
        EXPECT_NEAR(drawn, 0.74 * document.defaultFont().pointSizeF(), 0.5) << static_cast<int>(role);
    }
}

TEST(RichSymbol, MeasuresWhatItDrawsAndDropsTheSubscript) {
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPointSizeF(30);
    QImage image(300, 120, QImage::Format_Grayscale8);
    image.fill(Qt::white);
    QPainter painter(&image);
    const double width = drawSymbol(painter, {10, 60}, u"I_n", font);
    painter.end();
    EXPECT_DOUBLE_EQ(width, symbolWidth(u"I_n", font, &image));
    EXPECT_GT(width, symbolWidth(u"I", font, &image));

    const auto lowest = [&](int from, int to) {
        for (int y = image.height() - 1; y >= 0; --y)
            for (int x = from; x < to; ++x)
                if (qGray(image.pixel(x, y)) < 128) return y;
        return -1;
    };
    const int afterLetter = static_cast<int>(10 + symbolWidth(u"I", font, &image));
    const int letter = lowest(0, afterLetter), subscript = lowest(afterLetter + 1, image.width());
    const double em = 30 * image.logicalDpiY() / 72.0;
    EXPECT_NEAR(letter, 60, 1.5);
    EXPECT_NEAR(subscript - letter, 0.25 * em, 1.5);
}

} // namespace
} // namespace loopwright
