// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sums/sum_answer.h"

#include "forms/frame/labels.h"
#include "forms/words/notation.h"
#include "forms/words/sum_words.h"
#include "forms/words/working_text.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int symbolWidth = 70, valueWidth = 110;
constexpr int rowGap = 3, columnGap = 12, stepGap = 10;

} // namespace

SumAnswer::SumAnswer(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    clear();
}

void SumAnswer::clear() {
    delete body_;
    body_ = new QWidget;
    grid_ = new QGridLayout(body_);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setVerticalSpacing(rowGap);
    grid_->setHorizontalSpacing(columnGap);
    grid_->setColumnMinimumWidth(0, appearance_.type.scaled(symbolWidth));
    grid_->setColumnMinimumWidth(1, appearance_.type.scaled(valueWidth));
    grid_->setColumnStretch(2, 1);
    layout()->addWidget(body_);
}

void SumAnswer::show(const sums::Sum& sum, const sums::Answers& answers) {
    clear();
    for (const sums::Answer& answer : answers.cases)
        addCase(sum, answer);
}

void SumAnswer::showRefusal(const QString& sentence, bool loud) {
    clear();
    addWide(loud ? &Look::fails : &Look::inkSoft, loud)->setNotation(sentence);
}

void SumAnswer::addCase(const sums::Sum& sum, const sums::Answer& answer) {
    for (const Working& working : answer.workings())
        addWorking(working);
    for (const sums::Result& result : sum.results)
        if (const auto* word = std::get_if<std::string_view>(&answer.value(result.key)))
            addWide(&Look::ink, true)
                ->setNotation(sums::resultName(result, appearance_.words) + QStringLiteral(": ") +
                              sums::wordName(*word, appearance_.words));
    grid_->setRowMinimumHeight(grid_->rowCount(), appearance_.type.scaled(stepGap));
}

void SumAnswer::addWorking(const Working& working) {
    for (const WorkingLine& line : termLines(working, appearance_.words))
        addLine(line, &Look::inkSoft, false);
    addWide(&Look::ink)->setFormula(text(working.formula));
    if (const auto line = resultLine(working, appearance_.words)) addLine(*line, &Look::ink, true);
    if (const QString source = sourceLine(working); !source.isEmpty())
        addWide(&Look::inkSoft)->setNotation(source);
    grid_->setRowMinimumHeight(grid_->rowCount(), appearance_.type.scaled(stepGap));
}

void SumAnswer::addLine(const WorkingLine& line, Role ink, bool strong) {
    const int row = grid_->rowCount();
    const Weight weight = strong ? Weight::Semibold : Weight::Regular;
    auto* symbol = new RoleLabel(appearance_, ScreenText::Figure, ink, weight);
    symbol->setFormula(line.symbol);
    auto* value = new RoleLabel(appearance_, ScreenText::Figure, ink, weight);
    value->setNotation(line.value);
    auto* from = new RoleLabel(appearance_, ScreenText::Figure, &Look::inkSoft);
    from->setNotation(line.from);
    from->setWordWrap(true);
    int column = 0;
    for (RoleLabel* label : {symbol, value, from})
        grid_->addWidget(label, row, column++);
}

RoleLabel* SumAnswer::addWide(Role ink, bool strong) {
    auto* label =
        new RoleLabel(appearance_, ScreenText::Figure, ink, strong ? Weight::Semibold : Weight::Regular);
    label->setWordWrap(true);
    grid_->addWidget(label, grid_->rowCount(), 0, 1, 3);
    return label;
}

QString SumAnswer::spoken() const {
    QStringList lines;
    for (const auto* label : body_->findChildren<RoleLabel*>())
        if (!label->notation().isEmpty()) lines << plainNotation(label->notation());
    return lines.join(QStringLiteral(" "));
}

} // namespace loopwright
