// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/places/go_to.h"

#include "forms/look/paint.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int rowHeight = 28;
constexpr int side = 10;
constexpr int iconSide = 16;
constexpr int gap = 8;
constexpr int listWidth = 420;
constexpr std::size_t mostMatches = 12;

class MatchDelegate final : public QStyledItemDelegate {
  public:
    MatchDelegate(const Appearance& appearance, QObject* parent)
      : QStyledItemDelegate(parent)
      , appearance_(appearance) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {listWidth, appearance_.type.scaled(rowHeight)};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Look& look = appearance_.look();
        const QRect row = option.rect;
        painter->save();
        if (option.state & QStyle::State_Selected) painter->fillRect(row, look.selection);
        const auto icon = static_cast<Icon>(index.data(MatchesModel::IconRole).toInt());
        appearance_.icon(icon, &Look::inkSoft)
            .paint(painter, row.left() + side, row.center().y() - iconSide / 2, iconSide, iconSide);
        painter->setFont(appearance_.type.screen(ScreenText::Figure));
        const QFontMetrics metrics = painter->fontMetrics();
        const QString where = index.data(MatchesModel::WhereRole).toString();
        const QRect room = row.adjusted(side + iconSide + gap, 0, -side, 0);
        const int whereWidth = std::min(metrics.horizontalAdvance(where), room.width() / 2);
        painter->setPen(look.inkSoft);
        painter->drawText(room, Qt::AlignRight | Qt::AlignVCenter,
                          metrics.elidedText(where, Qt::ElideRight, whereWidth));
        painter->setPen(look.ink);
        const int titleWidth = room.width() - whereWidth - gap;
        painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                          metrics.elidedText(index.data().toString(), Qt::ElideRight, titleWidth));
        painter->restore();
    }

  private:
    const Appearance& appearance_;
};

} // namespace

void MatchesModel::show(std::vector<Match> matches) {
    beginResetModel();
    matches_ = std::move(matches);
    endResetModel();
}

Subject MatchesModel::subjectAt(int row) const {
    return row < 0 || row >= rowCount() ? Subject{} : matches_[static_cast<std::size_t>(row)].subject;
}

int MatchesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(matches_.size());
}

QVariant MatchesModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Match& match = matches_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return match.title;
    if (role == WhereRole) return match.where;
    if (role == IconRole) return static_cast<int>(match.icon);
    if (role == Qt::AccessibleTextRole) return match.title + QStringLiteral(", ") + match.where;
    return {};
}

GoToField::GoToField(const Appearance& appearance, QWidget* parent)
  : QLineEdit(parent)
  , appearance_(appearance)
  , model_(new MatchesModel(this)) {
    setObjectName(QStringLiteral("go-to"));
    setAccessibleName(tr("Go to"));
    setPlaceholderText(tr("Go to"));
    setFont(appearance.type.screen(ScreenText::Body));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setTextMargins(iconSide + gap, 0, 0, 0);
    connect(this, &QLineEdit::textEdited, this, &GoToField::search);
}

QSize GoToField::sizeHint() const {
    return {appearance_.type.scaled(190), appearance_.type.scaled(26)};
}

void GoToField::makeList() {
    list_ = new QListView(window());
    list_->setObjectName(QStringLiteral("go-to-matches"));
    list_->setAccessibleName(tr("Places found"));
    list_->setModel(model_);
    list_->setItemDelegate(new MatchDelegate(appearance_, list_));
    list_->setFocusPolicy(Qt::NoFocus);
    list_->setFrameShape(QFrame::Box);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->hide();
    connect(list_, &QListView::clicked, this, &GoToField::choose);
}

void GoToField::search(const QString& query) {
    if (!list_) makeList();
    model_->show(view_ ? findByWords(view_->installation, query, mostMatches) : std::vector<Match>());
    list_->setVisible(model_->rowCount() > 0);
    if (model_->rowCount() == 0) return;
    list_->setCurrentIndex(model_->index(0));
    const int width = std::min(appearance_.type.scaled(listWidth), window()->width());
    const QPoint below = mapTo(window(), QPoint(0, height() + 2));
    const int left = std::clamp(below.x() + this->width() - width, 0, window()->width() - width);
    const int height = model_->rowCount() * appearance_.type.scaled(rowHeight) + 2;
    list_->setGeometry(left, below.y(), width, std::min(height, window()->height() - below.y()));
    list_->raise();
}

void GoToField::choose(const QModelIndex& index) {
    const Subject subject = model_->subjectAt(index.row());
    if (subject.id.isNone()) return;
    shut();
    emit chosen(subject);
}

void GoToField::shut() {
    clear();
    model_->show({});
    if (list_) list_->hide();
}

void GoToField::keyPressEvent(QKeyEvent* event) {
    const int row = list_ ? list_->currentIndex().row() : -1;
    switch (event->key()) {
    case Qt::Key_Down:
    case Qt::Key_Up: {
        const int next =
            std::clamp(row + (event->key() == Qt::Key_Down ? 1 : -1), 0, std::max(0, model_->rowCount() - 1));
        if (list_) list_->setCurrentIndex(model_->index(next));
        return;
    }
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (row >= 0) choose(model_->index(row));
        return;
    case Qt::Key_Escape:
        shut();
        emit givenUp();
        return;
    default:
        QLineEdit::keyPressEvent(event);
    }
}

void GoToField::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (list_) list_->hide();
}

void GoToField::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    QPainter painter(this);
    appearance_.icon(Icon::GoTo, &Look::inkSoft)
        .paint(&painter, gap, (height() - iconSide) / 2, iconSide, iconSide);
    if (hasFocus()) return;
    const QFont font = appearance_.type.screen(ScreenText::Note);
    const QString keys = QStringLiteral("Ctrl K");
    const QSizeF cap = keyCapSize(keys, font);
    drawKeyCap(painter,
               {width() - cap.width() - gap, (height() - cap.height()) / 2, cap.width(), cap.height()}, keys,
               font, appearance_.look());
}

} // namespace loopwright
