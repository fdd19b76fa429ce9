// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/role_frame.h"
#include "forms/frame/site_view.h"

#include <vector>

class QScrollArea;

namespace loopwright {

class FactTable;
class LoggedPart;
class PlotView;
class RemedyList;
class RoleLabel;
class TrialPanel;
class VerdictPlate;

/// One circuit's load over time: what the findings say of it, when a sound device would operate, how warm
/// things get, what is so meanwhile, what would put it right, what was logged, and what any other change
/// would do.
class OverloadPage final : public RoleFrame {
    Q_OBJECT
  public:
    /// `appearance` and `ids`, of circuits that remedies make, outlive the page.
    OverloadPage(const Appearance& appearance, IdSource& ids, ChangeDoor door, QWidget* parent = nullptr);

    void show(const SiteViewPtr& view, Id circuit);
    Id circuit() const { return circuit_; }
    /// Everything that the page says, for those who look at it without eyes.
    QString spoken() const;
    PlotView& band() { return *band_; }
    PlotView& heat() { return *heat_; }
    RemedyList& remedies() { return *remedies_; }
    TrialPanel& trial() { return *trial_; }
    LoggedPart& logged() { return *logged_; }

  signals:
    void left(); ///< Esc

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    QWidget* makeSheet();
    QWidget* titled(const QString& title, const QString& hint, QWidget* body, RoleLabel* below = nullptr);
    /// Scrolls so that this part of the page stands on top.
    void bringUp(const QWidget& part);
    void showFindings(const SiteView& view);
    void showPictures(const SiteView& view);

    const Appearance& appearance_;
    IdSource& ids_;
    Id circuit_;
    RoleLabel* title_;
    RoleLabel* facts_;
    std::vector<VerdictPlate*> plates_; ///< of the findings about the load, the same ones for every circuit
    PlotView* band_;
    PlotView* heat_;
    RoleLabel* bandReading_;
    RoleLabel* heatReading_;
    FactTable* meanwhile_;
    RemedyList* remedies_;
    LoggedPart* logged_;
    TrialPanel* trial_;
    QWidget* pictures_ = nullptr; ///< and what stands below; away where nothing can be drawn
    QScrollArea* room_;
};

} // namespace loopwright
