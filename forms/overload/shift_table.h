// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/what_if.h"
#include "forms/frame/appearance.h"

#include <QWidget>

class QGridLayout;

namespace loopwright {

/// Every check before and after a change that is tried, side by side: what changes first, then what stays.
class ShiftTable final : public QWidget {
    Q_OBJECT
  public:
    explicit ShiftTable(const Appearance& appearance, QWidget* parent = nullptr);
    void show(const WhatIf& result);
    void clear();
    /// Lines as they read: "Load and device: fails, then holds".
    QStringList spoken() const { return spoken_; }

  private:
    void addHead(const QString& what);
    void add(const CheckShift& shift, const QString& what, bool isQuiet);

    const Appearance& appearance_;
    QWidget* body_ = nullptr;
    QGridLayout* grid_ = nullptr;
    QStringList spoken_;
};

} // namespace loopwright
