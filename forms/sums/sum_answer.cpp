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
    addWide(sentence, loud ? &Look::fails : &Look::inkSoft, loud);
}

void SumAnswer::addCase(const sums::Sum& sum, const sums::Answer& answer) {
    for (const Working& working : answer.workings())
        addWorking(working);
    for (const sums::Result& result : sum.results)
        if (const auto* word = std::get_if<std::string_view>(&answer.value(result.key)))
            addWide(sums::resultName(result, appearance_.words) + QStringLiteral(": ") +
                        sums::wordName(*word, appearance_.words),
                    &Look::ink, true);
    grid_->setRowMinimumHeight(grid_->rowCount(), appearance_.type.scaled(stepGap));
}

void SumAnswer::addWorking(const Working& working) {
    for (const WorkingLine& line : termLines(working, appearance_.words))
        addLine(line, &Look::inkSoft, false);
    addWide(text(working.formula), &Look::ink);
    if (const auto line = resultLine(working, appearance_.words)) addLine(*line, &Look::ink, true);
    if (const QString source = sourceLine(working); !source.isEmpty()) addWide(source, &Look::inkSoft);
    grid_->setRowMinimumHeight(grid_->rowCount(), appearance_.type.scaled(stepGap));
}

void SumAnswer::addLine(const WorkingLine& line, Role ink, bool strong) {
    const int row = grid_->rowCount();
    const std::array parts{line.symbol, line.value, line.from};
    for (int column = 0; column < 3; ++column) {
        auto* label = new RoleLabel(appearance_, ScreenText::Figure, column == 2 ? &Look::inkSoft : ink,
                                    strong && column < 2 ? Weight::Semibold : Weight::Regular);
        label->setNotation(parts[static_cast<std::size_t>(column)]);
        label->setWordWrap(column == 2);
        grid_->addWidget(label, row, column);
    }
}

void SumAnswer::addWide(const QString& notation, Role ink, bool strong) {
    auto* label =
        new RoleLabel(appearance_, ScreenText::Figure, ink, strong ? Weight::Semibold : Weight::Regular);
    label->setNotation(notation);
    label->setWordWrap(true);
    grid_->addWidget(label, grid_->rowCount(), 0, 1, 3);
}

QString SumAnswer::spoken() const {
    QStringList lines;
    for (const auto* label : body_->findChildren<RoleLabel*>())
        if (!label->notation().isEmpty()) lines << plainNotation(label->notation());
    return lines.join(QStringLiteral(" "));
}

} // namespace loopwright
