// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/forms/look/specimen.h"

#include "forms/look/mark.h"
#include "forms/look/paint.h"
#include "forms/look/rich_symbol.h"
#include "forms/look/style.h"
#include "forms/words/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPainter>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QRadioButton>
#include <QScrollBar>
#include <QSplitter>
#include <QTabWidget>
#include <QTableWidget>
#include <QToolButton>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace loopwright {

DrawingSpecimen::DrawingSpecimen(const Look& look, const Type& type, const Icons& icons, QWidget* parent)
  : QWidget(parent)
  , look_(look)
  , type_(type)
  , icons_(icons) {
    setFixedSize(620, 700);
}

void DrawingSpecimen::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_.sheet);
    double y = 12;
    y = paintMarks(painter, y);
    y = paintBars(painter, y);
    y = paintTexts(painter, y);
    paintIcons(painter, y);
}

double DrawingSpecimen::paintMarks(QPainter& painter, double y) {
    const Words words{QLocale::c()};
    double x = 12;
    const auto column = [&](Mark mark, Role ink, Role wash, std::string_view key) {
        const QRectF cell(x, y, 64, 22);
        if (wash) painter.fillRect(cell, look_.*wash);
        drawMark(painter, QRectF(x + 4, y + 5.5, mark_size::cell, mark_size::cell), mark, look_.*ink);
        painter.setFont(type_.screen(ScreenText::Figure, wash ? Weight::Semibold : Weight::Regular));
        painter.setPen(look_.*ink);
        painter.drawText(cell.adjusted(0, 0, -6, 0), Qt::AlignRight | Qt::AlignVCenter,
                         QStringLiteral("41.7"));
        drawMark(painter, QRectF(x, y + 30, mark_size::tree, mark_size::tree), mark, look_.*ink);
        drawMark(painter, QRectF(x + 20, y + 26, mark_size::pageOne, mark_size::pageOne), mark, look_.*ink);
        painter.setFont(type_.screen(ScreenText::Note));
        painter.drawText(QRectF(x, y + 74, 60, 34), Qt::AlignLeft | Qt::TextWordWrap, words.word(key));
        x += 67;
    };
    for (const Verdict verdict :
         {Verdict::Holds, Verdict::Close, Verdict::Fails, Verdict::CannotTell, Verdict::DoesNotApply})
        column(markOf(verdict), inkOf(verdict), washOf(verdict), wordKey(verdict));
    for (const Grade grade : {Grade::MakeSafe, Grade::PutRight, Grade::LookFurther, Grade::WorthImproving})
        column(markOf(grade), inkOf(grade), washOf(grade), wordKey(grade));
    return y + 116;
}

double DrawingSpecimen::paintBars(QPainter& painter, double y) {
    struct Bar {
        std::optional<double> margin;
        Verdict verdict;
    };
    const Bar bars[]{{0.38, Verdict::Holds},
                     {0.04, Verdict::Close},
                     {-0.39, Verdict::Fails},
                     {-9, Verdict::Fails},
                     {std::nullopt, Verdict::CannotTell},
                     {1, Verdict::Holds}};
    double x = 12;
    for (const Bar& bar : bars) {
        drawMarginBar(painter, QRectF(QPointF(x, y), marginBarSize), bar.margin, look_.*inkOf(bar.verdict),
                      look_);
        x += 80;
    }
    y += 30;
    x = 12;
    for (const double share : {0.0, 0.35, 0.8, 1.0, 1.39, 4.0}) {
        const QRectF cell(x, y, 52, 22);
        painter.setPen(look_.line);
        painter.drawRect(cell);
        painter.setPen(look_.ink);
        painter.setFont(type_.screen(ScreenText::Figure));
        painter.drawText(cell.adjusted(0, -2, -6, -2), Qt::AlignRight | Qt::AlignVCenter,
                         QString::number(share * 30));
        drawLoadBar(painter, cell, share, look_);
        x += 80;
    }
    const QRectF missing(x, y, 54, 22);
    painter.fillRect(missing, look_.cannotTellWash);
    drawMissingCorners(painter, missing, look_.cannotTell);
    y += 34;
    x = 12;
    const QFont caps = type_.screen(ScreenText::Note);
    for (const char* key : {"Ctrl K", "F6", "Ctrl", "=", "Enter"}) {
        const QString text = QLatin1String(key);
        const QRectF place(QPointF(x, y), keyCapSize(text, caps));
        drawKeyCap(painter, place, text, caps, look_);
        x += place.width() + 6;
    }
    for (const Hatch hatch : {Hatch::Rising, Hatch::Falling}) {
        drawHatch(painter, QRectF(x + 20, y, 60, 20), hatch, look_.ink, 5, 1);
        x += 80;
    }
    drawFocusRing(painter, QRectF(x + 20, y - 1, 54, 22), look_);
    return y + 34;
}

double DrawingSpecimen::paintTexts(QPainter& painter, double y) {
    struct Line {
        ScreenText role;
        const char* text;
    };
    const Line lines[]{{ScreenText::PageTitle, "Board C, kiln room and long walk"},
                       {ScreenText::PanelTitle, "F1 Kiln, glaze room"},
                       {ScreenText::Body, "Insulation 0.8 MΩ; at least 1.0 MΩ is needed."},
                       {ScreenText::Figure, "1.27  >999  0.54  1 039  −39 %"},
                       {ScreenText::Note, "F1 load, A: computed from the name plate"}};
    for (const Line& line : lines) {
        painter.setFont(type_.screen(line.role));
        painter.setPen(look_.ink);
        painter.drawText(QRectF(12, y, 340, 24), Qt::AlignVCenter, QString::fromUtf8(line.text));
        y += 24;
    }
    double top = y - 100;
    for (const char* notation : {"Z_s ≤ 0.8 · Z_s,max", "R_1+R_2 = 0.30 Ω",
                                 "θ_peak = (I/I_ref)^2 · (1 - e^{-on/τ})", "R_A · I_Δn ≤ 50 V"}) {
        painter.setPen(look_.ink);
        drawSymbol(painter, {370, top}, QString::fromUtf8(notation), type_.screen(ScreenText::Body));
        top += 26;
    }
    return y + 12;
}

double DrawingSpecimen::paintIcons(QPainter& painter, double y) {
    double x = 12;
    for (std::size_t i = 0; i < iconNames().size(); ++i) {
        const QIcon icon = icons_.icon(Icon(i));
        icon.paint(&painter, QRect(static_cast<int>(x), static_cast<int>(y), 24, 24));
        icon.paint(&painter, QRect(static_cast<int>(x) + 4, static_cast<int>(y) + 30, 16, 16),
                   Qt::AlignCenter, QIcon::Disabled);
        x += 40;
        if (x > 580) x = 12, y += 58;
    }
    windowIcon().paint(&painter, QRect(static_cast<int>(x) + 10, static_cast<int>(y), 48, 48));
    return y + 58;
}

namespace {

template <class Widget, class... Arguments>
Widget* named(const char* name, Arguments&&... arguments) {
    auto* widget = new Widget(std::forward<Arguments>(arguments)...);
    widget->setObjectName(QLatin1String(name));
    return widget;
}

QWidget* buttons(const Icons& icons) {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins({});
    auto* plain = named<QPushButton>("plain", QStringLiteral("Keep ours"));
    auto* standard = named<QPushButton>("default", QStringLiteral("Take theirs"));
    standard->setDefault(true);
    auto* off = named<QPushButton>("off", icons.icon(Icon::Undo), QStringLiteral("Undo"));
    off->setEnabled(false);
    auto* primary =
        named<QPushButton>("primary", icons.icon(Icon::Issue, &Look::accentInk), QStringLiteral("Issue"));
    setButtonKind(*primary, ButtonKind::Primary);
    auto* primaryOff = named<QPushButton>("primaryOff", QStringLiteral("Issue"));
    setButtonKind(*primaryOff, ButtonKind::Primary);
    primaryOff->setEnabled(false);
    auto* quiet = named<QToolButton>("quiet");
    quiet->setText(QStringLiteral("Take in"));
    quiet->setIcon(icons.icon(Icon::TakeIn));
    quiet->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    setButtonKind(*quiet, ButtonKind::Quiet);
    for (QWidget* button : std::initializer_list<QWidget*>{plain, standard, off, primary, primaryOff, quiet})
        layout->addWidget(button);
    layout->addStretch();
    return row;
}

QWidget* viewSwitch() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    const char* names[]{"Sheet", "Diagram", "Walk-round", "Since last"};
    for (int i = 0; i < 4; ++i) {
        auto* button = named<QPushButton>(names[i], QLatin1String(names[i]));
        button->setCheckable(true);
        button->setChecked(i == 0);
        setButtonKind(*button, i == 0   ? ButtonKind::SwitchFirst
                               : i == 3 ? ButtonKind::SwitchLast
                                        : ButtonKind::SwitchMiddle);
        layout->addWidget(button);
    }
    layout->addStretch();
    return row;
}

QWidget* fields() {
    auto* grid = new QWidget;
    auto* layout = new QGridLayout(grid);
    layout->setContentsMargins({});
    auto* field = named<QLineEdit>("field", QStringLiteral("Kiln, glaze room"));
    auto* hint = named<QLineEdit>("hint");
    hint->setPlaceholderText(QStringLiteral("Name of the circuit"));
    auto* refused = named<QLineEdit>("refused", QStringLiteral("abc"));
    setRefused(*refused, true);
    auto* fieldOff = named<QLineEdit>("fieldOff", QStringLiteral("issued"));
    fieldOff->setEnabled(false);
    auto* combo = named<QComboBox>("combo");
    combo->addItems({QStringLiteral("TN-C-S"), QStringLiteral("TT")});
    auto* editable = named<QComboBox>("editableCombo");
    editable->setEditable(true);
    editable->addItem(QStringLiteral("C: cable clipped to a wall"));
    auto* notes = named<QPlainTextEdit>("notes", QStringLiteral("The carrier is charred."));
    notes->setFixedHeight(56);
    layout->addWidget(new QLabel(QStringLiteral("Circuit")), 0, 0);
    layout->addWidget(field, 0, 1);
    layout->addWidget(hint, 0, 2);
    layout->addWidget(new QLabel(QStringLiteral("Zs, Ω")), 1, 0);
    layout->addWidget(refused, 1, 1);
    layout->addWidget(fieldOff, 1, 2);
    layout->addWidget(new QLabel(QStringLiteral("Earthing")), 2, 0);
    layout->addWidget(combo, 2, 1);
    layout->addWidget(editable, 2, 2);
    layout->addWidget(new QLabel(QStringLiteral("Notes")), 3, 0, Qt::AlignTop);
    layout->addWidget(notes, 3, 1, 1, 2);
    return grid;
}

QWidget* choices() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins({});
    for (const Qt::CheckState state : {Qt::Unchecked, Qt::PartiallyChecked, Qt::Checked}) {
        auto* box =
            named<QCheckBox>(state == Qt::Unchecked ? "unchecked" : "checked", QStringLiteral("Outdoors"));
        box->setTristate(state == Qt::PartiallyChecked);
        box->setCheckState(state);
        layout->addWidget(box);
    }
    auto* boxOff = named<QCheckBox>("checkOff", QStringLiteral("Off"));
    boxOff->setEnabled(false);
    layout->addWidget(boxOff);
    for (const bool chosen : {false, true}) {
        auto* radio = new QRadioButton(chosen ? QStringLiteral("Ring") : QStringLiteral("Radial"));
        layout->addWidget(radio);
        radio->setChecked(chosen);
    }
    auto* progress = named<QProgressBar>("progress");
    progress->setValue(40);
    layout->addWidget(progress, 1);
    return row;
}

QWidget* views(const Icons& icons) {
    auto* splitter = named<QSplitter>("splitter");
    auto* tree = named<QTreeWidget>("tree");
    tree->setHeaderHidden(true);
    auto* board = new QTreeWidgetItem(tree, {QStringLiteral("Main switchboard")});
    board->setIcon(0, icons.icon(Icon::Board));
    for (const char* name : {"A Hatchel house", "B Long walk west", "C Kiln and walk"}) {
        auto* item = new QTreeWidgetItem(board, {QLatin1String(name)});
        item->setIcon(0, icons.icon(Icon::Board));
    }
    tree->expandAll();
    tree->setCurrentItem(board->child(2));
    auto* table = named<QTableWidget>("table", 20, 3);
    table->setHorizontalHeaderLabels(
        {QStringLiteral("Way"), QStringLiteral("Circuit"), QStringLiteral("Load, A")});
    for (int row = 0; row < table->rowCount(); ++row) {
        table->setItem(row, 1, new QTableWidgetItem(QStringLiteral("Lights, long walk east")));
        table->setItem(row, 2, new QTableWidgetItem(QStringLiteral("41.7")));
        table->item(row, 1)->setCheckState(row % 2 ? Qt::Checked : Qt::Unchecked);
    }
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setCurrentCell(2, 1);
    splitter->addWidget(tree);
    splitter->addWidget(table);
    splitter->setSizes({200, 400});
    splitter->setMinimumHeight(200);
    return splitter;
}

} // namespace

QWidget* controlSpecimen(const Look& look, const Type& type, const Icons& icons) {
    auto* page = new QWidget;
    page->setPalette(palette(look));
    auto* layout = new QVBoxLayout(page);
    auto* menus = named<QMenuBar>("menus");
    QMenu* book = menus->addMenu(QStringLiteral("&Book"));
    book->setObjectName(QStringLiteral("book"));
    book->addAction(icons.icon(Icon::TakeIn), QStringLiteral("Take &in..."),
                    QKeySequence(Qt::CTRL | Qt::Key_T), [] {});
    book->addAction(QStringLiteral("Hand &over..."))->setEnabled(false);
    book->addSeparator();
    QAction* sheet = book->addAction(QStringLiteral("Roomy &rows"));
    sheet->setCheckable(true);
    sheet->setChecked(true);
    book->addMenu(QStringLiteral("&Recent"))->addAction(QStringLiteral("None"));
    for (const char* name : {"&Place", "&Visit", "&Sheet"})
        menus->addMenu(QLatin1String(name));
    layout->setMenuBar(menus);
    auto* title = new QLabel(QStringLiteral("Circuit"));
    title->setFont(type.screen(ScreenText::PanelTitle));
    layout->addWidget(title);
    layout->addWidget(buttons(icons));
    layout->addWidget(viewSwitch());
    layout->addWidget(fields());
    layout->addWidget(choices());
    layout->addWidget(views(icons));
    auto* tabs = named<QTabWidget>("tabs");
    tabs->addTab(new QLabel(QStringLiteral("Figures of the supply")), QStringLiteral("Supply"));
    tabs->addTab(new QLabel, QStringLiteral("Earthing"));
    layout->addWidget(tabs);
    page->resize(620, 700);
    return page;
}

} // namespace loopwright
