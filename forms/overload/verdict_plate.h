// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "forms/frame/appearance.h"

#include <QWidget>

namespace loopwright {

class RoleLabel;

/// A finding at the head of a page: a bar and its mark in the verdict's colour, its name, and what it says.
class VerdictPlate final : public QWidget {
    Q_OBJECT
  public:
    explicit VerdictPlate(const Appearance& appearance, QWidget* parent = nullptr);
    void show(const Finding& finding);
    QString said() const;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Appearance& appearance_;
    Verdict verdict_ = Verdict::DoesNotApply;
    RoleLabel* name_;
    RoleLabel* sentence_;
};

} // namespace loopwright
