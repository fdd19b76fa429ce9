// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/work_area.h"

#include "forms/frame/change_label.h"
#include "forms/frame/place_head.h"
#include "forms/frame/place_text.h"
#include "forms/frame/side_panel.h"
#include "forms/frame/strip_fold.h"
#include "forms/inspection/inspection_page.h"
#include "forms/inspection/inspection_view.h"
#include "forms/observations/observation_strip.h"
#include "forms/overload/logged_part.h"
#include "forms/overload/overload_page.h"
#include "forms/places/places_panel.h"
#include "forms/reasons/reasons_panel.h"
#include "forms/records/record_form.h"
#include "forms/sheet/sheet_view.h"

#include <QKeyEvent>
#include <QListView>
#include <QSettings>
#include <QSplitter>
#include <QStackedWidget>
#include <QTreeView>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int placesWidth = 200, placesLeast = 160;
constexpr int reasonsWidth = 372, reasonsLeast = 320;
/// Below these widths of the window a part gives way to the sheet.
constexpr int roomForReasons = 1200, roomForPlaces = 1000, roomForStrip = 900;

const QString acrossKey = QStringLiteral("parts/across");
const QString downKey = QStringLiteral("parts/down");
const QString groupsKey = QStringLiteral("sheet/groups");

/// The first board that has circuits, otherwise the first.
Id firstBoard(const Installation& installation) {
    for (const Board& board : installation.boards)
        for (const Circuit& circuit : installation.circuits)
            if (circuit.board == board.id) return board.id;
    return installation.boards.empty() ? Id{} : installation.boards.front().id;
}

} // namespace

WorkArea::WorkArea(const Appearance& appearance, IdSource& ids, ChangeDoor door, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , ids_(ids)
  , door_(std::move(door))
  , places_(new PlacesPanel(appearance))
  , reasons_(new ReasonsPanel(appearance))
  , head_(new PlaceHead(appearance))
  , model_(new SheetModel(appearance, ids, door_, this))
  , sheet_(new SheetView(appearance, *model_))
  , form_(new RecordForm(appearance, door_, ids))
  , inspection_(new InspectionPage(appearance, ids, door_))
  , overload_(new OverloadPage(appearance, ids, door_))
  , strip_(new ObservationStrip(appearance))
  , status_(new StatusLine(appearance))
  , pages_(new QStackedWidget)
  , across_(new QSplitter(Qt::Horizontal))
  , down_(new QSplitter(Qt::Vertical)) {
    assemble();
    connectParts();
}

void WorkArea::assemble() {
    pages_->addWidget(sheet_);
    pages_->addWidget(form_);
    pages_->addWidget(inspection_);
    pages_->addWidget(overload_);
    auto* middle = new QWidget;
    auto* middleColumn = new QVBoxLayout(middle);
    middleColumn->setContentsMargins(0, 0, 0, 0);
    middleColumn->setSpacing(0);
    middleColumn->addWidget(head_);
    middleColumn->addWidget(down_, 1);
    down_->addWidget(pages_);
    down_->addWidget(strip_);
    down_->setStretchFactor(0, 1);
    places_->setMinimumWidth(placesLeast);
    reasons_->setMinimumWidth(reasonsLeast);
    across_->addWidget(places_);
    across_->addWidget(middle);
    across_->addWidget(reasons_);
    across_->setStretchFactor(1, 1);
    across_->setSizes({placesWidth, 794, reasonsWidth});
    for (QSplitter* splitter : {across_, down_}) {
        splitter->setChildrenCollapsible(false);
        splitter->setHandleWidth(1);
    }
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(across_, 1);
    column->addWidget(status_);
    placesSide_ = new SidePanel(*places_, *across_, Qt::LeftEdge, placesWidth, this);
    reasonsSide_ = new SidePanel(*reasons_, *across_, Qt::RightEdge, reasonsWidth, this);
    stripFold_ = new StripFold(*strip_, *down_, appearance_.type, this);
    for (QWidget* part : std::initializer_list<QWidget*>{&places_->tree(), &places_->visits(),
                                                         &reasons_->list(), &strip_->list(), sheet_})
        part->installEventFilter(this);
}

void WorkArea::connectParts() {
    connect(places_, &PlacesPanel::placeChosen, this, &WorkArea::choosePlace);
    connect(places_, &PlacesPanel::entered, this, &WorkArea::enterPlace);
    connect(places_, &PlacesPanel::visitChosen, this, &WorkArea::visitWanted);
    connect(sheet_, &SheetView::currentCellChanged, this, [this] {
        describeHere();
        reasons_->show(view_, reasonsSubject());
    });
    connect(sheet_, &SheetView::refused, status_, &StatusLine::say);
    connect(form_, &RecordForm::recordWanted, this, &WorkArea::openForm);
    connect(form_, &RecordForm::photoWanted, this, &WorkArea::photoWanted);
    connect(form_, &RecordForm::closed, this, &WorkArea::toSheet);
    connect(inspection_, &InspectionPage::refused, status_, &StatusLine::say);
    connect(inspection_, &InspectionPage::described, status_, &StatusLine::describeCell);
    connect(inspection_, &InspectionPage::left, this, &WorkArea::toSheet);
    connect(overload_, &OverloadPage::left, this, &WorkArea::toSheet);
    connect(&overload_->logged(), &LoggedPart::logWanted, this, &WorkArea::logWanted);
    connect(&overload_->logged(), &LoggedPart::openWanted, this,
            [this](const Id& log) { openForm(RecordKind::CurrentLog, log); });
    connect(strip_, &ObservationStrip::openWanted, this,
            [this](Id observation) { openForm(RecordKind::Observation, observation); });
    connect(strip_, &ObservationStrip::noteWanted, this, &WorkArea::noteObservation);
}

bool WorkArea::isSheetShown() const {
    return pages_->currentWidget() == sheet_;
}

bool WorkArea::isInspectionShown() const {
    return pages_->currentWidget() == inspection_;
}

bool WorkArea::isOverloadShown() const {
    return pages_->currentWidget() == overload_;
}

Subject WorkArea::shown() const {
    if (isSheetShown()) return {RecordKind::Board, board_};
    if (isInspectionShown()) return {RecordKind::InspectionOutcome, {}};
    if (isOverloadShown()) return {RecordKind::Circuit, overload_->circuit()};
    return {form_->kind(), form_->record()};
}

void WorkArea::showInMiddle(QWidget* page) {
    pages_->setCurrentWidget(page);
    place_ = shown();
    refreshMiddle();
}

void WorkArea::describeHere() {
    if (isInspectionShown()) return inspection_->tellItem();
    status_->describeCell(isSheetShown() ? model_->describe(sheet_->currentIndex()) : QString());
}

void WorkArea::show(const SiteViewPtr& view, const BookState& book) {
    view_ = view;
    if (view && !loopwright::find(view->installation.boards, board_)) board_ = firstBoard(view->installation);
    model_->show(view, board_);
    if (form_->isOpen()) form_->setView(view);
    inspection_->show(view);
    if (isOverloadShown()) overload_->show(view, overload_->circuit());
    if (isSheetShown() && place_.kind == RecordKind::Board) place_ = shown();
    refreshMiddle();
    status_->show(view, book);
}

void WorkArea::refreshMiddle() {
    places_->show(view_, place_);
    head_->show(view_, {RecordKind::Board, board_});
    head_->setVisible(isSheetShown());
    strip_->show(view_, boardInView());
    reasons_->show(view_, reasonsSubject());
    describeHere();
}

/// The record that Reasons speaks of: the one whose form is open, otherwise the current circuit; the board
/// while it is chosen in Places, and where it has no circuits.
Subject WorkArea::reasonsSubject() const {
    if (!isSheetShown()) return shown();
    const Id circuit = sheet_->currentCircuit();
    if (boardInHand_ || circuit.isNone()) return shown();
    return {RecordKind::Circuit, circuit};
}

/// The board whose observations are shown; none: those of the whole site.
Id WorkArea::boardInView() const {
    if (!view_ || place_ == Subject{RecordKind::Observation, {}}) return {};
    return boardOf(view_->installation, shown().id);
}

void WorkArea::goTo(const Subject& subject) {
    if (!view_) return;
    if (const Id board = boardOf(view_->installation, subject.id); !board.isNone()) showBoard(board);
    if (const Id circuit = circuitOf(view_->installation, subject.id); !circuit.isNone())
        sheet_->setCurrentCircuit(circuit);
    if (subject.kind == RecordKind::Board || subject.kind == RecordKind::Circuit)
        toSheet();
    else
        openForm(subject.kind, subject.id);
}

void WorkArea::showBoard(Id board) {
    if (board == board_) return;
    board_ = board;
    model_->show(view_, board_);
}

/// Shows what was chosen in Places and leaves the keyboard there.
void WorkArea::choosePlace(const Subject& subject) {
    QWidget* page = form_;
    switch (subject.kind) {
    case RecordKind::Observation:
        page = pages_->currentWidget(); // the strip shows them all
        break;
    case RecordKind::InspectionOutcome:
        page = inspection_;
        break;
    case RecordKind::Board:
        page = sheet_;
        showBoard(subject.id);
        break;
    case RecordKind::Instrument:
        form_->open(view_, RecordKind::Visit, view_->visit);
        break;
    default:
        form_->open(view_, subject.kind, subject.id);
    }
    pages_->setCurrentWidget(page);
    place_ = subject;
    refreshMiddle();
}

/// The keyboard goes on to what was chosen in Places.
void WorkArea::enterPlace() {
    if (place_ == Subject{RecordKind::Observation, {}}) return toObservations();
    if (isSheetShown()) return toSheet();
    if (isInspectionShown()) return inspection_->setFocus();
    if (isOverloadShown()) return overload_->setFocus();
    form_->takeKeyboard();
}

void WorkArea::openForm(RecordKind kind, Id id) {
    if (!view_ || id.isNone()) return;
    form_->open(view_, kind, id);
    showInMiddle(form_);
    form_->takeKeyboard();
}

void WorkArea::openCircuit() {
    openForm(RecordKind::Circuit, sheet_->currentCircuit());
}

/// Of the circuit in hand.
void WorkArea::openOverload() {
    const Id circuit = shown().kind == RecordKind::Circuit ? shown().id : sheet_->currentCircuit();
    if (!view_ || circuit.isNone()) return;
    overload_->show(view_, circuit);
    showInMiddle(overload_);
    overload_->setFocus();
}

void WorkArea::openBoard() {
    openForm(RecordKind::Board, board_);
}

void WorkArea::openVisit() {
    openForm(RecordKind::Visit, view_ ? view_->visit : Id{});
}

void WorkArea::openInspection() {
    if (!view_) return;
    showInMiddle(inspection_);
    inspection_->setFocus();
}

void WorkArea::noteObservation() {
    if (!view_) return;
    Observation fresh;
    fresh.id = ids_.next();
    fresh.visit = view_->visit;
    if (!isInspectionShown()) fresh.board = board_;
    if (isSheetShown()) fresh.circuit = sheet_->currentCircuit();
    if (isOverloadShown()) fresh.circuit = overload_->circuit();
    const auto* circuit = loopwright::find(view_->installation.circuits, fresh.circuit);
    const auto* board = loopwright::find(view_->installation.boards, fresh.board);
    const std::string place = circuit ? pathOf(view_->installation, *circuit)
                              : board ? pathOf(view_->installation, *board)
                                      : view_->installation.site.name;
    const QString name = tr("Observation at %1").arg(text(place));
    if (const auto done = door_({addedLabel(utf8(name)), {insertRecord(fresh)}}); !done)
        return status_->say(appearance_.words.sentence(done.error()));
    openForm(RecordKind::Observation, fresh.id);
}

void WorkArea::nextMissing() {
    if (isInspectionShown()) {
        inspection_->setFocus();
        if (!inspection_->list().goToNextOpen()) status_->say(tr("Every item has been looked at."));
        return;
    }
    toSheet();
    if (!sheet_->goToNextMissing()) status_->say(tr("No reading is missing on this board."));
}

void WorkArea::toPlaces() {
    placesSide_->reveal();
}

void WorkArea::toReasons() {
    reasonsSide_->reveal();
}

void WorkArea::toObservations() {
    stripFold_->reveal();
    if (!strip_->list().isVisible()) status_->say(tr("Nothing observed here."));
}

void WorkArea::toSheet() {
    if (!isSheetShown() || place_ != Subject{RecordKind::Board, board_}) showInMiddle(sheet_);
    sheet_->setFocus();
}

/// Esc gives the keyboard back to the sheet; where the keyboard comes to, Reasons follows.
bool WorkArea::eventFilter(QObject* watched, QEvent* event) {
    const bool isSheet = watched == sheet_, isTree = watched == &places_->tree();
    if (event->type() == QEvent::KeyPress && !isSheet &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        toSheet();
        return true;
    }
    if (event->type() == QEvent::FocusIn && (isSheet || isTree) && boardInHand_ != isTree) {
        boardInHand_ = isTree;
        reasons_->show(view_, reasonsSubject());
    }
    return QWidget::eventFilter(watched, event);
}

void WorkArea::fold() {
    reasonsSide_->setFloating(width() < appearance_.type.scaled(roomForReasons));
    placesSide_->setFloating(width() < appearance_.type.scaled(roomForPlaces));
    stripFold_->setNarrow(width() < appearance_.type.scaled(roomForStrip));
}

void WorkArea::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    // What has no room goes before the splitter squeezes it; what has room again comes back once the layout
    // has placed the splitter.
    if (width() < appearance_.type.scaled(roomForReasons)) reasonsSide_->setFloating(true);
    if (width() < appearance_.type.scaled(roomForPlaces)) placesSide_->setFloating(true);
    QMetaObject::invokeMethod(this, &WorkArea::fold, Qt::QueuedConnection);
}

void WorkArea::save(QSettings& settings) const {
    if (!reasonsSide_->isFloating()) settings.setValue(acrossKey, across_->saveState());
    if (!stripFold_->isNarrow()) settings.setValue(downKey, down_->saveState());
    QVariantMap groups;
    for (const auto& [group, shown] : sheet_->choices())
        groups.insert(QString::number(static_cast<int>(group)), shown);
    settings.setValue(groupsKey, groups);
}

void WorkArea::restore(const QSettings& settings) {
    across_->restoreState(settings.value(acrossKey).toByteArray());
    down_->restoreState(settings.value(downKey).toByteArray());
    for (QSplitter* splitter : {across_, down_})
        splitter->setHandleWidth(1);
    std::map<SheetGroup, bool> choices;
    const QVariantMap groups = settings.value(groupsKey).toMap();
    for (auto group = groups.begin(); group != groups.end(); ++group) {
        const int number = group.key().toInt();
        if (number > 0 && number < sheetGroupCount)
            choices[static_cast<SheetGroup>(number)] = group.value().toBool();
    }
    sheet_->setChoices(std::move(choices));
}

} // namespace loopwright
