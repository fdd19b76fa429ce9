// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/assessment.h"
#include "forms/frame/appearance.h"

#include <QLabel>
#include <QWidget>

#include <utility>
#include <vector>

namespace loopwright {

/// A text in a role of the look. Its colour follows the look; symbols in it are set with subscripts.
class RoleLabel final : public QLabel {
    Q_OBJECT
  public:
    RoleLabel(const Appearance& appearance, ScreenText text, Role ink, Weight weight = Weight::Regular,
              QWidget* parent = nullptr);
    /// In notation: "Z_db 0.24 Ω".
    void setNotation(const QString& notation);
    /// A symbol or a formula, whose single letters are quantities: "Z_s = Z_e + R_1+R_2".
    void setFormula(const QString& notation);
    QString notation() const { return notation_; }

  protected:
    void changeEvent(QEvent* event) override;

  private:
    void adopt();
    void take(const QString& notation, const QString& html);
    const Appearance& appearance_;
    Role ink_;
    QString notation_;
};

/// A key's name in a frame: "Ctrl K".
class KeyCap final : public QWidget {
    Q_OBJECT
  public:
    KeyCap(const Appearance& appearance, const QString& keys, QWidget* parent = nullptr);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Appearance& appearance_;
    QString keys_;
};

/// Verdicts by mark, number and word: "2 fail, 2 close, 1 can't tell, 14 hold".
class TallyLine final : public QWidget {
    Q_OBJECT
  public:
    explicit TallyLine(const Appearance& appearance, QWidget* parent = nullptr);
    void setTally(const Tally& tally);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    /// Verdicts that there are, worst first, with their words.
    std::vector<std::pair<Verdict, QString>> parts() const;

    const Appearance& appearance_;
    Tally tally_;
};

} // namespace loopwright
