// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/start_page.h"

#include "forms/frame/labels.h"
#include "forms/look/paint.h"
#include "forms/look/style.h"

#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QListView>
#include <QPainter>
#include <QPushButton>
#include <QStringListModel>
#include <QStyledItemDelegate>

#include <array>

namespace loopwright {
namespace {

constexpr int outerMargin = 34;
constexpr int sideWidth = 330;
constexpr int sideMargin = 26;
constexpr int cardHeight = 56;
constexpr int cardGap = 8;
constexpr int cardSide = 16;
constexpr int cardIcon = 18;
constexpr int signSide = 44;

struct KeyRow {
    const char* what;
    std::array<const char*, 3> keys;
};
/// The keys that carry the work; the menus name all of them.
constexpr std::array keyRows{
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Go to anything"), {"Ctrl", "K"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Next reading, in walking order"), {"Enter"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Next missing reading"), {"Ctrl", "M"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Places, sheet, reasons"), {"F2", "F4", "F6"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Observations"), {"F5"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Note an observation"), {"Ctrl", "O"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Inspection"), {"Ctrl", "I"}},
    KeyRow{QT_TRANSLATE_NOOP("loopwright::StartPage", "Undo"), {"Ctrl", "Z"}},
};

/// A book as a card: its name, and below it the folder that it lies in.
class BookDelegate final : public QStyledItemDelegate {
  public:
    BookDelegate(const Appearance& appearance, QObject* parent)
      : QStyledItemDelegate(parent)
      , appearance_(appearance) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {0, appearance_.type.scaled(cardHeight) + cardGap};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Look& look = appearance_.look();
        const QFileInfo file(index.data().toString());
        const QRect card = option.rect.adjusted(0, 0, -1, -cardGap);
        const bool current = option.state & QStyle::State_HasFocus;
        painter->save();
        painter->fillRect(card, look.sheet);
        painter->setPen(look.line);
        painter->drawRect(card);
        if (current) drawFocusRing(*painter, card.adjusted(0, 0, 1, 1), look);
        appearance_.icon(Icon::Site)
            .paint(painter, card.left() + cardSide, card.center().y() - cardIcon / 2, cardIcon, cardIcon);
        const QRect text = card.adjusted(2 * cardSide + cardIcon, 8, -cardSide, -8);
        painter->setPen(look.ink);
        painter->setFont(appearance_.type.screen(ScreenText::PanelTitle));
        painter->drawText(text, Qt::AlignLeft | Qt::AlignTop, file.completeBaseName());
        painter->setPen(look.inkSoft);
        painter->setFont(appearance_.type.screen(ScreenText::Figure));
        painter->drawText(
            text, Qt::AlignLeft | Qt::AlignBottom,
            painter->fontMetrics().elidedText(file.absolutePath(), Qt::ElideMiddle, text.width()));
        painter->restore();
    }

  private:
    const Appearance& appearance_;
};

} // namespace

StartPage::StartPage(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::window, {}, &Look::line, parent)
  , appearance_(appearance)
  , paths_(new QStringListModel(this))
  , recent_(new QListView)
  , recentHint_(new RoleLabel(appearance, ScreenText::Body, &Look::inkSoft))
  , said_(new RoleLabel(appearance, ScreenText::Body, &Look::fails)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(makeMain(), 1);
    row->addWidget(makeSide());
    setRecentBooks({});
    say({});
}

QWidget* StartPage::makeMain() {
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(outerMargin, 24, outerMargin, 24);
    column->setSpacing(12);

    auto* title = new RoleLabel(appearance_, ScreenText::PageTitle, &Look::ink);
    title->setNotation(tr("Open a book"));
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(8);
    const auto addButton = [&](const QString& text, Icon icon, ButtonKind kind, auto signal) {
        auto* button = new QPushButton(
            appearance_.icon(icon, kind == ButtonKind::Primary ? &Look::accentInk : &Look::ink), text);
        setButtonKind(*button, kind);
        connect(button, &QPushButton::clicked, this, signal);
        buttons->addWidget(button);
    };
    addButton(tr("New book"), Icon::Add, ButtonKind::Primary, [this] { emit newBookWanted(); });
    addButton(tr("Open a book"), Icon::Sheet, ButtonKind::Plain, [this] { emit bookWanted({}); });
    addButton(tr("Take in a site file"), Icon::TakeIn, ButtonKind::Plain, [this] { emit takeInWanted(); });
    buttons->addStretch();

    recent_->setObjectName(QStringLiteral("recent"));
    recent_->setAccessibleName(tr("Books opened last"));
    recent_->setModel(paths_);
    recent_->setItemDelegate(new BookDelegate(appearance_, recent_));
    recent_->setFrameShape(QFrame::NoFrame);
    recent_->viewport()->setAutoFillBackground(false);
    recent_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    recent_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(recent_, &QListView::activated, this,
            [this](const QModelIndex& index) { emit bookWanted(index.data().toString()); });
    connect(recent_, &QListView::clicked, this,
            [this](const QModelIndex& index) { emit bookWanted(index.data().toString()); });

    said_->setWordWrap(true);
    column->addWidget(title);
    column->addLayout(buttons);
    column->addWidget(said_);
    column->addWidget(recentHint_);
    column->addWidget(recent_, 1);
    column->addStretch(); // where there are no books yet
    return page;
}

QWidget* StartPage::makeSide() {
    auto* side = new RoleFrame(appearance_, &Look::panel, Qt::LeftEdge);
    side->setFixedWidth(appearance_.type.scaled(sideWidth));
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(sideMargin, 24, sideMargin, 24);
    column->setSpacing(6);

    auto* about = new QHBoxLayout;
    about->setSpacing(14);
    auto* sign = new QLabel;
    sign->setPixmap(loopwright::windowIcon().pixmap(signSide, signSide));
    auto* words = new QVBoxLayout;
    words->setSpacing(1);
    auto* name = new RoleLabel(appearance_, ScreenText::PageTitle, &Look::ink);
    name->setNotation(QStringLiteral("Loopwright"));
    auto* question = new RoleLabel(appearance_, ScreenText::Body, &Look::inkSoft);
    question->setWordWrap(true);
    question->setNotation(tr("Does device, wiring and load still belong together?"));
    words->addWidget(name);
    words->addWidget(question);
    about->addWidget(sign, 0, Qt::AlignTop);
    about->addLayout(words, 1);
    column->addLayout(about);
    column->addSpacing(18);

    const auto heading = [&](const QString& text) {
        auto* label = new RoleLabel(appearance_, ScreenText::Note, &Look::inkSoft, Weight::Semibold);
        label->setNotation(text);
        column->addWidget(label);
    };
    heading(tr("Keys"));
    for (const KeyRow& keyRow : keyRows) {
        auto* row = new QHBoxLayout;
        row->setSpacing(4);
        auto* what = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink);
        what->setNotation(tr(keyRow.what));
        row->addWidget(what, 1);
        for (const char* key : keyRow.keys)
            if (key) row->addWidget(new KeyCap(appearance_, QString::fromLatin1(key)));
        column->addLayout(row);
    }
    column->addSpacing(18);
    const auto paragraph = [&](const QString& text) {
        auto* label = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink);
        label->setWordWrap(true);
        label->setNotation(text);
        column->addWidget(label);
    };
    heading(tr("Kept safe"));
    paragraph(tr("Every change is saved as it is made, and can be undone."));
    column->addSpacing(18);
    heading(tr("Before you touch"));
    paragraph(tr("Dead tests first. Prove dead at the point of work. This program does not replace "
                 "competence; local codes and "
                 "licensed practice decide."));
    column->addStretch();
    return side;
}

void StartPage::setRecentBooks(const QStringList& paths) {
    paths_->setStringList(paths);
    recent_->setVisible(!paths.isEmpty());
    if (!paths.isEmpty()) recent_->setCurrentIndex(paths_->index(0));
    recentHint_->setNotation(paths.isEmpty()
                                 ? tr("No book was opened here yet. Make a new one, or take in a site file.")
                                 : tr("Opened last"));
}

void StartPage::say(const QString& sentence) {
    said_->setNotation(sentence);
    said_->setVisible(!sentence.isEmpty());
}

} // namespace loopwright
