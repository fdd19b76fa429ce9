// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report_input.h"
#include "core/model/choices.h"
#include "forms/frame/role_frame.h"

#include <array>

class QLineEdit;
class QSettings;

namespace loopwright {

OfficeLabels officeLabelsIn(const QSettings& settings);
void keepOfficeLabels(QSettings& settings, const OfficeLabels& labels);

/// A field for each grade, where an office types the label that its local scheme uses. Leaving a field is
/// enough.
class OfficeLabelFields final : public RoleFrame {
    Q_OBJECT
  public:
    OfficeLabelFields(const Appearance& appearance, const OfficeLabels& labels, QWidget* parent = nullptr);
    ~OfficeLabelFields() override;

    QLineEdit& field(Grade grade) { return *fields_[static_cast<std::size_t>(grade)]; }

  signals:
    void typed(const loopwright::OfficeLabels& labels);

  private:
    void tell();
    OfficeLabels told_;
    std::array<QLineEdit*, gradeCount> fields_{};
};

} // namespace loopwright
