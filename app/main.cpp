// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/command_line.h"
#include "app/window/run_window.h"

#include <QApplication>
#include <QLocale>

#include <csignal>
#include <exception>
#include <iostream>

namespace {

bool hasDisplay() {
    return !qEnvironmentVariableIsEmpty("DISPLAY") || !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY");
}

/// What Qt remarks about folders of a desktop session is of no use where there is none.
void passOnRemark(QtMsgType, const QMessageLogContext&, const QString& remark) {
    if (!remark.startsWith(QStringLiteral("QStandardPaths: "))) std::cerr << remark.toStdString() << '\n';
}

/// Without a display Qt would end the program; fonts for the report need none. Whether a window could be
/// seen.
bool chooseHeadless() {
    if (hasDisplay()) return true;
    qInstallMessageHandler(passOnRemark);
    if (!qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) return true; // somebody knows better
    qputenv("QT_QPA_PLATFORM", "offscreen");
    return false;
}

/// A file that may not grow further is then refused like a full disk, and does not end the program.
void bearFileLimits() {
#ifdef SIGXFSZ
    std::signal(SIGXFSZ, SIG_IGN);
#endif
}

std::string author() {
    const QString name = qEnvironmentVariable("USER");
    return name.isEmpty() ? "command line" : name.toStdString();
}

int run(int argc, char** argv) {
    using namespace loopwright;
    const Request request = parseCommandLine(argc, argv, std::cout, std::cerr);
    if (const auto* answered = std::get_if<Answered>(&request)) return answered->exitCode;
    const bool canShow = chooseHeadless();
    if (!canShow && std::holds_alternative<OpenRequest>(request)) {
        std::cerr
            << "There is no display to show the window on. \"loopwright --help\" lists what can be done "
               "without one.\n";
        return exitRefused;
    }
    bearFileLimits();
    QApplication application(argc, argv);
    QApplication::setApplicationName("loopwright");
    QApplication::setApplicationVersion(LOOPWRIGHT_VERSION);
    const Words words{QLocale()};
    const Knowledge knowledge;
    const SystemClock clock;
    RandomIds ids;
    const int exitCode = carryOut(request, {std::cout, std::cerr, words, knowledge, clock, ids, author()});
    const auto workbook = windowAfter(request);
    if (exitCode != exitDone || !workbook) return exitCode;
    const bool isDemo = std::holds_alternative<DemoRequest>(request);
    if (isDemo && !hasDisplay()) return exitDone;
    return runWindow(application, QString::fromStdString(workbook->string()));
}

} // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& fault) {
        std::cerr << "Loopwright had to stop: " << fault.what() << '\n';
        return loopwright::exitRefused;
    }
}
