// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/records/field_editor.h"

#include "core/model/codec.h"
#include "forms/frame/appearance.h"
#include "forms/look/style.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QStyle>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int figureWidth = 120;
constexpr int dayWidth = 160;
constexpr int textWidth = 420;

int widthOf(FieldKind kind) {
    return kind == FieldKind::Figure ? figureWidth : kind == FieldKind::Day ? dayWidth : textWidth;
}
constexpr int leastLines = 3, mostLines = 10;
constexpr double paragraphMargin = 6; ///< as far from the edge as a line's text

} // namespace

FieldEditor::FieldEditor(const Appearance& appearance, const FieldInfo& field, const QString& name,
                         std::vector<FieldOption> options, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance)
  , field_(field)
  , options_(std::move(options)) {
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    QWidget* control = makeControl(name, options_);
    control->setObjectName(text(field.key));
    control->setAccessibleName(name);
    control->installEventFilter(this);
    setFocusProxy(control);
    row->addWidget(control);
    if (field.kind == FieldKind::Figure) {
        note_ = new QLabel(text(field.unit.symbol), this);
        note_->setFont(appearance.type.screen(ScreenText::Body));
        row->addWidget(note_);
    }
    row->addStretch(1);

    refusal_ = new QLabel(this);
    refusal_->setObjectName("refusal");
    refusal_->setWordWrap(true);
    refusal_->setFont(appearance.type.screen(ScreenText::Note));
    refusal_->hide();

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(row);
    column->addWidget(refusal_);
}

/// A line that still has the keyboard is left as it is taken down, when there is nobody to tell any more.
FieldEditor::~FieldEditor() {
    if (line_) line_->disconnect(this);
}

QWidget* FieldEditor::makeControl(const QString& name, const std::vector<FieldOption>& options) {
    if (field_.kind == FieldKind::Flag) {
        flag_ = new QCheckBox(name, this);
        connect(flag_, &QCheckBox::clicked, this, &FieldEditor::leave);
        return flag_;
    }
    if (!options.empty()) {
        choice_ = new QComboBox(this);
        for (const FieldOption& option : options)
            choice_->addItem(option.shown, text(option.stored));
        choice_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
        choice_->setMaximumWidth(appearance_.type.scaled(textWidth));
        connect(choice_, &QComboBox::activated, this, &FieldEditor::leave);
        return choice_;
    }
    if (field_.kind == FieldKind::LongText) {
        paragraphs_ = new QPlainTextEdit(this);
        paragraphs_->setTabChangesFocus(true);
        paragraphs_->document()->setDocumentMargin(paragraphMargin);
        paragraphs_->setFixedWidth(appearance_.type.scaled(textWidth));
        connect(paragraphs_, &QPlainTextEdit::textChanged, this, &FieldEditor::fitParagraphs);
        fitParagraphs();
        return paragraphs_;
    }
    line_ = new QLineEdit(this);
    line_->setFixedWidth(appearance_.type.scaled(widthOf(field_.kind)));
    if (field_.kind == FieldKind::Figure) line_->setAlignment(Qt::AlignRight);
    connect(line_, &QLineEdit::editingFinished, this, &FieldEditor::leave);
    return line_;
}

/// As high as its text, in whole lines; longer texts scroll.
void FieldEditor::fitParagraphs() {
    const QFontMetrics metrics(paragraphs_->font());
    const int edge = static_cast<int>(paragraphMargin) + paragraphs_->frameWidth();
    const int bar = paragraphs_->style()->pixelMetric(QStyle::PM_ScrollBarExtent);
    const QRect room(0, 0, appearance_.type.scaled(textWidth) - 2 * edge - bar, QWIDGETSIZE_MAX);
    const int needed = metrics.boundingRect(room, Qt::TextWordWrap, paragraphs_->toPlainText()).height();
    const int least = leastLines * metrics.lineSpacing(), most = mostLines * metrics.lineSpacing();
    constexpr int slack = 4; // without it the last line counts as out of sight
    paragraphs_->setFixedHeight(std::clamp(needed, least, most) + 2 * edge + slack);
}

QString FieldEditor::writtenText() const {
    if (field_.kind != FieldKind::Figure) return text(stored_);
    const auto entry = parseEntry(stored_, field_.unit);
    return entry ? text(formatEntry(*entry, appearance_.words.numberFormat())) : text(stored_);
}

QString FieldEditor::shownText() const {
    if (isAtHand()) return writtenText();
    if (field_.kind == FieldKind::Day) {
        if (const auto day = codec::readDate(stored_)) return appearance_.words.date(*day);
    } else if (field_.kind == FieldKind::Figure) {
        if (const auto entry = parseEntry(stored_, field_.unit)) return appearance_.words.figure(*entry);
    }
    return text(stored_);
}

/// The unit, and where the figure comes from unless it was read.
QString FieldEditor::noteText() const {
    QStringList parts;
    if (!field_.unit.symbol.empty()) parts << text(field_.unit.symbol);
    const auto entry = parseEntry(stored_, field_.unit);
    if (entry && entry->origin != Origin::Read && !isAtHand())
        parts << appearance_.words.word("origin." + std::string(originWord(entry->origin)));
    return parts.join(QStringLiteral(", "));
}

/// Whether a person may be typing in the line at this moment.
bool FieldEditor::isAtHand() const {
    return line_ && line_->hasFocus() && !line_->isReadOnly();
}

void FieldEditor::setStored(const std::string& stored) {
    const bool isBeingTyped =
        (line_ && line_->hasFocus() && line_->isModified()) ||
        (paragraphs_ && paragraphs_->hasFocus() && paragraphs_->document()->isModified());
    stored_ = stored;
    if (!isBeingTyped) showStored();
}

void FieldEditor::showStored() {
    refusal_->hide();
    if (flag_) flag_->setChecked(stored_ == "true");
    if (choice_) choice_->setCurrentIndex(std::max(0, choice_->findData(text(stored_))));
    if (line_) {
        if (line_->text() != shownText()) line_->setText(shownText());
        line_->setModified(false);
        setRefused(*line_, false);
    }
    if (note_) {
        note_->setText(noteText());
        focusProxy()->setAccessibleDescription(noteText());
    }
    if (paragraphs_ && paragraphs_->toPlainText() != shownText()) paragraphs_->setPlainText(shownText());
    if (paragraphs_) paragraphs_->document()->setModified(false);
}

void FieldEditor::setReadOnly(bool readOnly) {
    if (line_) line_->setReadOnly(readOnly);
    if (paragraphs_) paragraphs_->setReadOnly(readOnly);
    if (choice_) choice_->setEnabled(!readOnly);
    if (flag_) flag_->setEnabled(!readOnly);
}

void FieldEditor::refuse(const QString& sentence) {
    refusal_->setText(sentence);
    QPalette inks = refusal_->palette();
    inks.setColor(QPalette::WindowText, appearance_.look().fails);
    refusal_->setPalette(inks);
    refusal_->show();
    if (line_) setRefused(*line_, true);
}

/// Whether there is something that Esc can take back.
bool FieldEditor::hasTyped() const {
    return !refusal_->isHidden() || (line_ && line_->isModified()) ||
           (paragraphs_ && paragraphs_->document()->isModified());
}

void FieldEditor::leave() {
    QString typed;
    if (flag_)
        typed = flag_->isChecked() ? "true" : "false";
    else if (choice_)
        typed = choice_->currentData().toString();
    else if (paragraphs_)
        typed = paragraphs_->toPlainText();
    else
        typed = line_->text();
    const bool isTyped = line_ || paragraphs_;
    if (isTyped ? !hasTyped() || typed == writtenText() : typed == text(stored_)) {
        showStored();
        return;
    }
    if (line_) line_->setModified(false);
    if (paragraphs_) paragraphs_->document()->setModified(false);
    emit entered(typed);
}

bool FieldEditor::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusOut && watched == paragraphs_) leave();
    const bool changesHands = event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut;
    if (changesHands && watched == line_ && !hasTyped()) showStored();
    // A wheel that scrolls the form must not change a choice on its way.
    if (event->type() == QEvent::Wheel && watched == choice_ && !choice_->hasFocus()) {
        event->ignore();
        return true;
    }
    const bool isTyped = watched == line_ || watched == paragraphs_;
    if (event->type() == QEvent::KeyPress && isTyped &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && hasTyped()) {
        showStored();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace loopwright
