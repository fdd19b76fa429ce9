// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "forms/frame/appearance.h"

#include <QWidget>

namespace loopwright {

/// A verdict as its mark and word, in its ink.
class VerdictWord final : public QWidget {
    Q_OBJECT
  public:
    VerdictWord(const Appearance& appearance, Verdict verdict, QWidget* parent = nullptr);
    void set(Verdict verdict);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QFont font() const;

    const Appearance& appearance_;
    Verdict verdict_;
    QString word_;
};

} // namespace loopwright
