// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/places/places_panel.h"

#include "forms/frame/labels.h"
#include "forms/places/place_delegate.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QListView>
#include <QTreeView>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int side = 12;
constexpr int visitHeight = 24;
constexpr int mostVisitsInSight = 6;

RoleLabel* headingLabel(const Appearance& appearance, const QString& text) {
    auto* label = new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft, Weight::Semibold);
    label->setNotation(text);
    return label;
}

RoleFrame* hairline(const Appearance& appearance) {
    auto* line = new RoleFrame(appearance, &Look::line);
    line->setFixedHeight(1);
    return line;
}

/// A framed caution in two voices: what it is about, and what to do.
RoleFrame* cautionBox(const Appearance& appearance) {
    const Qt::Edges all = Qt::TopEdge | Qt::LeftEdge | Qt::RightEdge | Qt::BottomEdge;
    auto* box = new RoleFrame(appearance, &Look::panel, all, &Look::lineStrong);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(10, 8, 10, 8);
    column->setSpacing(2);
    auto* title = new RoleLabel(appearance, ScreenText::Note, &Look::ink, Weight::Semibold);
    title->setNotation(PlacesPanel::tr("Before you touch"));
    auto* advice = new RoleLabel(appearance, ScreenText::Note, &Look::ink);
    advice->setWordWrap(true);
    advice->setNotation(
        PlacesPanel::tr("Dead tests first. Prove dead at the point of work. This program does not replace "
                        "competence."));
    column->addWidget(title);
    column->addWidget(advice);
    return box;
}

void setUpList(QAbstractItemView& view) {
    view.setFrameShape(QFrame::NoFrame);
    view.viewport()->setAutoFillBackground(false);
    view.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    view.setEditTriggers(QAbstractItemView::NoEditTriggers);
}

} // namespace

PlacesPanel::PlacesPanel(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::panel, Qt::RightEdge, &Look::line, parent)
  , appearance_(appearance)
  , places_(new PlacesModel(appearance, this))
  , visitsModel_(new VisitsModel(appearance, this))
  , tree_(new QTreeView)
  , visits_(new QListView) {
    setUpList(*tree_);
    tree_->setObjectName(QStringLiteral("places"));
    tree_->setAccessibleName(tr("Places"));
    tree_->setModel(places_);
    tree_->setItemDelegate(new PlaceDelegate(appearance, tree_));
    tree_->setHeaderHidden(true);
    tree_->setRootIsDecorated(false);
    tree_->setIndentation(0);
    tree_->setUniformRowHeights(true);
    tree_->installEventFilter(this);
    setUpList(*visits_);
    visits_->setObjectName(QStringLiteral("visits"));
    visits_->setAccessibleName(tr("Visits"));
    visits_->setModel(visitsModel_);
    visits_->setItemDelegate(new PlaceDelegate(appearance, visits_));

    auto* head = new QHBoxLayout;
    head->setContentsMargins(side, 8, side - 1, 4);
    head->addWidget(headingLabel(appearance, tr("Places")));
    head->addStretch();
    head->addWidget(new KeyCap(appearance, QStringLiteral("F2")));
    auto* below = new QVBoxLayout;
    below->setContentsMargins(side, 8, side - 1, 4);
    below->setSpacing(8);
    below->addWidget(hairline(appearance));
    below->addWidget(headingLabel(appearance, tr("Visits")));
    auto* foot = new QVBoxLayout;
    foot->setContentsMargins(side, 10, side - 1, 10);
    foot->addWidget(cautionBox(appearance));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(head);
    column->addWidget(tree_, 3);
    column->addLayout(below);
    column->addWidget(visits_);
    column->addStretch(1);
    column->addLayout(foot);
    setFocusProxy(tree_);

    connect(tree_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) {
                if (!showing_ && index.isValid()) emit placeChosen(places_->subjectAt(index));
            });
    connect(visits_, &QListView::clicked, this,
            [this](const QModelIndex& index) { emit visitChosen(visitsModel_->visitAt(index.row())); });
    connect(visits_, &QListView::activated, this,
            [this](const QModelIndex& index) { emit visitChosen(visitsModel_->visitAt(index.row())); });
}

void PlacesPanel::show(const SiteViewPtr& view, const Subject& current) {
    showing_ = true;
    places_->show(view);
    tree_->expandAll();
    tree_->setCurrentIndex(places_->indexOf(current));
    visitsModel_->show(view);
    if (view) visits_->setCurrentIndex(visitsModel_->index(visitsModel_->rowOf(view->visit)));
    fitVisits();
    showing_ = false;
}

/// As high as its visits are many, up to a few.
void PlacesPanel::fitVisits() {
    const int rows = std::clamp(visitsModel_->rowCount(), 1, mostVisitsInSight);
    visits_->setFixedHeight(rows * appearance_.type.scaled(visitHeight));
}

bool PlacesPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == tree_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            emit entered();
            return true;
        }
    }
    return RoleFrame::eventFilter(watched, event);
}

} // namespace loopwright
