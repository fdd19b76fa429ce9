// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/labels.h"
#include "forms/frame/role_frame.h"
#include "forms/frame/site_view.h"

namespace loopwright {

/// What the window says at its foot about the book: everything a person may want to be sure of.
struct BookState {
    QString savedAt;               ///< "11:42:07"; empty while nothing was changed
    std::int64_t journalCount = 0; ///< entries of the journal
};

/// The last line of the window. Left: the book, the rules, the instruments; right: where the current figure
/// comes from, and how much has been read. What was refused stands at the right until the current cell
/// changes.
class StatusLine final : public RoleFrame {
    Q_OBJECT
  public:
    explicit StatusLine(const Appearance& appearance, QWidget* parent = nullptr);

    void show(const SiteViewPtr& view, const BookState& book);
    void describeCell(const QString& description);
    void say(const QString& sentence);
    QString said() const { return cell_->notation(); }

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void fit();
    const Appearance& appearance_;
    RoleLabel* saved_;
    RoleLabel* journal_;
    RoleLabel* rules_;
    RoleLabel* instrument_;
    RoleLabel* cell_;
    RoleLabel* readings_;
};

} // namespace loopwright
