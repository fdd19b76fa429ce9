// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/what_if.h"
#include "forms/frame/appearance.h"

#include <QWidget>

#include <vector>

class QGridLayout;

namespace loopwright {

class RoleLabel;
class VerdictWord;

/// Every check before and after a change that is tried, side by side: what changes first, then what stays. A
/// circuit that the change makes stands among them with what it would be.
class ShiftTable final : public QWidget {
    Q_OBJECT
  public:
    explicit ShiftTable(const Appearance& appearance, QWidget* parent = nullptr);
    void show(const WhatIf& result);
    void clear();
    /// Lines as they read: "Load and device: fails, then holds".
    QStringList spoken() const { return spoken_; }

  private:
    /// A line of the table, which another result takes over: most of it stays the same from one figure that
    /// is tried to the next, and laying it out anew takes longer than a frame.
    struct Row {
        bool isQuiet = false;
        RoleLabel* what = nullptr;
        VerdictWord* before = nullptr;
        VerdictWord* after = nullptr;
        RoleLabel* sentence = nullptr;
    };
    void addHead(const QString& what);
    void put(std::size_t at, const CheckShift& shift, const QString& what, bool isQuiet);
    Row rowAt(std::size_t at, bool isQuiet);
    static void remove(const Row& row);

    const Appearance& appearance_;
    QWidget* body_;
    QGridLayout* grid_;
    std::vector<Row> rows_;
    QStringList spoken_;
};

} // namespace loopwright
