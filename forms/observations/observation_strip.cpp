// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/observations/observation_strip.h"

#include "forms/frame/appearance.h"
#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/look/style.h"
#include "forms/observations/observation_model.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int lineHeight = 22;
constexpr int side = 14;
constexpr int gap = 10;
constexpr int gradeWidth = 112;
constexpr int placeWidth = 130;
constexpr int photoWidth = 34;

} // namespace

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
    QRect line = option.rect.adjusted(side, 0, -side, 0);
    painter->setPen(look.line);
    painter->drawLine(line.bottomLeft(), line.bottomRight());

    const double mark = mark_size::strip;
    drawMark(*painter, QRectF(line.left(), line.center().y() - mark / 2 + 0.5, mark, mark), markOf(grade),
             look.*inkOf(grade));
    line.setLeft(line.left() + static_cast<int>(mark) + 6);
    painter->setFont(appearance_.type.screen(ScreenText::Figure, Weight::Semibold));
    painter->setPen(look.*inkOf(grade));
    painter->drawText(line, Qt::AlignVCenter | Qt::AlignLeft, appearance_.words.word(wordKey(grade)));
    line.setLeft(line.left() + appearance_.type.scaled(gradeWidth));

    painter->setFont(appearance_.type.screen(ScreenText::Figure));
    const QRect photos(line.right() - appearance_.type.scaled(photoWidth), line.top(),
                       appearance_.type.scaled(photoWidth), line.height());
    const QRect place(photos.left() - gap - appearance_.type.scaled(placeWidth), line.top(),
                      appearance_.type.scaled(placeWidth), line.height());
    const QRect sentence(line.left(), line.top(), place.left() - gap - line.left(), line.height());
    const QFontMetrics metrics(painter->font());
    painter->setPen(look.ink);
    painter->drawText(sentence, Qt::AlignVCenter | Qt::AlignLeft,
                      metrics.elidedText(index.data().toString(), Qt::ElideRight, sentence.width()));
    painter->setPen(look.inkSoft);
    painter->drawText(place, Qt::AlignVCenter | Qt::AlignRight,
                      metrics.elidedText(index.data(ObservationModel::PlaceRole).toString(), Qt::ElideRight,
                                         place.width()));
    if (const int count = index.data(ObservationModel::PhotoCountRole).toInt(); count > 0) {
        const QIcon icon = appearance_.icon(Icon::Photo, &Look::inkSoft);
        icon.paint(painter, QRect(photos.left(), photos.center().y() - 8, 16, 16));
        painter->drawText(photos, Qt::AlignVCenter | Qt::AlignRight,
                          appearance_.words.number(std::int64_t{count}));
    }
    if (current) drawFocusRing(*painter, QRectF(option.rect), look);
    painter->restore();
}

ObservationStrip::ObservationStrip(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , model_(new ObservationModel(appearance.words, this))
  , list_(new QListView(this))
  , title_(new QLabel(this))
  , count_(new QLabel(this))
  , empty_(new QLabel(this))
  , note_(new QPushButton(tr("Note an observation"), this)) {
    title_->setFont(appearance.type.screen(ScreenText::Body, Weight::Semibold));
    empty_->setText(tr("Nothing observed here. Ctrl+O notes one."));
    empty_->setContentsMargins(side, 4, side, 4);
    note_->setIcon(appearance.icon(Icon::Add));
    setButtonKind(*note_, ButtonKind::Quiet);
    connect(note_, &QPushButton::clicked, this, &ObservationStrip::noteWanted);

    list_->setModel(model_);
    list_->setItemDelegate(new ObservationDelegate(appearance, this));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setAccessibleName(tr("Observations"));
    connect(list_, &QListView::activated, this,
            [this](const QModelIndex& index) { emit openWanted(model_->observation(index)); });
    setFocusProxy(list_);

    auto* head = new QHBoxLayout;
    head->setContentsMargins(side, 4, side, 0);
    head->addWidget(title_);
    head->addSpacing(8);
    head->addWidget(count_);
    head->addStretch(1);
    head->addWidget(note_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(head);
    column->addWidget(empty_);
    column->addWidget(list_, 1);
}

void ObservationStrip::show(const SiteViewPtr& view, Id board) {
    model_->show(view, board);
    const int count = model_->rowCount();
    title_->setText(board.isNone() ? tr("Observations") : tr("Observations on this board"));
    count_->setText(count > 0 ? appearance_.words.number(std::int64_t{count}) : QString());
    empty_->setVisible(count == 0);
    list_->setVisible(count > 0);
    note_->setEnabled(view != nullptr);
}

} // namespace loopwright
