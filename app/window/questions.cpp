// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/questions.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QPrintDialog>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Questions", text);
}

/// The path with the ending, if the person left it out.
QString ended(const QString& path, const QString& ending) {
    return path.isEmpty() || path.endsWith(ending, Qt::CaseInsensitive) ? path : path + ending;
}

} // namespace

QString FileQuestions::whichBook(QWidget* window) {
    return QFileDialog::getOpenFileName(window, tr("Open a book"), {}, tr("Books (*.loopwright)"));
}

QString FileQuestions::whereNewBook(QWidget* window) {
    const QString path = QFileDialog::getSaveFileName(window, tr("New book"), {}, tr("Books (*.loopwright)"));
    return ended(path, QStringLiteral(".loopwright"));
}

QString FileQuestions::whichSiteFile(QWidget* window) {
    return QFileDialog::getOpenFileName(window, tr("Take in a site file"), {},
                                        tr("Site files (*.site.json *.json)"));
}

QString FileQuestions::wherePdf(QWidget* window, const QString& suggestion) {
    const QString path =
        QFileDialog::getSaveFileName(window, tr("Write the report"), suggestion, tr("PDF (*.pdf)"));
    return ended(path, QStringLiteral(".pdf"));
}

QString FileQuestions::whichPicture(QWidget* window) {
    return QFileDialog::getOpenFileName(window, tr("Add a picture"), {}, tr("Pictures (*.jpg *.jpeg *.png)"));
}

QString FileQuestions::whichLog(QWidget* window) {
    return QFileDialog::getOpenFileName(window, tr("Take in a log"), {}, tr("Logs (*.csv *.txt *.tsv)"));
}

bool FileQuestions::whichPrinter(QWidget* window, QPrinter& printer, int pages) {
    QPrintDialog dialog(&printer, window);
    dialog.setMinMax(1, pages);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    return dialog.exec() == QDialog::Accepted;
}

} // namespace loopwright
