// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sums/read_inputs.h"
#include "forms/frame/appearance.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace loopwright {

/// The inputs of one sum as fields, made from its declaration: figures are typed, with or without a unit, and
/// options chosen.
class SumFields final : public QWidget {
    Q_OBJECT
  public:
    /// All of them outlive the fields.
    SumFields(const Appearance& appearance, const sums::Sum& sum, const sums::SumContext& context,
              QWidget* parent = nullptr);

    /// What was given so far; an empty field gives nothing.
    std::vector<sums::RawInput> given() const;
    bool isEmpty(std::string_view key) const;
    /// Types a text into a field, or chooses an option.
    void enter(std::string_view key, const QString& typed);
    void takeKeyboard();

  signals:
    void changed();

  private:
    /// One of the three, as the input's kind asks.
    struct Field {
        const sums::Input* input = nullptr;
        QLineEdit* line = nullptr;
        QComboBox* choice = nullptr;
        QCheckBox* flag = nullptr;
        QWidget* widget() const;
        QString typed() const;
    };
    Field makeField(const sums::Input& input, const QString& name);
    const Field* field(std::string_view key) const;

    const Appearance& appearance_;
    const sums::SumContext& context_;
    std::vector<Field> fields_;
};

} // namespace loopwright
