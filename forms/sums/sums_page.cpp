// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sums/sums_page.h"

#include "core/sums/read_inputs.h"
#include "core/sums/registry.h"
#include "forms/frame/labels.h"
#include "forms/sums/sum_answer.h"
#include "forms/sums/sum_fields.h"
#include "forms/words/sum_words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListView>
#include <QScrollArea>
#include <QSortFilterProxyModel>
#include <QStandardItemModel>
#include <QVBoxLayout>

namespace loopwright {
namespace {

constexpr int listWidth = 270;
constexpr int side = 14, top = 10;
constexpr int keyRole = Qt::UserRole;

} // namespace

SumsPage::SumsPage(const Appearance& appearance, QWidget* parent)
  : RoleFrame(appearance, &Look::window, {}, &Look::line, parent)
  , appearance_(appearance)
  , search_(new QLineEdit)
  , list_(new QListView)
  , found_(new QSortFilterProxyModel(this))
  , title_(new RoleLabel(appearance, ScreenText::PageTitle, &Look::ink))
  , basis_(new RoleLabel(appearance, ScreenText::Note, &Look::inkSoft))
  , room_(new QScrollArea)
  , answer_(new SumAnswer(appearance)) {
    auto* sheet = new QWidget;
    auto* column = new QVBoxLayout(sheet);
    column->setContentsMargins(side + 6, top, side + 6, top);
    column->setSpacing(14);
    column->addWidget(title_);
    column->addWidget(answer_);
    column->addWidget(basis_);
    column->addStretch(1);
    basis_->setWordWrap(true);
    room_->setWidget(sheet);
    room_->setWidgetResizable(true);
    room_->setFrameShape(QFrame::NoFrame);
    room_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(makeList());
    row->addWidget(room_, 1);
    setFocusProxy(search_);
}

QWidget* SumsPage::makeList() {
    auto* sumsOf = new QStandardItemModel(this);
    for (const sums::Sum& sum : sums::allSums()) {
        auto* item = new QStandardItem(sums::sumTitle(sum, appearance_.words));
        item->setData(text(sum.key), keyRole);
        item->setEditable(false);
        sumsOf->appendRow(item);
    }
    found_->setSourceModel(sumsOf);
    found_->setFilterCaseSensitivity(Qt::CaseInsensitive);
    list_->setModel(found_);
    list_->setFrameShape(QFrame::NoFrame);
    list_->setAccessibleName(tr("Sums"));
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->viewport()->setAutoFillBackground(false);
    search_->setPlaceholderText(tr("Find a sum"));
    search_->setAccessibleName(search_->placeholderText());
    connect(search_, &QLineEdit::textChanged, this, [this](const QString& typed) {
        found_->setFilterFixedString(typed.trimmed());
        if (!list_->currentIndex().isValid()) list_->setCurrentIndex(found_->index(0, 0));
    });
    connect(search_, &QLineEdit::returnPressed, this, [this] {
        if (fields_) fields_->takeKeyboard();
    });
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& current) {
                const auto sum = sums::sumNamed(utf8(current.data(keyRole).toString()));
                if (current.isValid() && sum) open(**sum);
            });
    auto* panel = new RoleFrame(appearance_, &Look::panel, Qt::RightEdge, &Look::lineStrong);
    panel->setFixedWidth(appearance_.type.scaled(listWidth));
    auto* column = new QVBoxLayout(panel);
    column->setContentsMargins(10, top, 10, 0);
    column->addWidget(search_);
    column->addWidget(list_, 1);
    return panel;
}

void SumsPage::show(const ReferenceTables& tables, const RuleSet& rules) {
    context_.emplace(sums::SumContext{tables, rules});
    basis_->setNotation(
        tr("By %1, %2. This does not replace competence; local codes and licensed practice decide.")
            .arg(text(rules.title), text(rules.revision)));
    if (sum_)
        open(*sum_);
    else
        list_->setCurrentIndex(found_->index(0, 0));
}

void SumsPage::choose(std::string_view sum) {
    search_->clear();
    for (int row = 0; row < found_->rowCount(); ++row)
        if (utf8(found_->index(row, 0).data(keyRole).toString()) == sum)
            list_->setCurrentIndex(found_->index(row, 0));
}

void SumsPage::open(const sums::Sum& sum) {
    if (!context_) return;
    sum_ = &sum;
    delete fields_;
    fields_ = new SumFields(appearance_, sum, *context_);
    connect(fields_, &SumFields::changed, this, &SumsPage::reckon);
    title_->setNotation(sums::sumTitle(sum, appearance_.words));
    static_cast<QVBoxLayout*>(room_->widget()->layout())->insertWidget(1, fields_);
    reckon();
}

void SumsPage::reckon() {
    QStringList wanted;
    for (const sums::Input& input : sum_->inputs)
        if (input.required && fields_->isEmpty(input.key))
            wanted << sums::inputName(input, appearance_.words);
    if (!wanted.isEmpty())
        return answer_->showRefusal(tr("Still to give: %1.").arg(wanted.join(QStringLiteral("; "))), false);
    const auto inputs =
        sums::readInputs(*sum_, fields_->given(), *context_, appearance_.words.numberFormat());
    const auto refuse = [this](const sums::Refusal& refusal) {
        answer_->showRefusal(appearance_.words.sentence(refusal.what), true);
    };
    if (!inputs) return refuse(inputs.error());
    const auto answers = sums::answer(*sum_, *inputs, *context_);
    if (!answers) return refuse(answers.error());
    answer_->show(*sum_, *answers);
}

void SumsPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return emit closed();
    const bool moves = event->key() == Qt::Key_Down || event->key() == Qt::Key_Up;
    if (!moves || !search_->hasFocus()) return RoleFrame::keyPressEvent(event);
    const int step = event->key() == Qt::Key_Down ? 1 : -1;
    const QModelIndex next = found_->index(list_->currentIndex().row() + step, 0);
    if (next.isValid()) list_->setCurrentIndex(next);
}

} // namespace loopwright
