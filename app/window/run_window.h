// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QApplication;

namespace loopwright {

/// Shows the window until it is closed; an empty path shows the start page. Returns the program's exit code.
int runWindow(QApplication& application, const QString& workbookPath);

} // namespace loopwright
