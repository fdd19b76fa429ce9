// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"

#include <QAbstractListModel>

namespace loopwright {

/// The checks of one record, worst first. Those that hold or don't apply are folded into the last row until
/// they are asked for, when they stand above it. At most one row stands open and shows its working.
class ReasonsModel final : public QAbstractListModel {
    Q_OBJECT
  public:
    explicit ReasonsModel(const Appearance& appearance, QObject* parent = nullptr);

    void show(SiteViewPtr view, Subject subject);
    const Subject& subject() const { return subject_; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

    /// nullptr for the row of what is folded. Valid until show() is called again.
    const Finding* findingAt(int row) const;
    bool isFolded() const { return folded_; }
    void setFolded(bool folded);

    bool isOpen(int row) const;
    /// Opens a row and shuts the one that was open; shuts an open row. On the last row, folds and unfolds.
    void toggle(int row);

  private:
    void arrange();
    QString foldText() const;

    const Appearance& appearance_;
    SiteViewPtr view_;
    Subject subject_;
    std::vector<const Finding*> findings_; ///< that are shown, in order
    int holding_ = 0;                      ///< of all about the subject
    int notApplying_ = 0;
    bool folded_ = true;
    std::string_view open_; ///< key of the check that stands open; empty: none
};

} // namespace loopwright
