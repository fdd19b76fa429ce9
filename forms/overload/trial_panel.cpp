// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/trial_panel.h"

#include "forms/frame/appearance.h"
#include "forms/frame/labels.h"
#include "forms/look/rich_symbol.h"
#include "forms/overload/shift_table.h"
#include "forms/records/field_editor.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

constexpr std::string_view typedKey = "trial.taken";
constexpr std::array circuitKeys{
    std::string_view("load_A"), std::string_view("device.family"), std::string_view("device.ratedCurrent_A"),
    std::string_view("wiring.lineSize_mm2"), std::string_view("wiring.protectiveSize_mm2")};
constexpr std::array equipmentKeys{std::string_view("count"), std::string_view("onTime_min"),
                                   std::string_view("offTime_min")};

/// The edit of `change` that sets fields of this record; a new one where there is none.
Edit& editOf(Change& change, RecordKind kind, Id record) {
    const auto found = std::ranges::find_if(change.edits, [&](const Edit& edit) {
        return edit.step == Edit::Step::Set && edit.kind == kind && edit.id == record;
    });
    return found != change.edits.end() ? *found
                                       : change.edits.emplace_back(Edit{Edit::Step::Set, kind, record, {}});
}

void put(Edit& edit, std::string_view key, std::string stored) {
    const auto value = std::ranges::find(edit.values, key, &Edit::Value::key);
    if (value != edit.values.end())
        value->text = std::move(stored);
    else
        edit.values.push_back({std::string(key), std::move(stored)});
}

} // namespace

TrialPanel::TrialPanel(const Appearance& appearance, ChangeDoor door, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , door_(std::move(door))
  , proposal_(new RoleLabel(appearance, ScreenText::Figure, &Look::ink, Weight::Semibold))
  , said_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft))
  , table_(new ShiftTable(appearance))
  , take_(new QPushButton(tr("Take the change")))
  , again_(new QPushButton(tr("Start again"))) {
    for (RoleLabel* label : {proposal_, said_})
        label->setWordWrap(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(take_);
    buttons->addWidget(again_);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(10);
    column->addWidget(proposal_);
    column->addWidget(said_);
    column->addLayout(buttons);
    column->addWidget(table_);
    connect(take_, &QPushButton::clicked, this, &TrialPanel::take);
    connect(again_, &QPushButton::clicked, this, [this] { show(view_, circuit_); });
}

void TrialPanel::show(const SiteViewPtr& view, Id circuit) {
    view_ = view;
    circuit_ = circuit;
    change_ = {};
    build();
    reckon();
}

void TrialPanel::build() {
    bound_.clear();
    delete fields_;
    fields_ = new QWidget;
    auto* fields = new QFormLayout(fields_);
    fields->setContentsMargins(0, 0, 0, 0);
    fields->setLabelAlignment(Qt::AlignLeft);
    fields->setHorizontalSpacing(16);
    fields->setVerticalSpacing(4);
    addFields(RecordKind::Circuit, circuit_, circuitKeys, *fields);
    for (const Equipment& equipment : view_->installation.equipment) {
        if (equipment.circuit != circuit_) continue;
        auto* name = new RoleLabel(appearance_, ScreenText::Figure, &Look::ink, Weight::Semibold);
        name->setNotation(text(equipment.name));
        fields->addRow(name);
        addFields(RecordKind::Equipment, equipment.id, equipmentKeys, *fields);
    }
    static_cast<QVBoxLayout*>(layout())->insertWidget(0, fields_);
    fields_->show(); // and not only once the event loop comes to it
}

void TrialPanel::addFields(RecordKind kind, Id record, std::span<const std::string_view> keys,
                           QFormLayout& fields) {
    for (const std::string_view key : keys) {
        const FieldInfo* info = fieldInfo(kind, key);
        const QString name =
            appearance_.words.word("field." + std::string(recordName(kind)) + '.' + std::string(key));
        QString plain;
        for (const SymbolRun& run : symbolRuns(name))
            plain += run.text;
        auto* editor = new FieldEditor(appearance_, *info, plain,
                                       fieldOptions(*view_, kind, *info, appearance_.words), fields_);
        editor->setStored(fieldText(view_->installation, kind, record, key).value_or(std::string()));
        const Bound bound{editor, kind, record};
        connect(editor, &FieldEditor::entered, this,
                [this, bound](const QString& typed) { enter(bound, typed); });
        bound_.push_back(bound);
        auto* label = new QLabel;
        label->setText(withScriptSize(richSymbol(name), label->font()));
        label->setBuddy(editor);
        fields.addRow(label, editor);
    }
}

FieldEditor* TrialPanel::editor(RecordKind kind, Id record, std::string_view key) const {
    for (const Bound& bound : bound_)
        if (bound.kind == kind && bound.record == record && bound.editor->field().key == key)
            return bound.editor;
    return nullptr;
}

void TrialPanel::enter(const Bound& bound, const QString& typed) {
    const FieldInfo& info = bound.editor->field();
    const bool isFigure = info.kind == FieldKind::Figure;
    auto stored = parseField(info, utf8(isFigure ? typed.trimmed() : typed),
                             isFigure ? appearance_.words.numberFormat() : NumberFormat{});
    if (!stored) return bound.editor->refuse(appearance_.words.sentence(stored.error()));
    put(editOf(change_, bound.kind, bound.record), info.key, *stored);
    bound.editor->setStored(*stored);
    change_.label = {
        typedKey, {pathOf(view_->installation, *loopwright::find(view_->installation.circuits, circuit_))}};
    reckon();
}

void TrialPanel::attempt(const Change& change) {
    show(view_, circuit_);
    change_ = change;
    for (const Bound& bound : bound_)
        for (const Edit& edit : change.edits)
            if (edit.step == Edit::Step::Set && edit.kind == bound.kind && edit.id == bound.record)
                for (const Edit::Value& value : edit.values)
                    if (value.key == bound.editor->field().key) bound.editor->setStored(value.text);
    reckon();
    emit began();
}

void TrialPanel::reckon() {
    const bool isTrying = !change_.edits.empty();
    take_->setEnabled(isTrying);
    again_->setEnabled(isTrying);
    const bool isProposed = isTrying && change_.label.key != typedKey;
    proposal_->setVisible(isProposed);
    if (isProposed) proposal_->setNotation(appearance_.words.sentence(change_.label));
    if (!isTrying) {
        table_->clear();
        return said_->setNotation(
            tr("Change a figure above: every check is shown as it is now and as it would be then."));
    }
    const auto result =
        whatIf(view_->installation, view_->visit, circuit_, change_, *view_->tables, *view_->rules);
    if (!result) {
        take_->setEnabled(false);
        table_->clear();
        return said_->setNotation(appearance_.words.sentence(result.error()));
    }
    QStringList said{tr("On trial: nothing is written until it is taken."),
                     appearance_.words.word("remedy.advice")};
    if (result->isClampStale) said << appearance_.words.word("remedy.note.clamp");
    said_->setNotation(said.join(u' '));
    table_->show(*result);
}

void TrialPanel::take() {
    if (const auto done = door_(change_); !done) said_->setNotation(appearance_.words.sentence(done.error()));
}

} // namespace loopwright
