// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/role_frame.h"

#include <QStringList>

class QListView;
class QStringListModel;

namespace loopwright {

class RoleLabel;

/// What stands in the window while no book is open: what can be done next, the books opened last, the keys.
class StartPage final : public RoleFrame {
    Q_OBJECT
  public:
    explicit StartPage(const Appearance& appearance, QWidget* parent = nullptr);

    void setRecentBooks(const QStringList& paths);
    QListView& recent() { return *recent_; }
    /// Why a book could not be opened, until the next try.
    void say(const QString& sentence);

  signals:
    void newBookWanted();
    void bookWanted(const QString& path); ///< empty: one that is to be chosen
    void takeInWanted();

  private:
    QWidget* makeMain();
    QWidget* makeSide();

    const Appearance& appearance_;
    QStringListModel* paths_;
    QListView* recent_;
    RoleLabel* recentHint_;
    RoleLabel* said_;
};

} // namespace loopwright
