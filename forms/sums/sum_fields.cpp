// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sums/sum_fields.h"

#include "forms/frame/labels.h"
#include "forms/words/notation.h"
#include "forms/words/sum_words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>

namespace loopwright {
namespace {

constexpr int nameWidth = 250;
constexpr int figureWidth = 120, listWidth = 260;
constexpr int rowGap = 6, columnGap = 12;

enum Column : std::uint8_t { NameColumn, FieldColumn, UnitColumn, RestColumn };

} // namespace

QWidget* SumFields::Field::widget() const {
    if (line) return line;
    return choice ? static_cast<QWidget*>(choice) : flag;
}

QString SumFields::Field::typed() const {
    if (line) return line->text().trimmed();
    if (choice) return choice->currentData().toString();
    return flag->isChecked() ? QStringLiteral("yes") : QStringLiteral("no");
}

SumFields::SumFields(const Appearance& appearance, const sums::Sum& sum, const sums::SumContext& context,
                     QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , context_(context) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setVerticalSpacing(rowGap);
    grid->setHorizontalSpacing(columnGap);
    grid->setColumnMinimumWidth(NameColumn, appearance.type.scaled(nameWidth));
    grid->setColumnStretch(RestColumn, 1);
    for (const sums::Input& input : sum.inputs) {
        const int row = grid->rowCount();
        const QString name = sums::inputName(input, appearance.words);
        auto* label = new RoleLabel(appearance, ScreenText::Body, &Look::ink);
        label->setWordWrap(true);
        label->setNotation(name);
        auto* unit = new RoleLabel(appearance, ScreenText::Body, &Look::inkSoft);
        unit->setNotation(text(input.unit.symbol));
        const Field made = makeField(input, plainNotation(name));
        grid->addWidget(label, row, NameColumn);
        grid->addWidget(made.widget(), row, FieldColumn, Qt::AlignLeft);
        grid->addWidget(unit, row, UnitColumn);
        fields_.push_back(made);
    }
}

SumFields::Field SumFields::makeField(const sums::Input& input, const QString& name) {
    const Words& words = appearance_.words;
    Field made;
    made.input = &input;
    const QString preset = sums::presetText(input, context_, words);
    switch (input.kind) {
    case sums::InputKind::Number:
    case sums::InputKind::List:
        made.line = new QLineEdit;
        made.line->setFixedWidth(
            appearance_.type.scaled(input.kind == sums::InputKind::List ? listWidth : figureWidth));
        made.line->setPlaceholderText(!preset.isEmpty() ? preset
                                      : input.required  ? QString()
                                                        : tr("may stay empty"));
        made.line->setToolTip(sums::rangeText(input, words));
        connect(made.line, &QLineEdit::textChanged, this, &SumFields::changed);
        break;
    case sums::InputKind::Choice:
        made.choice = new QComboBox;
        if (input.preset.empty()) made.choice->addItem(QString(), QString());
        for (const std::string& option : input.options(context_))
            made.choice->addItem(sums::optionName(input, option, words), text(option));
        made.choice->setCurrentIndex(std::max(0, made.choice->findData(text(input.preset))));
        connect(made.choice, &QComboBox::currentIndexChanged, this, &SumFields::changed);
        break;
    case sums::InputKind::Flag:
        made.flag = new QCheckBox;
        made.flag->setChecked(input.preset == "yes");
        connect(made.flag, &QCheckBox::toggled, this, &SumFields::changed);
        break;
    }
    made.widget()->setAccessibleName(name);
    return made;
}

std::vector<sums::RawInput> SumFields::given() const {
    std::vector<sums::RawInput> raw;
    for (const Field& field : fields_)
        if (const QString typed = field.typed(); !typed.isEmpty())
            raw.push_back({std::string(field.input->key), utf8(typed)});
    return raw;
}

const SumFields::Field* SumFields::field(std::string_view key) const {
    for (const Field& field : fields_)
        if (field.input->key == key) return &field;
    return nullptr;
}

bool SumFields::isEmpty(std::string_view key) const {
    const Field* found = field(key);
    return found && found->typed().isEmpty();
}

void SumFields::enter(std::string_view key, const QString& typed) {
    const Field* found = field(key);
    if (!found) return;
    if (found->line) found->line->setText(typed);
    if (found->choice) found->choice->setCurrentIndex(found->choice->findData(typed));
    if (found->flag) found->flag->setChecked(typed == QStringLiteral("yes"));
}

void SumFields::takeKeyboard() {
    if (!fields_.empty()) fields_.front().widget()->setFocus();
}

} // namespace loopwright
