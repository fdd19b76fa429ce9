// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/records/record_form.h"

#include "forms/frame/appearance.h"
#include "forms/frame/change_label.h"
#include "forms/frame/visit_rows.h"
#include "forms/look/rich_symbol.h"
#include "forms/look/style.h"
#include "forms/observations/photo_row.h"
#include "forms/records/belongings_list.h"
#include "forms/records/field_editor.h"

#include <QCoreApplication>
#include <QFormLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int pageMargin = 20;
constexpr int sectionGap = 16;
constexpr int fieldGap = 4;
constexpr int labelWidth = 220;

/// The name without marks for subscripts, for those who hear it.
QString spoken(const QString& notation) {
    QString plain;
    for (const SymbolRun& run : symbolRuns(notation))
        plain += run.text;
    return plain;
}

/// All fields begin at one line, whatever section they stand in.
void alignFields(const QWidget& page, int leastWidth) {
    const auto labels = page.findChildren<QLabel*>();
    int width = leastWidth;
    for (const QLabel* label : labels)
        if (label->buddy()) width = std::max(width, label->sizeHint().width());
    for (QLabel* label : labels)
        if (label->buddy()) label->setMinimumWidth(width);
}

bool exists(const Installation& installation, RecordKind kind, Id id) {
    if (kind == RecordKind::Site) return installation.site.id == id;
    bool found = false;
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        if (RecordTraits<Record>::kind == kind)
            found = loopwright::find(installation.*RecordTraits<Record>::rows, id) != nullptr;
    });
    return found;
}

} // namespace

RecordForm::RecordForm(const Appearance& appearance, ChangeDoor door, IdSource& ids, QWidget* parent)
  : QScrollArea(parent)
  , appearance_(appearance)
  , door_(std::move(door))
  , ids_(ids) {
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
}

void RecordForm::open(const SiteViewPtr& view, RecordKind kind, Id id) {
    const SiteViewPtr before = view_;
    leaveField();
    const bool isChanged = view_ != before; // by what was typed: then `view` is no longer the newest
    if (!isChanged) view_ = view;
    kind_ = kind;
    id_ = id;
    bound_.clear();
    belongings_.clear();
    photos_ = nullptr;
    build();
}

void RecordForm::setView(const SiteViewPtr& view) {
    view_ = view;
    if (!isOpen()) return;
    if (view_ && exists(view_->installation, kind_, id_)) {
        refresh();
        return;
    }
    open(view_, kind_, {});
    emit closed();
}

/// Hands over what is being typed before its field goes.
void RecordForm::leaveField() {
    QWidget* inHand = focusWidget();
    if (inHand && inHand->hasFocus()) inHand->clearFocus();
}

void RecordForm::takeKeyboard() {
    if (!bound_.empty()) bound_.front().editor->setFocus(Qt::OtherFocusReason);
}

void RecordForm::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit closed();
    else
        QScrollArea::keyPressEvent(event);
}

void RecordForm::build() {
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(pageMargin, pageMargin, pageMargin, pageMargin);
    column->setSpacing(sectionGap);
    if (isOpen()) {
        addHead(*column);
        for (const FormSection& section : formPlan(kind_))
            addSection(section, *column);
        alignFields(*page, appearance_.type.scaled(labelWidth));
        for (const RecordKind kind : belongings(kind_))
            addBelongings(kind, *column);
        if (kind_ == RecordKind::Observation) addPhotos(*column);
        refresh();
    }
    column->addStretch(1);
    setWidget(page);
}

void RecordForm::addHead(QVBoxLayout& column) {
    title_ = new QLabel(this);
    title_->setObjectName("recordTitle");
    title_->setFont(appearance_.type.screen(ScreenText::PageTitle));
    column.addWidget(title_);
    refusal_ = new QLabel(this);
    refusal_->setWordWrap(true);
    refusal_->hide();
    column.addWidget(refusal_);
}

void RecordForm::addSection(const FormSection& section, QVBoxLayout& column) {
    if (*section.heading != '\0') {
        auto* heading = new QLabel(QCoreApplication::translate("RecordForm", section.heading), this);
        heading->setFont(appearance_.type.screen(ScreenText::PanelTitle));
        column.addWidget(heading);
    }
    auto* fields = new QFormLayout;
    fields->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    fields->setLabelAlignment(Qt::AlignLeft);
    fields->setHorizontalSpacing(sectionGap);
    fields->setVerticalSpacing(fieldGap);
    for (const std::string_view key : section.fields)
        addField(section.kind, key, *fields);
    column.addLayout(fields);
}

void RecordForm::addField(RecordKind kind, std::string_view key, QFormLayout& fields) {
    const FieldInfo* info = fieldInfo(kind, key);
    const QString name =
        appearance_.words.word("field." + std::string(recordName(kind)) + '.' + std::string(key));
    auto* editor = new FieldEditor(appearance_, *info, spoken(name),
                                   fieldOptions(*view_, kind, *info, appearance_.words), this);
    connect(editor, &FieldEditor::entered, this,
            [this, editor, kind](const QString& typed) { enter(*editor, kind, typed); });
    bound_.push_back({editor, kind});
    if (info->kind == FieldKind::Flag) {
        fields.addRow(QString(), editor);
        return;
    }
    auto* label = new QLabel(this);
    label->setText(withScriptSize(richSymbol(name), label->font()));
    label->setBuddy(editor);
    fields.addRow(label, editor);
}

void RecordForm::addBelongings(RecordKind kind, QVBoxLayout& column) {
    auto* list = new BelongingsList(appearance_, kind_, kind, this);
    connect(list, &BelongingsList::openWanted, this, &RecordForm::recordWanted);
    connect(list, &BelongingsList::addWanted, this, &RecordForm::addBelonging);
    connect(
        list, &BelongingsList::removeWanted, this,
        [this](RecordKind gone, Id id) {
            take({removedLabel(utf8(recordTitle(view_->installation, gone, id))), {removeRecord(gone, id)}},
                 nullptr);
        },
        Qt::QueuedConnection); // the button that asked belongs to the line that goes
    belongings_.push_back(list);
    column.addWidget(list);
}

void RecordForm::addPhotos(QVBoxLayout& column) {
    photos_ = new PhotoRow(appearance_, this);
    connect(photos_, &PhotoRow::addWanted, this, [this] { emit photoWanted(id_); });
    connect(photos_, &PhotoRow::openWanted, this,
            [this](Id photo) { emit recordWanted(RecordKind::Photo, photo); });
    column.addWidget(photos_);
}

bool RecordForm::isSealed() const {
    const Visit* visit = loopwright::find(view_->installation.visits, view_->visit);
    return visit && visit->state == VisitState::Issued;
}

std::string RecordForm::storedText(const Bound& bound) const {
    const Id row = isReading(bound.kind) ? readingRow(*view_, bound.kind, id_) : id_;
    return fieldText(view_->installation, bound.kind, row, bound.editor->field().key).value_or(std::string());
}

void RecordForm::refresh() {
    const QString title = recordTitle(view_->installation, kind_, id_);
    QString kindName = appearance_.words.word("record." + std::string(recordName(kind_)));
    if (!kindName.isEmpty()) kindName[0] = kindName[0].toUpper();
    title_->setText(title.isEmpty() ? kindName : title);
    refusal_->hide();
    for (const Bound& bound : bound_) {
        bound.editor->setStored(storedText(bound));
        const bool ofVisit = isReading(bound.kind) || bound.kind == RecordKind::Visit ||
                             bound.kind == RecordKind::Observation || bound.kind == RecordKind::Instrument ||
                             bound.kind == RecordKind::CurrentLog;
        bound.editor->setReadOnly(ofVisit && isSealed());
    }
    for (BelongingsList* list : belongings_)
        list->show(*view_, id_, kind_ == RecordKind::Visit && isSealed());
    if (photos_) photos_->show(*view_, id_, isSealed());
}

void RecordForm::enter(FieldEditor& editor, RecordKind kind, const QString& typed) {
    const FieldInfo& info = editor.field();
    const bool isFigure = info.kind == FieldKind::Figure;
    const auto stored = parseField(info, utf8(isFigure ? typed.trimmed() : typed),
                                   isFigure ? appearance_.words.numberFormat() : NumberFormat{});
    if (!stored) {
        editor.refuse(appearance_.words.sentence(stored.error()));
        return;
    }
    std::vector<Edit::Value> values{{std::string(info.key), *stored}};
    const Edit edit = isReading(kind) ? setReading(*view_, kind, id_, std::move(values), ids_)
                                      : Edit{Edit::Step::Set, kind, id_, std::move(values)};
    std::string shown = utf8(typed);
    if (isFigure && !info.unit.symbol.empty() && !shown.empty())
        shown += "\u00A0" + std::string(info.unit.symbol);
    const std::string place = utf8(recordTitle(view_->installation, kind_, id_));
    take({fieldChangeLabel(place, kind, info.key, std::move(shown)), {edit}}, &editor);
}

void RecordForm::addBelonging(RecordKind kind) {
    Edit edit{Edit::Step::Insert, kind, ids_.next(), {{std::string(ownerKey(kind, kind_)), id_.text()}}};
    const Id added = edit.id;
    const QString kindName = appearance_.words.word("record." + std::string(recordName(kind)));
    if (const FieldInfo* name = fieldInfo(kind, "name"))
        edit.values.push_back({std::string(name->key), utf8(tr("New %1").arg(kindName))});
    if (const FieldInfo* label = fieldInfo(kind, "label"))
        edit.values.push_back({std::string(label->key), utf8(tr("New %1").arg(kindName))});
    take({addedLabel(utf8(kindName)), {std::move(edit)}}, nullptr);
    if (exists(view_->installation, kind, added)) emit recordWanted(kind, added);
}

void RecordForm::take(const Change& change, FieldEditor* editor) {
    const auto done = door_(change);
    if (done) return;
    const QString sentence = appearance_.words.sentence(done.error());
    if (editor) {
        editor->refuse(sentence);
    } else {
        refusal_->setText(sentence);
        refusal_->show();
    }
}

} // namespace loopwright
