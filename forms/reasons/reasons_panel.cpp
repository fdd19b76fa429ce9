// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/reasons/reasons_panel.h"

#include "forms/frame/labels.h"
#include "forms/frame/place_text.h"
#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/reasons/reason_layout.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <cmath>

namespace loopwright {
namespace {

constexpr int side = 14;
constexpr int foldHeight = 30;
constexpr int sentenceLeft = 36;

class ReasonDelegate final : public QStyledItemDelegate {
  public:
    ReasonDelegate(const Appearance& appearance, const ReasonsModel& model, const QListView& list)
      : QStyledItemDelegate(nullptr)
      , appearance_(appearance)
      , model_(model)
      , list_(list) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const int width = list_.viewport()->width();
        const Finding* finding = model_.findingAt(index.row());
        if (!finding) return {width, appearance_.type.scaled(foldHeight)};
        const ReasonLayout layout(appearance_, *finding, model_.isOpen(index.row()), width);
        return {width, static_cast<int>(layout.height())};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        if (const Finding* finding = model_.findingAt(index.row()))
            ReasonLayout(appearance_, *finding, model_.isOpen(index.row()), option.rect.width())
                .draw(*painter, option.rect.topLeft());
        else
            paintFold(*painter, option.rect, index.data().toString());
        if (list_.hasFocus() && index == list_.currentIndex())
            drawFocusRing(*painter, QRectF(option.rect).adjusted(0, 0, 0, -1), appearance_.look());
    }

  private:
    void paintFold(QPainter& painter, const QRect& row, const QString& text) const {
        const Look& look = appearance_.look();
        const int mark = appearance_.type.scaled(mark_size::reasons);
        painter.save();
        drawMark(painter, QRect(row.left() + side, row.center().y() - mark / 2, mark, mark), Mark::Holds,
                 look.holds);
        const QFont font = appearance_.type.screen(ScreenText::Note);
        const QString keys =
            QKeySequence(Qt::CTRL | Qt::Key_Period).toString(QKeySequence::NativeText).replace(u'+', u' ');
        const QSizeF cap = keyCapSize(keys, font);
        drawKeyCap(painter,
                   {row.right() - side - cap.width(), row.center().y() - cap.height() / 2, cap.width(),
                    cap.height()},
                   keys, font, look);
        painter.setFont(appearance_.type.screen(ScreenText::Figure));
        painter.setPen(look.ink);
        painter.drawText(row.adjusted(sentenceLeft, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, text);
        painter.fillRect(QRect(row.left(), row.bottom(), row.width(), 1), look.line);
        painter.restore();
    }

    const Appearance& appearance_;
    const ReasonsModel& model_;
    const QListView& list_;
};

} // namespace

ReasonsList::ReasonsList(const Appearance& appearance, ReasonsModel& model, QWidget* parent)
  : QListView(parent)
  , appearance_(appearance)
  , model_(model) {
    setObjectName(QStringLiteral("reasons"));
    setAccessibleName(tr("Reasons"));
    setFrameShape(QFrame::NoFrame);
    viewport()->setAutoFillBackground(false);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setModel(&model);
    auto* delegate = new ReasonDelegate(appearance, model, *this);
    delegate->setParent(this);
    setItemDelegate(delegate);
    connect(&model, &QAbstractItemModel::dataChanged, this, &QListView::doItemsLayout);
}

void ReasonsList::toggle(const QModelIndex& index) {
    if (!index.isValid()) return;
    const int row = index.row();
    model_.toggle(row);
    setCurrentIndex(model_.index(std::min(row, model_.rowCount() - 1)));
    scrollTo(currentIndex());
}

void ReasonsList::keyPressEvent(QKeyEvent* event) {
    const bool opens =
        event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space;
    if (opens)
        toggle(currentIndex());
    else
        QListView::keyPressEvent(event);
}

void ReasonsList::mouseReleaseEvent(QMouseEvent* event) {
    QListView::mouseReleaseEvent(event);
    if (event->button() == Qt::LeftButton) toggle(indexAt(event->position().toPoint()));
}

void ReasonsList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    doItemsLayout();
}

void ReasonsList::paintEvent(QPaintEvent* event) {
    QListView::paintEvent(event);
    if (model_.rowCount() > 0) return;
    QPainter painter(viewport());
    painter.setFont(appearance_.type.screen(ScreenText::Body));
    painter.setPen(appearance_.look().inkSoft);
    const QString hint = model_.subject().id.isNone()
                             ? tr("Reasons speak about circuits, boards and the supply.")
                             : tr("No check speaks about this.");
    painter.drawText(viewport()->rect().adjusted(side, 0, -side, 0),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, hint);
}

ReasonsPanel::ReasonsPanel(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::panel, Qt::LeftEdge, &Look::lineStrong, parent)
  , appearance_(appearance)
  , model_(new ReasonsModel(appearance, this))
  , list_(new ReasonsList(appearance, *model_, this))
  , title_(new RoleLabel(appearance, ScreenText::PanelTitle, &Look::ink))
  , facts_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft)) {
    auto* heading = new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft, Weight::Semibold);
    heading->setNotation(tr("Reasons"));
    auto* head = new QHBoxLayout;
    head->setContentsMargins(side, 8, 12, 0);
    head->addWidget(heading);
    head->addStretch();
    head->addWidget(new KeyCap(appearance, QStringLiteral("F6")));
    auto* about = new QVBoxLayout;
    about->setContentsMargins(side, 0, side, 8);
    about->setSpacing(1);
    title_->setWordWrap(true);
    facts_->setWordWrap(true);
    about->addWidget(title_);
    about->addWidget(facts_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(head);
    column->addLayout(about);
    column->addWidget(list_, 1);
    setFocusProxy(list_);
}

void ReasonsPanel::show(const SiteViewPtr& view, const Subject& subject) {
    const Subject shown = view ? subject : Subject{};
    title_->setNotation(view && !shown.id.isNone() ? titleOf(view->installation, shown) : QString());
    const Circuit* circuit = view ? loopwright::find(view->installation.circuits, shown.id) : nullptr;
    const Board* board = view ? loopwright::find(view->installation.boards, shown.id) : nullptr;
    facts_->setNotation(circuit ? circuitFacts(*view, *circuit, appearance_.words)
                        : board ? boardFacts(*view, *board, appearance_.words)
                                : QString());
    title_->setVisible(!title_->notation().isEmpty());
    facts_->setVisible(!facts_->notation().isEmpty());
    const int row = list_->currentIndex().row();
    model_->show(view, shown);
    if (row >= 0) list_->setCurrentIndex(model_->index(std::min(row, model_->rowCount() - 1)));
}

void ReasonsPanel::toggleFold() {
    model_->setFolded(!model_->isFolded());
}

} // namespace loopwright
