// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/preview.h"
#include "app/window/office_labels.h"
#include "forms/frame/role_frame.h"

class QAction;

namespace loopwright {

class RoleLabel;

/// A report in the window, page below page, with what can be done with it above. Esc closes it.
class ReportPage final : public RoleFrame {
    Q_OBJECT
  public:
    /// `actions` are the window's own, shown as buttons. `appearance` outlives the page.
    ReportPage(const Appearance& appearance, const OfficeLabels& labels, const QList<QAction*>& actions,
               QWidget* parent = nullptr);

    /// Shows this report, at the page that is in view.
    void show(Report report);

    const Report& report() const { return preview_->report(); }
    ReportPreview& preview() { return *preview_; }
    OfficeLabelFields& labels() { return *labels_; }

  signals:
    void labelled(const loopwright::OfficeLabels& labels);
    void closed();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void tellPage(int page);
    ReportPreview* preview_;
    OfficeLabelFields* labels_;
    RoleLabel* title_;
    RoleLabel* page_;
};

} // namespace loopwright
