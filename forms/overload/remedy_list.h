// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/remedy.h"
#include "forms/frame/appearance.h"

#include <QWidget>

class QVBoxLayout;

namespace loopwright {

/// What would put a circuit right, the smallest intervention first, each with what it leaves and what it
/// changes elsewhere. It is advice; the form says so.
class RemedyList final : public QWidget {
    Q_OBJECT
  public:
    explicit RemedyList(const Appearance& appearance, QWidget* parent = nullptr);
    /// Where there are none it says so, and, where they are asked for, who has to plan one.
    void show(const Installation& installation, std::vector<Remedy> remedies, bool areAskedFor);
    const std::vector<Remedy>& remedies() const { return remedies_; }

  signals:
    void tryWanted(const loopwright::Change& change); ///< look at it in full before it is taken

  private:
    QString advised(bool areAskedFor) const;
    void add(const Installation& installation, const Remedy& remedy, QVBoxLayout& rows);

    const Appearance& appearance_;
    std::vector<Remedy> remedies_;
    QWidget* body_ = nullptr;
};

} // namespace loopwright
