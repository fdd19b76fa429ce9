// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/what_if.h"
#include "forms/frame/site_view.h"

#include <QWidget>

class QFormLayout;
class QPushButton;

namespace loopwright {

class Appearance;
class FieldEditor;
class RoleLabel;
class ShiftTable;

/// What if: the load, the duty, the device or the wiring of a circuit changed on a copy, and every check
/// before and after. Nothing is written until the change is taken.
class TrialPanel final : public QWidget {
    Q_OBJECT
  public:
    /// `appearance` outlives the panel.
    TrialPanel(const Appearance& appearance, ChangeDoor door, QWidget* parent = nullptr);

    /// Begins anew with what is recorded.
    void show(const SiteViewPtr& view, Id circuit);
    /// Puts a change on trial that somebody proposes.
    void attempt(const Change& change);
    const Change& change() const { return change_; }
    const ShiftTable& table() const { return *table_; }
    FieldEditor* editor(RecordKind kind, Id record, std::string_view key) const;
    QPushButton& takeButton() { return *take_; }
    const RoleLabel& proposal() const { return *proposal_; }

  signals:
    void began(); ///< something is on trial: the page may want to show it

  private:
    struct Bound {
        FieldEditor* editor;
        RecordKind kind;
        Id record;
    };
    void build();
    void addFields(RecordKind kind, Id record, std::span<const std::string_view> keys, QFormLayout& fields);
    void enter(const Bound& bound, const QString& typed);
    void reckon();
    void take();

    const Appearance& appearance_;
    ChangeDoor door_;
    SiteViewPtr view_;
    Id circuit_;
    Change change_;
    std::vector<Bound> bound_;
    QWidget* fields_ = nullptr;
    RoleLabel* proposal_; ///< the change on trial, where somebody proposed it
    RoleLabel* said_;
    ShiftTable* table_;
    QPushButton* take_;
    QPushButton* again_;
};

} // namespace loopwright
