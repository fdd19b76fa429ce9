// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"
#include "forms/frame/appearance.h"

#include <QWidget>

class QGridLayout;

namespace loopwright {

class RoleLabel;
struct WorkingLine;

/// What a sum answered, step by step: each formula with what went in, and its result below.
class SumAnswer final : public QWidget {
    Q_OBJECT
  public:
    explicit SumAnswer(const Appearance& appearance, QWidget* parent = nullptr);

    void show(const sums::Sum& sum, const sums::Answers& answers);
    /// Why there is no answer; loud when what was given is wrong, and not only missing.
    void showRefusal(const QString& sentence, bool loud);
    /// Every line as it reads, for those who look at it without eyes.
    QString spoken() const;

  private:
    void clear();
    void addCase(const sums::Sum& sum, const sums::Answer& answer);
    void addWorking(const Working& working);
    void addLine(const WorkingLine& line, Role ink, bool strong);
    /// A text across all columns, still empty.
    RoleLabel* addWide(Role ink, bool strong = false);

    const Appearance& appearance_;
    QWidget* body_ = nullptr;
    QGridLayout* grid_ = nullptr;
};

} // namespace loopwright
