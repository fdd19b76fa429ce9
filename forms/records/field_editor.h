// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/records/form_plan.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace loopwright {

class Appearance;

/// One field of a form: the control that suits its kind, at the right its unit and where a figure comes from,
/// and below it, only while it is needed, why a text was refused. Days and figures read as they do elsewhere,
/// and stand as they are written once the keyboard is there. It never changes what a person is typing.
class FieldEditor final : public QWidget {
    Q_OBJECT

  public:
    FieldEditor(const Appearance& appearance, const FieldInfo& field, const QString& name,
                std::vector<FieldOption> options, QWidget* parent);
    ~FieldEditor() override;

    /// Shows a stored form, unless the person is typing here and has not left the field.
    void setStored(const std::string& stored);
    void setReadOnly(bool readOnly);
    /// Says why the text cannot be a value; Esc or a new value takes it back.
    void refuse(const QString& sentence);
    const FieldInfo& field() const { return field_; }

  signals:
    /// The person left the field with a text or chose a value that differs from what is stored. Figures and
    /// days are as typed; everything else is in its stored form.
    void entered(const QString& typed);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    QWidget* makeControl(const QString& name, const std::vector<FieldOption>& options);
    void fitParagraphs();
    bool hasTyped() const;
    void leave();
    void showStored();
    bool isAtHand() const;
    QString writtenText() const;
    QString shownText() const;
    QString noteText() const;

    const Appearance& appearance_;
    const FieldInfo field_;
    std::string stored_;
    std::vector<FieldOption> options_;
    QLineEdit* line_ = nullptr;
    QPlainTextEdit* paragraphs_ = nullptr;
    QComboBox* choice_ = nullptr;
    QCheckBox* flag_ = nullptr;
    QLabel* note_ = nullptr; ///< of a figure
    QLabel* refusal_ = nullptr;
};

} // namespace loopwright
