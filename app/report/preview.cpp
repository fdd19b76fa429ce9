// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/preview.h"

#include <QKeyEvent>
#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>

namespace loopwright {
namespace {

constexpr double between = 16; ///< pixels round the pages
constexpr double zoomStep = 1.2;
constexpr double leastZoom = 0.5;
constexpr double mostZoom = 20;

} // namespace

ReportPreview::ReportPreview(const Look& look, QWidget* parent)
  : QAbstractScrollArea(parent)
  , look_(look) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Report preview"));
    setFrameShape(QFrame::NoFrame);
}

void ReportPreview::setReport(Report report) {
    report_ = std::move(report);
    arrange();
}

double ReportPreview::zoom() const {
    if (zoom_ > 0) return zoom_;
    double widest = 1;
    for (const Report::Page& page : report_.pages)
        widest = std::max(widest, paperOf(page).width());
    return std::max(leastZoom, (viewport()->width() - 2 * between) / widest);
}

void ReportPreview::setZoom(double pixelsPerMillimetre) {
    const int page = currentPage();
    zoom_ = pixelsPerMillimetre <= 0 ? 0 : std::clamp(pixelsPerMillimetre, leastZoom, mostZoom);
    arrange();
    goToPage(page);
}

void ReportPreview::zoomIn() {
    setZoom(zoom() * zoomStep);
}
void ReportPreview::zoomOut() {
    setZoom(zoom() / zoomStep);
}
void ReportPreview::fitWidth() {
    setZoom(0);
}

QRectF ReportPreview::placeOf(int index) const {
    double top = between;
    for (int before = 0; before < index; ++before)
        top += paperOf(report_.pages[static_cast<std::size_t>(before)]).height() * zoom() + between;
    const QSizeF size = paperOf(report_.pages[static_cast<std::size_t>(index)]) * zoom();
    const double left = std::max(between, (viewport()->width() - size.width()) / 2);
    return {QPointF(left, top), size};
}

void ReportPreview::arrange() {
    double width = 0;
    double height = 0;
    for (int index = 0; index < pageCount(); ++index) {
        const QRectF place = placeOf(index);
        width = std::max(width, place.width() + 2 * between);
        height = place.bottom() + between;
    }
    const auto range = [](QScrollBar* bar, double whole, int page) {
        bar->setRange(0, std::max(0, static_cast<int>(whole) - page));
        bar->setPageStep(page);
        bar->setSingleStep(40);
    };
    range(verticalScrollBar(), height, viewport()->height());
    range(horizontalScrollBar(), width, viewport()->width());
    viewport()->update();
}

int ReportPreview::currentPage() const {
    const double middle = verticalScrollBar()->value() + viewport()->height() / 2.0;
    for (int index = 0; index < pageCount(); ++index)
        if (placeOf(index).bottom() + between > middle) return index + 1;
    return pageCount();
}

void ReportPreview::goToPage(int page) {
    if (page < 1 || page > pageCount()) return;
    verticalScrollBar()->setValue(static_cast<int>(placeOf(page - 1).top() - between));
}

void ReportPreview::paintEvent(QPaintEvent* event) {
    QPainter painter(viewport());
    painter.fillRect(event->rect(), look_.window);
    painter.translate(-horizontalScrollBar()->value(), -verticalScrollBar()->value());
    const QRectF shown =
        QRectF(event->rect()).translated(horizontalScrollBar()->value(), verticalScrollBar()->value());
    for (int index = 0; index < pageCount(); ++index) {
        const QRectF place = placeOf(index);
        if (!place.intersects(shown)) continue;
        painter.fillRect(place, printLook().sheet);
        painter.setPen(look_.line);
        painter.drawRect(place);
        painter.save();
        painter.setClipRect(place);
        painter.translate(place.topLeft());
        painter.scale(zoom(), zoom());
        paintPage(painter, report_.pages[static_cast<std::size_t>(index)]);
        painter.restore();
    }
}

void ReportPreview::resizeEvent(QResizeEvent* event) {
    QAbstractScrollArea::resizeEvent(event);
    arrange();
}

void ReportPreview::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_PageDown:
        return goToPage(currentPage() + 1);
    case Qt::Key_PageUp:
        return goToPage(currentPage() - 1);
    case Qt::Key_Home:
        return goToPage(1);
    case Qt::Key_End:
        return goToPage(pageCount());
    case Qt::Key_Plus:
        return zoomIn();
    case Qt::Key_Minus:
        return zoomOut();
    case Qt::Key_0:
        return fitWidth();
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

void ReportPreview::wheelEvent(QWheelEvent* event) {
    if (!event->modifiers().testFlag(Qt::ControlModifier)) return QAbstractScrollArea::wheelEvent(event);
    if (event->angleDelta().y() > 0)
        zoomIn();
    else
        zoomOut();
    event->accept();
}

void ReportPreview::scrollContentsBy(int, int) {
    viewport()->update();
    const int page = currentPage();
    if (page == told_) return;
    told_ = page;
    emit currentPageChanged(page);
}

} // namespace loopwright
