// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/observations/observation_strip.h"

#include "forms/frame/labels.h"
#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/look/style.h"
#include "forms/observations/observation_model.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QListView>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int lineHeight = 22;
constexpr int side = 14;
constexpr int markGap = 6;
constexpr int gap = 10;
constexpr int afterGrade = 14;
constexpr int mostPlaceWidth = 130;
constexpr int photoWidth = 34;

QFont gradeFont(const Appearance& appearance) {
    return appearance.type.screen(ScreenText::Figure, Weight::Semibold);
}

/// Sentences begin at one line, whatever the grades are called.
int widestGrade(const Appearance& appearance) {
    const QFontMetrics metrics(gradeFont(appearance));
    int width = 0;
    for (const Choice& choice : choicesOf<Grade>().choices)
        width = std::max(width, metrics.horizontalAdvance(
                                    appearance.words.word(wordKey(static_cast<Grade>(choice.value)))));
    return width;
}

} // namespace

ObservationLine observationLine(const Appearance& appearance, const QRect& row, const QString& place) {
    const QRect line = row.adjusted(side, 0, -side, 0);
    const QFontMetrics metrics(appearance.type.screen(ScreenText::Figure));
    const int mark = static_cast<int>(mark_size::strip);
    ObservationLine parts{line, line, line, line, line};
    parts.mark = {line.left(), line.center().y() - mark / 2, mark, mark};
    parts.grade.setLeft(line.left() + mark + markGap);
    parts.grade.setWidth(widestGrade(appearance));
    parts.photos.setLeft(line.right() - appearance.type.scaled(photoWidth));
    parts.place.setRight(parts.photos.left() - gap);
    parts.place.setLeft(parts.place.right() -
                        std::min(metrics.horizontalAdvance(place), appearance.type.scaled(mostPlaceWidth)));
    parts.sentence.setLeft(parts.grade.right() + afterGrade);
    parts.sentence.setRight(parts.place.left() - gap);
    return parts;
}

ObservationDelegate::ObservationDelegate(const Appearance& appearance, QObject* parent)
  : QStyledItemDelegate(parent)
  , appearance_(appearance) {}

QSize ObservationDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {0, appearance_.type.scaled(lineHeight)};
}

void ObservationDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                                const QModelIndex& index) const {
    const Look& look = appearance_.look();
    const auto grade = static_cast<Grade>(index.data(ObservationModel::GradeRole).toInt());
    const bool current = option.state & QStyle::State_HasFocus && option.state & QStyle::State_Selected;
    painter->save();
    if (current) painter->fillRect(option.rect, look.selection);
    const QString place = index.data(ObservationModel::PlaceRole).toString();
    const ObservationLine line = observationLine(appearance_, option.rect, place);
    painter->setPen(look.line);
    painter->drawLine(line.mark.left(), option.rect.bottom(), line.photos.right(), option.rect.bottom());

    drawMark(*painter, line.mark, markOf(grade), look.*inkOf(grade));
    painter->setFont(gradeFont(appearance_));
    painter->setPen(look.*inkOf(grade));
    painter->drawText(line.grade, Qt::AlignVCenter | Qt::AlignLeft, appearance_.words.word(wordKey(grade)));

    painter->setFont(appearance_.type.screen(ScreenText::Figure));
    const auto write = [&](const QRect& room, Qt::Alignment edge, const QString& text) {
        painter->drawText(room, static_cast<int>(Qt::AlignVCenter | edge),
                          painter->fontMetrics().elidedText(text, Qt::ElideRight, room.width()));
    };
    painter->setPen(look.ink);
    write(line.sentence, Qt::AlignLeft, index.data().toString());
    painter->setPen(look.inkSoft);
    write(line.place, Qt::AlignRight, place);
    if (const int count = index.data(ObservationModel::PhotoCountRole).toInt(); count > 0) {
        const QIcon icon = appearance_.icon(Icon::Photo, &Look::inkSoft);
        icon.paint(painter, QRect(line.photos.left(), line.photos.center().y() - 8, 16, 16));
        write(line.photos, Qt::AlignRight, appearance_.words.number(std::int64_t{count}));
    }
    if (current) drawFocusRing(*painter, QRectF(option.rect), look);
    painter->restore();
}

ObservationStrip::ObservationStrip(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::panel, {}, &Look::line, parent)
  , appearance_(appearance)
  , model_(new ObservationModel(appearance.words, this))
  , list_(new QListView)
  , title_(new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft, Weight::Semibold))
  , count_(new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft))
  , empty_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft))
  , note_(new QToolButton) {
    empty_->setNotation(tr("Nothing observed here. Ctrl+O notes one."));
    empty_->setContentsMargins(side, 4, side, 4);
    note_->setText(tr("Note an observation"));
    note_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    note_->setIcon(appearance.icon(Icon::Add));
    note_->setFocusPolicy(Qt::NoFocus); // it has its own key
    setButtonKind(*note_, ButtonKind::Quiet);
    connect(note_, &QToolButton::clicked, this, &ObservationStrip::noteWanted);

    list_->setModel(model_);
    list_->setItemDelegate(new ObservationDelegate(appearance, this));
    list_->setFrameShape(QFrame::NoFrame);
    list_->viewport()->setAutoFillBackground(false);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setObjectName(QStringLiteral("observations"));
    list_->setAccessibleName(tr("Observations"));
    connect(list_, &QListView::activated, this,
            [this](const QModelIndex& index) { emit openWanted(model_->observation(index)); });
    setFocusProxy(list_);

    auto* head = new QHBoxLayout;
    head->setContentsMargins(side, 4, 12, 0);
    head->addWidget(title_);
    head->addSpacing(8);
    head->addWidget(count_);
    head->addSpacing(8);
    head->addWidget(new KeyCap(appearance, QStringLiteral("F5")));
    head->addStretch(1);
    head->addWidget(note_);
    head->addWidget(new KeyCap(appearance, QStringLiteral("Ctrl O")));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 4);
    column->setSpacing(2);
    column->addLayout(head);
    column->addWidget(empty_);
    column->addWidget(list_, 1);
    column->addStretch(0);
}

void ObservationStrip::show(const SiteViewPtr& view, Id board) {
    model_->show(view, board);
    const int count = model_->rowCount();
    title_->setNotation(board.isNone() ? tr("Observations") : tr("Observations on this board"));
    count_->setNotation(count > 0 ? appearance_.words.number(std::int64_t{count}) : QString());
    note_->setEnabled(view != nullptr);
    showParts();
}

void ObservationStrip::setFolded(bool folded) {
    folded_ = folded;
    showParts();
}

void ObservationStrip::showParts() {
    const bool isEmpty = model_->rowCount() == 0;
    empty_->setVisible(isEmpty && !folded_);
    list_->setVisible(!isEmpty && !folded_);
}

/// Icons are drawn in the inks of one look.
void ObservationStrip::changeEvent(QEvent* event) {
    RoleFrame::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) note_->setIcon(appearance_.icon(Icon::Add));
}

} // namespace loopwright
