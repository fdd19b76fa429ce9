// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/main_window.h"

#include "app/window/new_site.h"
#include "app/window/take_in.h"
#include "forms/frame/change_label.h"
#include "forms/frame/start_page.h"
#include "forms/frame/work_area.h"
#include "forms/look/style.h"
#include "forms/overload/logged_part.h"
#include "forms/overload/overload_page.h"
#include "forms/places/go_to.h"
#include "forms/reasons/reasons_panel.h"
#include "forms/sheet/sheet_view.h"
#include "forms/sums/sums_page.h"
#include "forms/words/notation.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDateTime>
#include <QFile>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QMenuBar>
#include <QSettings>
#include <QStackedWidget>
#include <QToolButton>

namespace loopwright {
namespace {

constexpr int designWidth = 1366, designHeight = 768;
constexpr int barHeight = 34;
constexpr int mostRecent = 8;
const QString recentKey = QStringLiteral("books/recent");
const QString geometryKey = QStringLiteral("window/geometry");
const QString darkKey = QStringLiteral("window/dark");

QString actionText(const char* text) {
    return QCoreApplication::translate("Actions", text);
}

std::filesystem::path pathOf(const QString& path) {
    return std::filesystem::path(utf8(path));
}

BookState stateOf(const OpenBook& book, const QLocale& locale) {
    BookState state{{}, book.journalCount()};
    if (const auto at = book.savedAt())
        state.savedAt = locale.toString(QDateTime::fromSecsSinceEpoch(at->time_since_epoch().count()).time(),
                                        QStringLiteral("HH:mm:ss"));
    return state;
}

} // namespace

MainWindow::MainWindow(const WindowSurroundings& surroundings)
  : around_(surroundings)
  , pages_(new QStackedWidget)
  , start_(new StartPage(around_.appearance))
  , area_(new WorkArea(around_.appearance, around_.ids,
                       [this](const Change& change) -> tl::expected<void, Message> {
                           return book_ ? book_->carryOut(change) : tl::expected<void, Message>();
                       }))
  , goTo_(new GoToField(around_.appearance))
  , sums_(new SumsPage(around_.appearance))
  , desk_(new ReportDesk(around_, *pages_, *this)) {
    setWindowIcon(loopwright::windowIcon()); // a widget has a function of the same name
    makeActions();
    setMenuWidget(makeCommandBar());
    pages_->addWidget(start_);
    pages_->addWidget(area_);
    pages_->addWidget(sums_);
    setCentralWidget(pages_);
    setMinimumSize(640, 400);
    resize(designWidth, designHeight);

    connect(start_, &StartPage::newBookWanted, this, &MainWindow::newBook);
    connect(start_, &StartPage::takeInWanted, this, &MainWindow::takeIn);
    connect(start_, &StartPage::bookWanted, this, [this](const QString& path) {
        const QString chosen = path.isEmpty() ? around_.questions.whichBook(this) : path;
        if (!chosen.isEmpty()) openBook(chosen);
    });
    connect(goTo_, &GoToField::chosen, area_, &WorkArea::goTo);
    connect(goTo_, &GoToField::givenUp, area_, &WorkArea::toSheet);
    connect(sums_, &SumsPage::closed, this, &MainWindow::showBook);
    connect(desk_, &ReportDesk::closeWanted, this, [this] { run(ActionId::ToSheet); });
    connect(desk_, &ReportDesk::said, this, &MainWindow::say);
    connect(area_, &WorkArea::visitWanted, this, [this](Id visit) { report(book_->showVisit(visit)); });
    connect(area_, &WorkArea::photoWanted, this, &MainWindow::addPicture);
    connect(area_, &WorkArea::logWanted, this, &MainWindow::addLog);

    restoreGeometry(around_.settings.value(geometryKey).toByteArray());
    area_->restore(around_.settings);
    start_->setRecentBooks(around_.settings.value(recentKey).toStringList());
    useLook(around_.settings.value(darkKey).toBool());
    showBook();
}

MainWindow::~MainWindow() = default;

void MainWindow::makeActions() {
    for (const ActionSpec& spec : actionSpecs()) {
        auto* made = new QAction(actionText(spec.text), this);
        made->setShortcut(QKeySequence(QString::fromLatin1(spec.keys), QKeySequence::PortableText));
        if (spec.onSheet) made->setShortcutContext(Qt::WidgetShortcut);
        connect(made, &QAction::triggered, this, [this, id = spec.id] { run(id); });
        actions_[spec.id] = made;
        // Actions of a window count in all of it; those of the sheet only there, so that an editor keeps its
        // keys.
        if (spec.onSheet)
            area_->sheet().addAction(made);
        else
            addAction(made);
    }
    action(ActionId::DarkLook).setCheckable(true);
    action(ActionId::TakeIn).setIconText(tr("Take in"));
}

QWidget* MainWindow::makeCommandBar() {
    auto* bar = new RoleFrame(around_.appearance, &Look::window, Qt::BottomEdge);
    bar->setFixedHeight(around_.appearance.type.scaled(barHeight));
    auto* menus = new QMenuBar;
    std::map<MenuId, QMenu*> made;
    for (const ActionSpec& spec : actionSpecs()) {
        QMenu*& menu = made[spec.menu];
        if (!menu) menu = menus->addMenu(actionText(menuTitle(spec.menu)));
        if (spec.startsGroup) menu->addSeparator();
        menu->addAction(actions_.at(spec.id));
    }
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(6, 0, 8, 1);
    row->setSpacing(6);
    row->addWidget(menus);
    row->addStretch(1);
    row->addWidget(goTo_);
    for (const ActionId id : {ActionId::Undo, ActionId::Redo, ActionId::TakeIn}) {
        auto* button = new QToolButton;
        button->setDefaultAction(actions_.at(id));
        button->setFocusPolicy(Qt::NoFocus);
        if (id == ActionId::TakeIn) button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        setButtonKind(*button, ButtonKind::Quiet);
        row->addWidget(button);
    }
    return bar;
}

void MainWindow::run(ActionId id) {
    switch (id) {
    case ActionId::NewBook:
        return newBook();
    case ActionId::OpenBook:
        if (const QString path = around_.questions.whichBook(this); !path.isEmpty()) openBook(path);
        return;
    case ActionId::TakeIn:
        return takeIn();
    case ActionId::CloseBook:
        return closeBook();
    case ActionId::Quit:
        close();
        return;
    case ActionId::Sums:
        return showSums();
    case ActionId::DarkLook:
        return useLook(action(id).isChecked());
    default:
        break;
    }
    if (!book_) return;
    if (id == ActionId::Undo) return report(book_->undo());
    if (id == ActionId::Redo) return report(book_->redo());
    if (!book_->view()) return;
    const bool isAboutReport =
        id == ActionId::ShowReport || id == ActionId::PrintReport || id == ActionId::WritePdf;
    if (pages_->currentWidget() == sums_ || (desk_->page() && !isAboutReport))
        showBook(); // which puts sums and report away
    runInBook(id);
}

void MainWindow::runInBook(ActionId id) {
    switch (id) {
    case ActionId::GoTo:
        return goTo_->setFocus();
    case ActionId::ToPlaces:
        return area_->toPlaces();
    case ActionId::ToSheet:
        return area_->toSheet();
    case ActionId::ToReasons:
        return area_->toReasons();
    case ActionId::ToObservations:
        return area_->toObservations();
    case ActionId::OpenSite:
        return area_->goTo({RecordKind::Site, book_->view()->installation.site.id});
    case ActionId::OpenBoard:
        return area_->openBoard();
    case ActionId::NewVisit:
        return newVisit();
    case ActionId::OpenVisit:
        return area_->openVisit();
    case ActionId::Inspect:
        return area_->openInspection();
    case ActionId::NoteObservation:
        return area_->noteObservation();
    case ActionId::OpenCircuit:
        return area_->openCircuit();
    case ActionId::LoadOverTime:
        return area_->openOverload();
    case ActionId::NextMissing:
        return area_->nextMissing();
    case ActionId::ConfirmAsRead:
        return area_->sheet().confirmAsRead();
    case ActionId::ClearCell:
        return area_->sheet().clearCell();
    case ActionId::AddWay:
        return area_->sheet().addWay();
    case ActionId::RemoveWay:
        return area_->sheet().removeWay();
    case ActionId::ShowReport:
        return showReport();
    case ActionId::PrintReport:
        return desk_->print(*book_);
    case ActionId::WritePdf:
        return desk_->writePdf(*book_);
    case ActionId::FoldReasons:
        return area_->reasons().toggleFold();
    default:
        return;
    }
}

Surroundings MainWindow::workbookSurroundings() const {
    return {around_.author, around_.clock, around_.ids};
}

bool MainWindow::openBook(const QString& path) {
    auto workbook = Workbook::open(pathOf(path), workbookSurroundings());
    if (!workbook) {
        closeBook();
        say(around_.appearance.words.sentence(workbook.error()));
        return false;
    }
    remember(path);
    useBook(std::move(*workbook));
    return true;
}

void MainWindow::newBook() {
    const QString path = around_.questions.whereNewBook(this);
    if (path.isEmpty()) return;
    auto workbook = Workbook::create(pathOf(path), workbookSurroundings());
    if (!workbook) return say(around_.appearance.words.sentence(workbook.error()));
    remember(path);
    useBook(std::move(*workbook));
    const Installation fresh = newSite(around_.ids, around_.clock, around_.knowledge.ruleSets.front());
    report(book_->add(fresh, addedLabel(fresh.site.name)));
}

void MainWindow::useBook(Workbook workbook) {
    book_ = std::make_unique<OpenBook>(std::move(workbook), around_.knowledge);
    connect(book_.get(), &OpenBook::changed, this, &MainWindow::showBook);
    say({});
    report(book_->showFirst());
    area_->toSheet();
}

void MainWindow::closeBook() {
    book_.reset();
    showBook();
}

void MainWindow::takeIn() {
    const QString file = around_.questions.whichSiteFile(this);
    if (file.isEmpty()) return;
    auto site = readSiteFile(file, around_.ids, around_.appearance.words);
    if (!site) return say(site.error());
    if (!book_) {
        const QString path = around_.questions.whereNewBook(this);
        if (path.isEmpty()) return;
        auto workbook = Workbook::create(pathOf(path), workbookSurroundings());
        if (!workbook) return say(around_.appearance.words.sentence(workbook.error()));
        remember(path);
        useBook(std::move(*workbook));
    }
    report(keep(*book_, *site));
}

void MainWindow::newVisit() {
    const Visit fresh = loopwright::newVisit(book_->view()->installation, around_.ids, around_.clock,
                                             around_.knowledge.ruleSets.front());
    report(book_->carryOut({addedLabel(fresh.label), {insertRecord(fresh)}}));
    report(book_->showVisit(fresh.id));
    area_->openVisit();
}

void MainWindow::showReport() {
    desk_->show(*book_, {&action(ActionId::PrintReport), &action(ActionId::WritePdf)});
}

/// Of the visit in hand, otherwise the usual ones.
const RuleSet& MainWindow::rules() const {
    const SiteViewPtr view = book_ ? book_->view() : nullptr;
    return view ? *view->rules : around_.knowledge.ruleSets.front();
}

void MainWindow::showSums() {
    desk_->close();
    sums_->show(around_.knowledge.tables, rules());
    pages_->setCurrentWidget(sums_);
    sums_->setFocus();
}

void MainWindow::addPicture(Id observation) {
    const QString file = around_.questions.whichPicture(this);
    if (!file.isEmpty()) report(keepPicture(*book_, file, observation, around_.ids));
}

/// A refusal is said where the log would have been shown.
void MainWindow::addLog(Id circuit) {
    const QString file = around_.questions.whichLog(this);
    if (file.isEmpty()) return;
    if (const auto done = keepLog(*book_, file, circuit, around_.ids); !done)
        area_->overload().logged().refuse(around_.appearance.words.sentence(done.error()));
}

void MainWindow::showBook() {
    const SiteViewPtr view = book_ ? book_->view() : nullptr;
    desk_->close();
    pages_->setCurrentWidget(view ? static_cast<QWidget*>(area_) : start_);
    goTo_->setView(view);
    goTo_->setVisible(view != nullptr);
    if (view) area_->show(view, stateOf(*book_, around_.appearance.words.locale()));
    showActions();
    QString title = QStringLiteral("Loopwright");
    if (view) {
        const Visit* visit = loopwright::find(view->installation.visits, view->visit);
        title = text(view->installation.site.name) + QStringLiteral(" · ") +
                (visit ? text(visit->label) + QStringLiteral(". ") : QString()) +
                QString::fromStdString(book_->path().filename().string());
    }
    setWindowTitle(title);
}

void MainWindow::showActions() {
    const bool hasSite = book_ && book_->view();
    for (const ActionSpec& spec : actionSpecs()) {
        const bool usable =
            spec.needs == Needs::Nothing || (spec.needs == Needs::Book ? book_ != nullptr : hasSite);
        action(spec.id).setEnabled(usable);
    }
    const auto name = [&](ActionId id, const QString& verb, const std::optional<Message>& label) {
        const QString what = label ? plainNotation(around_.appearance.words.sentence(*label)) : QString();
        action(id).setText(what.isEmpty() ? verb : verb + QStringLiteral(": ") + what);
        action(id).setEnabled(label.has_value());
    };
    name(ActionId::Undo, tr("Undo"), book_ ? book_->undoLabel() : std::nullopt);
    name(ActionId::Redo, tr("Redo"), book_ ? book_->redoLabel() : std::nullopt);
}

void MainWindow::useLook(bool dark) {
    around_.appearance.use(dark ? darkLook() : lightLook());
    applyLook(*qApp, around_.appearance.look(), around_.appearance.type);
    action(ActionId::DarkLook).setChecked(dark);
    around_.settings.setValue(darkKey, dark);
    // Pages keep the paper of the look that they were shown in.
    if (desk_->page()) showReport();
    for (const ActionSpec& spec : actionSpecs())
        if (spec.icon) action(spec.id).setIcon(around_.appearance.icon(*spec.icon));
    update();
}

void MainWindow::report(const tl::expected<void, Message>& done) {
    if (!done) say(around_.appearance.words.sentence(done.error()));
}

void MainWindow::say(const QString& sentence) {
    start_->say(sentence);
    area_->status().say(sentence);
}

void MainWindow::remember(const QString& path) {
    QStringList recent = around_.settings.value(recentKey).toStringList();
    const QString whole = QFileInfo(path).absoluteFilePath();
    recent.removeAll(whole);
    recent.prepend(whole);
    around_.settings.setValue(recentKey, recent.mid(0, mostRecent));
    start_->setRecentBooks(recent.mid(0, mostRecent));
}

void MainWindow::closeEvent(QCloseEvent* event) {
    // What is being typed is kept: a window that closes does not leave its fields by itself.
    if (QWidget* inHand = focusWidget()) inHand->clearFocus();
    around_.settings.setValue(geometryKey, saveGeometry());
    area_->save(around_.settings);
    event->accept();
}

} // namespace loopwright
