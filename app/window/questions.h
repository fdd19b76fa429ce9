// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QPrinter;
class QWidget;

namespace loopwright {

/// What the window asks a person that only a dialog of the system can ask. Tests answer in its place. An
/// empty answer means that the person thought better of it.
class Questions {
  public:
    virtual ~Questions() = default;
    virtual QString whichBook(QWidget* window) = 0;
    virtual QString whereNewBook(QWidget* window) = 0;
    virtual QString whichSiteFile(QWidget* window) = 0;
    virtual QString wherePdf(QWidget* window, const QString& suggestion) = 0;
    virtual QString whichPicture(QWidget* window) = 0;
    virtual QString whichLog(QWidget* window) = 0;
    /// False: don't print. `pages` is how many there are.
    virtual bool whichPrinter(QWidget* window, QPrinter& printer, int pages) = 0;
};

/// The system's own dialogs.
class FileQuestions final : public Questions {
  public:
    QString whichBook(QWidget* window) override;
    QString whereNewBook(QWidget* window) override;
    QString whichSiteFile(QWidget* window) override;
    QString wherePdf(QWidget* window, const QString& suggestion) override;
    QString whichPicture(QWidget* window) override;
    QString whichLog(QWidget* window) override;
    bool whichPrinter(QWidget* window, QPrinter& printer, int pages) override;
};

} // namespace loopwright
