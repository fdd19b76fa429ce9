// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/inspection/result_keys.h"

#include "forms/look/paint.h"

#include <QHBoxLayout>
#include <QPainter>

namespace loopwright {
namespace {

constexpr int gap = 5;
constexpr int between = 16;

QString keyText(const ResultKey& key) {
    return QString(QChar::fromLatin1(key.key));
}

} // namespace

ResultButton::ResultButton(const Appearance& appearance, const ResultKey& key, QWidget* parent)
  : QAbstractButton(parent)
  , appearance_(appearance)
  , key_(key) {
    setFocusPolicy(Qt::NoFocus); // the key itself is shorter
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setCount(0);
}

void ResultButton::setCount(int count) {
    count_ = count;
    setAccessibleName(tr("%1 %2, key %3").arg(number(), word(), keyText(key_)));
    updateGeometry();
    update();
}

QString ResultButton::word() const {
    return appearance_.words.word(wordKey(key_.result));
}

QString ResultButton::number() const {
    return appearance_.words.number(std::int64_t{count_});
}

QSize ResultButton::sizeHint() const {
    const QSizeF cap = keyCapSize(keyText(key_), appearance_.type.screen(ScreenText::Note));
    const QFontMetrics numbers(appearance_.type.screen(ScreenText::Figure, Weight::Semibold));
    const QFontMetrics words(appearance_.type.screen(ScreenText::Figure));
    const int mark = verdictOf(key_.result) ? appearance_.type.scaled(mark_size::column) + gap : 0;
    const int width = static_cast<int>(cap.width()) + gap + mark + numbers.horizontalAdvance(number()) + gap +
                      words.horizontalAdvance(word()) + 1;
    return {width, std::max(static_cast<int>(cap.height()) + 1, words.height())};
}

void ResultButton::paintEvent(QPaintEvent*) {
    const Look& look = appearance_.look();
    QPainter painter(this);
    const QFont note = appearance_.type.screen(ScreenText::Note);
    const QSizeF cap = keyCapSize(keyText(key_), note);
    drawKeyCap(painter, {{0, (height() - cap.height()) / 2}, cap}, keyText(key_), note, look);
    int left = static_cast<int>(cap.width()) + gap;
    const std::optional<Verdict> verdict = verdictOf(key_.result);
    const QColor ink = verdict ? look.*inkOf(*verdict) : look.ink;
    if (verdict) {
        const int side = appearance_.type.scaled(mark_size::column);
        drawMark(painter, QRect(left, (height() - side) / 2, side, side), markOf(*verdict), ink);
        left += side + gap;
    }
    painter.setPen(ink);
    for (const auto& [weight, part] :
         {std::pair(Weight::Semibold, number()), std::pair(Weight::Regular, word())}) {
        painter.setFont(appearance_.type.screen(ScreenText::Figure, weight));
        painter.drawText(QRect(left, 0, width() - left, height()), Qt::AlignVCenter | Qt::AlignLeft, part);
        left += painter.fontMetrics().horizontalAdvance(part) + gap;
    }
}

ResultKeys::ResultKeys(const Appearance& appearance, QWidget* parent)
  : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(between);
    for (std::size_t i = 0; i < resultKeys.size(); ++i) {
        buttons_[i] = new ResultButton(appearance, resultKeys[i]);
        const InspectionResult result = resultKeys[i].result;
        connect(buttons_[i], &QAbstractButton::clicked, this, [this, result] { emit chosen(result); });
        row->addWidget(buttons_[i]);
    }
    row->addStretch(1);
}

void ResultKeys::show(const ResultCounts& counts, bool canChoose) {
    for (std::size_t i = 0; i < resultKeys.size(); ++i) {
        buttons_[i]->setCount(counts.of(resultKeys[i].result));
        buttons_[i]->setEnabled(canChoose);
    }
}

} // namespace loopwright
