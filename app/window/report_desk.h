// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report.h"
#include "app/window/window_surroundings.h"

#include <QList>
#include <QObject>

class QAction;
class QStackedWidget;
class QWidget;

namespace loopwright {

class OpenBook;
class ReportPage;

/// The report on the visit that a book shows: on a page of the window, on paper, in a file. Always made from
/// the view as it stands.
class ReportDesk final : public QObject {
    Q_OBJECT
  public:
    /// `pages` holds the page while it is shown; `window` is what questions are asked over. All outlive this.
    ReportDesk(const WindowSurroundings& surroundings, QStackedWidget& pages, QWidget& window);

    /// `actions` are shown as buttons above the report. The book stays open while the page is shown.
    void show(const OpenBook& book, const QList<QAction*>& actions);
    /// Puts the page away, if there is one.
    void close();
    void print(const OpenBook& book);
    void writePdf(const OpenBook& book);
    /// nullptr while none is shown.
    ReportPage* page() { return page_; }

  signals:
    void closeWanted();
    void said(const QString& sentence); ///< what became of printing or writing

  private:
    Report make(const OpenBook& book) const;

    WindowSurroundings around_;
    QStackedWidget& pages_;
    QWidget& window_;
    ReportPage* page_ = nullptr;
};

} // namespace loopwright
