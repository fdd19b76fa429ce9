// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/office_labels.h"

#include "forms/frame/labels.h"
#include "forms/look/mark.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QPainter>
#include <QSettings>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int side = 14;
constexpr int gap = 6;
constexpr int between = 18;
constexpr int leastField = 60;

/// "report/label/make-safe": by the grade's key, so that the order of grades may change.
QString settingOf(Grade grade) {
    const std::string_view key = choiceKey(grade);
    return QStringLiteral("report/label/") +
           QString::fromLatin1(key.data(), static_cast<qsizetype>(key.size()));
}

template <class Each>
void forEachGrade(Each&& each) {
    for (const Choice& choice : choicesOf<Grade>().choices)
        each(static_cast<Grade>(choice.value), static_cast<std::size_t>(choice.value));
}

class GradeMark final : public QWidget {
  public:
    GradeMark(const Appearance& appearance, Grade grade)
      : appearance_(appearance)
      , grade_(grade) {
        const int size = appearance.type.scaled(mark_size::strip);
        setFixedSize(size, size);
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        drawMark(painter, rect(), markOf(grade_), appearance_.look().*inkOf(grade_));
    }

  private:
    const Appearance& appearance_;
    Grade grade_;
};

} // namespace

OfficeLabels officeLabelsIn(const QSettings& settings) {
    OfficeLabels labels;
    forEachGrade(
        [&](Grade grade, std::size_t at) { labels[at] = settings.value(settingOf(grade)).toString(); });
    return labels;
}

void keepOfficeLabels(QSettings& settings, const OfficeLabels& labels) {
    forEachGrade([&](Grade grade, std::size_t at) { settings.setValue(settingOf(grade), labels[at]); });
}

OfficeLabelFields::OfficeLabelFields(const Appearance& appearance, const OfficeLabels& labels,
                                     QWidget* parent)
  : RoleFrame(appearance, &Look::panel, Qt::BottomEdge, &Look::line, parent)
  , told_(labels) {
    auto* hint = new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft);
    hint->setNotation(tr("What your local scheme calls each grade. It is printed beside ours."));
    auto* row = new QHBoxLayout;
    row->setSpacing(gap);
    forEachGrade([&](Grade grade, std::size_t at) {
        const QString name = appearance.words.word(wordKey(grade));
        auto* word = new RoleLabel(appearance, ScreenText::Figure, inkOf(grade), Weight::Semibold);
        word->setNotation(name);
        auto* field = fields_[at] = new QLineEdit(labels[at]);
        field->setMinimumWidth(appearance.type.scaled(leastField));
        field->setAccessibleName(tr("Local label of “%1”").arg(name));
        connect(field, &QLineEdit::editingFinished, this, &OfficeLabelFields::tell);
        if (row->count() > 0) row->addSpacing(between);
        row->addWidget(new GradeMark(appearance, grade));
        row->addWidget(word);
        row->addWidget(field, 1);
    });
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(side, 8, side, 10);
    column->setSpacing(gap);
    column->addWidget(hint);
    column->addLayout(row);
}

/// A field that still has the keyboard is left as it is taken down, when there is nobody to tell any more.
OfficeLabelFields::~OfficeLabelFields() {
    for (QLineEdit* field : fields_)
        field->disconnect(this);
}

void OfficeLabelFields::tell() {
    OfficeLabels labels;
    for (std::size_t at = 0; at < gradeCount; ++at)
        labels[at] = fields_[at]->text().trimmed();
    if (labels == told_) return;
    told_ = labels;
    emit typed(labels);
}

} // namespace loopwright
