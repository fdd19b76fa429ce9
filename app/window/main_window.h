// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/actions.h"
#include "app/window/open_book.h"
#include "app/window/report_desk.h"
#include "app/window/window_surroundings.h"

#include <QMainWindow>

#include <map>

class QStackedWidget;

namespace loopwright {

class GoToField;
class StartPage;
class SumsPage;
class WorkArea;

/// The one window: a start page, or an open book. It holds the forms together and does nothing itself that a
/// form, a book or the report can do.
class MainWindow final : public QMainWindow {
    Q_OBJECT
  public:
    explicit MainWindow(const WindowSurroundings& surroundings);
    ~MainWindow() override;

    /// Opens a workbook; when it cannot be opened, says why on the start page and returns false.
    bool openBook(const QString& path);
    QAction& action(ActionId id) const { return *actions_.at(id); }
    WorkArea& area() { return *area_; }
    /// nullptr while none is open.
    const OpenBook* book() const { return book_.get(); }
    /// nullptr while none is shown.
    ReportPage* reportPage() { return desk_->page(); }
    StartPage& startPage() { return *start_; }
    GoToField& goToField() { return *goTo_; }
    SumsPage& sums() { return *sums_; }

  protected:
    void closeEvent(QCloseEvent* event) override;

  private:
    void makeActions();
    QWidget* makeCommandBar();
    void run(ActionId id);
    void runInBook(ActionId id);
    void newBook();
    void takeIn();
    void take(const QString& path);
    void newVisit();
    void showReport();
    void showSums();
    const RuleSet& rules() const;
    void addPicture(Id observation);
    void addLog(Id circuit);
    void useBook(Workbook workbook);
    void closeBook();
    void showBook();
    void showActions();
    void useLook(bool dark);
    void report(const tl::expected<void, Message>& done);
    void say(const QString& sentence);
    Surroundings workbookSurroundings() const;
    void remember(const QString& path);

    WindowSurroundings around_;
    std::map<ActionId, QAction*> actions_;
    std::unique_ptr<OpenBook> book_;
    QStackedWidget* pages_;
    StartPage* start_;
    WorkArea* area_;
    GoToField* goTo_;
    SumsPage* sums_;
    ReportDesk* desk_;
};

} // namespace loopwright
