// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/report_page.h"

#include "forms/frame/labels.h"
#include "forms/look/style.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QToolButton>

namespace loopwright {
namespace {

constexpr int barHeight = 40;
constexpr int side = 14;

} // namespace

ReportPage::ReportPage(const Appearance& appearance, Report report, const QList<QAction*>& actions,
                       QWidget* parent)
  : RoleFrame(appearance, &Look::window, {}, &Look::line, parent)
  , preview_(new ReportPreview(appearance.look()))
  , page_(new RoleLabel(appearance, ScreenText::Figure, &Look::inkSoft)) {
    auto* title = new RoleLabel(appearance, ScreenText::PanelTitle, &Look::ink);
    title->setNotation(report.title);
    title->setMinimumWidth(1);
    auto* bar = new RoleFrame(appearance, &Look::panel, Qt::BottomEdge);
    bar->setFixedHeight(appearance.type.scaled(barHeight));
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(side, 0, side, 1);
    row->setSpacing(8);
    row->addWidget(title, 1);
    row->addWidget(page_);
    for (QAction* action : actions) {
        auto* button = new QToolButton;
        button->setDefaultAction(action);
        button->setToolButtonStyle(Qt::ToolButtonTextOnly);
        setButtonKind(*button, ButtonKind::Quiet);
        row->addWidget(button);
    }
    auto* shut = new QPushButton(tr("Back to the sheet"));
    connect(shut, &QPushButton::clicked, this, &ReportPage::closed);
    row->addWidget(shut);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(bar);
    column->addWidget(preview_, 1);
    setFocusProxy(preview_);
    connect(preview_, &ReportPreview::currentPageChanged, this, &ReportPage::tellPage);
    preview_->setReport(std::move(report));
    tellPage(1);
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
