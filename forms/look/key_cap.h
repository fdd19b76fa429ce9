// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"
#include "forms/look/type.h"

#include <QWidget>

namespace loopwright {

/// The key that moves the keyboard here or does what stands beside it: "F6", "Ctrl K". Seen, not read aloud:
/// the action has its shortcut already.
class KeyCap final : public QWidget {
    Q_OBJECT
  public:
    KeyCap(const QString& key, const Look& look, const Type& type, QWidget* parent = nullptr);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString key_;
    const Look& look_;
    QFont font_;
};

} // namespace loopwright
