// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/report_desk.h"

#include "app/window/open_book.h"
#include "app/window/report_page.h"

#include <QPrinter>
#include <QSettings>
#include <QStackedWidget>

namespace loopwright {

ReportDesk::ReportDesk(const WindowSurroundings& surroundings, QStackedWidget& pages, QWidget& window)
  : QObject(&window)
  , around_(surroundings)
  , pages_(pages)
  , window_(window) {}

Report ReportDesk::make(const OpenBook& book) const {
    const SiteView& view = *book.view();
    const AttachmentSource attachments = [&view](std::string_view digest) -> std::optional<std::string> {
        const QByteArray bytes = view.attachment(std::string(digest));
        return bytes.isEmpty() ? std::nullopt : std::optional(bytes.toStdString());
    };
    return composeReport({view.installation, view.assessment, *view.tables, *view.rules,
                          around_.appearance.words, around_.clock, attachments,
                          officeLabelsIn(around_.settings)});
}

void ReportDesk::show(const OpenBook& book, const QList<QAction*>& actions) {
    close();
    page_ = new ReportPage(around_.appearance, officeLabelsIn(around_.settings), actions);
    page_->show(make(book));
    connect(page_, &ReportPage::closed, this, &ReportDesk::closeWanted);
    connect(page_, &ReportPage::labelled, this, [this, &book](const OfficeLabels& labels) {
        keepOfficeLabels(around_.settings, labels);
        page_->show(make(book));
    });
    pages_.addWidget(page_);
    pages_.setCurrentWidget(page_);
    page_->setFocus();
}

void ReportDesk::close() {
    if (!page_) return;
    pages_.removeWidget(page_);
    page_->deleteLater();
    page_ = nullptr;
}

void ReportDesk::print(const OpenBook& book) {
    const Report made = make(book);
    QPrinter printer(QPrinter::HighResolution);
    const int pages = static_cast<int>(made.pages.size());
    if (!around_.questions.whichPrinter(&window_, printer, pages)) return;
    const int first = printer.fromPage() > 0 ? printer.fromPage() : 1;
    const int last = printer.toPage() > 0 ? printer.toPage() : pages;
    const bool printed = printReport(made, printer, first, last);
    emit said(printed
                  ? tr("Sent to %1.").arg(printer.printerName())
                  : tr("%1 did not take the report. Check it, then try again.").arg(printer.printerName()));
}

void ReportDesk::writePdf(const OpenBook& book) {
    const QString suggestion = QString::fromStdString(book.path().stem().string()) + QStringLiteral(".pdf");
    const QString path = around_.questions.wherePdf(&window_, suggestion);
    if (path.isEmpty()) return;
    const auto written = loopwright::writePdf(make(book), path);
    emit said(written ? tr("The report is in %1.").arg(path) : written.error());
}

} // namespace loopwright
