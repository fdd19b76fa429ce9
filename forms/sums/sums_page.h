// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/sum.h"
#include "forms/frame/role_frame.h"

#include <optional>

class QLineEdit;
class QListView;
class QScrollArea;
class QSortFilterProxyModel;

namespace loopwright {

class RoleLabel;
class SumAnswer;
class SumFields;

/// Every sum of the registry: chosen at the left, its inputs typed, answered as they are typed. No sum has a
/// screen of its own.
class SumsPage final : public RoleFrame {
    Q_OBJECT
  public:
    explicit SumsPage(const Appearance& appearance, QWidget* parent = nullptr);

    /// By these tables and rules, which outlive the page or its next show().
    void show(const ReferenceTables& tables, const RuleSet& rules);
    void choose(std::string_view sum);
    const sums::Sum* chosen() const { return sum_; }
    /// nullptr before show().
    SumFields* fields() { return fields_; }
    SumAnswer& answer() { return *answer_; }
    QListView& list() { return *list_; }
    QLineEdit& search() { return *search_; }

  signals:
    void closed(); ///< Esc

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QWidget* makeList();
    void open(const sums::Sum& sum);
    void reckon();

    const Appearance& appearance_;
    std::optional<sums::SumContext> context_;
    const sums::Sum* sum_ = nullptr;
    QLineEdit* search_;
    QListView* list_;
    QSortFilterProxyModel* found_;
    RoleLabel* title_;
    RoleLabel* basis_;
    QScrollArea* room_;
    SumFields* fields_ = nullptr;
    SumAnswer* answer_;
};

} // namespace loopwright
