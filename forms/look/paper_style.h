// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"
#include "forms/look/type.h"

#include <QProxyStyle>

class QStyleOptionSlider;
class QStyleOptionSpinBox;

namespace loopwright {

/// Fusion's geometry under our own surfaces. What it does not draw here, Fusion draws from the palette.
class PaperStyle final : public QProxyStyle {
  public:
    /// The look must outlive the style.
    PaperStyle(const Look& look, const Type& type)
      : QProxyStyle(QStringLiteral("Fusion"))
      , look_(look)
      , type_(type) {}

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override;
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                         const QWidget* widget) const override;
    QRect subElementRect(SubElement element, const QStyleOption* option,
                         const QWidget* widget) const override;
    QSize sizeFromContents(ContentsType contents, const QStyleOption* option, const QSize& size,
                           const QWidget* widget) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* data) const override;

  private:
    void drawFocusRect(const QStyleOption& option, QPainter& painter, const QWidget* widget) const;
    void drawLineEdit(const QStyleOption& option, QPainter& painter, const QWidget* widget) const;
    void drawSpinBox(const QStyleOptionSpinBox& option, QPainter& painter, const QWidget* widget) const;
    void drawMenuItem(const QStyleOption& option, QPainter& painter, const QWidget* widget) const;
    bool drawSurface(PrimitiveElement element, const QStyleOption& option, QPainter& painter) const;
    bool drawIndicator(PrimitiveElement element, const QStyleOption& option, QPainter& painter) const;
    QRect scrollBarRect(const QStyleOptionSlider& option, SubControl part) const;

    const Look& look_;
    Type type_;
};

} // namespace loopwright
