// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/report.h"
#include "forms/look/look.h"

#include <QAbstractScrollArea>

namespace loopwright {

/// Shows a report's pages one below the other, each upright or lying as it will be printed. Qt's own print
/// preview takes the form of the first page for all.
class ReportPreview final : public QAbstractScrollArea {
    Q_OBJECT

  public:
    explicit ReportPreview(const Look& look, QWidget* parent = nullptr);

    void setReport(Report report);
    const Report& report() const { return report_; }

    int pageCount() const { return static_cast<int>(report_.pages.size()); }
    int currentPage() const; ///< the one that fills most of the view, from 1; 0 without pages
    void goToPage(int page);

    /// Screen pixels a millimetre; 0 fits the widest page to the view.
    void setZoom(double pixelsPerMillimetre);
    double zoom() const;

  public slots:
    void zoomIn();
    void zoomOut();
    void fitWidth();

  signals:
    void currentPageChanged(int page);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;

  private:
    QRectF placeOf(int index) const; ///< of a page, in pixels of the whole
    void arrange();

    const Look& look_;
    Report report_;
    double zoom_ = 0;
    int told_ = 0;
};

} // namespace loopwright
