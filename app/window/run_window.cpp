// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/run_window.h"

#include "app/window/main_window.h"

#include <QApplication>
#include <QSettings>

namespace loopwright {

int runWindow(QApplication& application, const QString& workbookPath) {
    const QString name = QStringLiteral("loopwright");
    QSettings settings(name, name);
    Appearance appearance{QLocale()};
    const Knowledge knowledge;
    const SystemClock clock;
    RandomIds ids;
    FileQuestions questions;
    QString author = qEnvironmentVariable("USER");
    if (author.isEmpty()) author = qEnvironmentVariable("USERNAME");
    MainWindow window({appearance, knowledge, clock, ids, {utf8(author)}, questions, settings});
    if (!workbookPath.isEmpty()) window.openBook(workbookPath);
    window.show();
    return application.exec();
}

} // namespace loopwright
