// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/report_page.h"

#include "forms/frame/labels.h"
#include "forms/look/style.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QToolButton>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int barHeight = 40;
constexpr int side = 14;

} // namespace

ReportPage::ReportPage(const Appearance& appearance, const OfficeLabels& labels,
                       const QList<QAction*>& actions, QWidget* parent)
  : RoleFrame(appearance, &Look::window, {}, &Look::line, parent)
  , preview_(new ReportPreview(appearance.look()))
  , labels_(new OfficeLabelFields(appearance, labels))
  , title_(new RoleLabel(appearance, ScreenText::PanelTitle, &Look::ink))
  , page_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft)) {
    title_->setMinimumWidth(1);
    auto* bar = new RoleFrame(appearance, &Look::panel, Qt::BottomEdge);
    bar->setFixedHeight(appearance.type.scaled(barHeight));
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(side, 0, side, 1);
    row->setSpacing(8);
    row->addWidget(title_, 1);
    row->addWidget(page_);
    for (QAction* action : actions) {
        auto* button = new QToolButton;
        button->setDefaultAction(action);
        button->setToolButtonStyle(Qt::ToolButtonTextOnly);
        setButtonKind(*button, ButtonKind::Quiet);
        row->addWidget(button);
    }
    auto* unfold = new QToolButton;
    unfold->setText(tr("Local labels"));
    unfold->setCheckable(true);
    setButtonKind(*unfold, ButtonKind::Quiet);
    connect(unfold, &QToolButton::toggled, labels_, &QWidget::setVisible);
    row->addWidget(unfold);
    auto* shut = new QPushButton(tr("Back to the sheet"));
    connect(shut, &QPushButton::clicked, this, &ReportPage::closed);
    row->addWidget(shut);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(bar);
    column->addWidget(labels_);
    column->addWidget(preview_, 1);
    labels_->hide();
    setFocusProxy(preview_);
    connect(labels_, &OfficeLabelFields::typed, this, &ReportPage::labelled);
    connect(preview_, &ReportPreview::currentPageChanged, this, &ReportPage::tellPage);
}

void ReportPage::show(Report report) {
    const int page = std::max(1, preview_->currentPage());
    title_->setNotation(report.title);
    preview_->setReport(std::move(report));
    preview_->goToPage(page);
    tellPage(page);
}

void ReportPage::tellPage(int page) {
    page_->setNotation(tr("Page %1 of %2").arg(page).arg(preview_->pageCount()));
}

void ReportPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit closed();
    else
        RoleFrame::keyPressEvent(event);
}

} // namespace loopwright
