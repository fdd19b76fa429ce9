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
