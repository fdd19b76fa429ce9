// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/paper_style.h"

#include <QStyleOption>

namespace loopwright {
namespace {

constexpr int textInset = 5; ///< between a field's edge and its text, besides what Fusion leaves

} // namespace

/// Without the arrow buttons at the ends: the whole length is the groove.
QRect PaperStyle::scrollBarRect(const QStyleOptionSlider& option, SubControl part) const {
    const bool flat = option.orientation == Qt::Horizontal;
    const int length = flat ? option.rect.width() : option.rect.height();
    const int range = option.maximum - option.minimum;
    int slider = length;
    if (range > 0) {
        const double shown = static_cast<double>(option.pageStep) / (range + option.pageStep);
        slider = qBound(qMin(length, pixelMetric(PM_ScrollBarSliderMin, &option, nullptr)),
                        static_cast<int>(length * shown), length);
    }
    const int start = sliderPositionFromValue(option.minimum, option.maximum, option.sliderPosition,
                                              length - slider, option.upsideDown);
    const auto piece = [&](int from, int to) {
        const QRect& rect = option.rect;
        return flat ? QRect(rect.left() + from, rect.top(), to - from, rect.height())
                    : QRect(rect.left(), rect.top() + from, rect.width(), to - from);
    };
    switch (part) {
    case SC_ScrollBarSlider:
        return visualRect(option.direction, option.rect, piece(start, start + slider));
    case SC_ScrollBarGroove:
        return option.rect;
    case SC_ScrollBarSubPage:
        return visualRect(option.direction, option.rect, piece(0, start));
    case SC_ScrollBarAddPage:
        return visualRect(option.direction, option.rect, piece(start + slider, length));
    default:
        return {};
    }
}

QRect PaperStyle::subElementRect(SubElement element, const QStyleOption* option,
                                 const QWidget* widget) const {
    const QRect rect = QProxyStyle::subElementRect(element, option, widget);
    const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
    if (element == SE_LineEditContents && frame && frame->lineWidth > 0)
        return rect.adjusted(textInset, 0, -textInset, 0);
    return rect;
}

QRect PaperStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                                 const QWidget* widget) const {
    if (const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
        bar && control == CC_ScrollBar)
        return scrollBarRect(*bar, part);
    const QRect rect = QProxyStyle::subControlRect(control, option, part, widget);
    return part == SC_ComboBoxEditField && control == CC_ComboBox ? rect.adjusted(textInset, 0, 0, 0) : rect;
}

QSize PaperStyle::sizeFromContents(ContentsType contents, const QStyleOption* option, const QSize& size,
                                   const QWidget* widget) const {
    constexpr int fieldHeight = 28, menuItemHeight = 26, menuBarPadding = 20, tabHeight = 32;
    constexpr int buttonPadding = 4, chevronRoom = 8;
    QSize result = QProxyStyle::sizeFromContents(contents, option, size, widget);
    switch (contents) {
    case CT_LineEdit:
        result.rwidth() += 2 * textInset;
        result.setHeight(qMax(result.height(), type_.scaled(fieldHeight)));
        break;
    case CT_ComboBox:
        result.rwidth() += textInset + chevronRoom;
        result.setHeight(qMax(result.height(), type_.scaled(fieldHeight)));
        break;
    case CT_PushButton:
        result.rwidth() += 2 * buttonPadding;
        [[fallthrough]];
    case CT_SpinBox:
        result.setHeight(qMax(result.height(), type_.scaled(fieldHeight)));
        break;
    case CT_MenuItem:
        if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
            item && item->menuItemType != QStyleOptionMenuItem::Separator)
            result.setHeight(qMax(result.height(), type_.scaled(menuItemHeight)));
        break;
    case CT_MenuBarItem:
        result = QSize(size.width() + menuBarPadding, size.height() + 12);
        break;
    case CT_TabBarTab:
        result.setHeight(type_.scaled(tabHeight));
        break;
    default:
        break;
    }
    return result;
}

int PaperStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    switch (metric) {
    case PM_DefaultFrameWidth:
        return 2; // room for the focus ring
    case PM_ScrollBarExtent:
        return 12;
    case PM_ScrollBarSliderMin:
        return 28;
    case PM_SplitterWidth:
        return 1; // Qt widens what can be grabbed
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
    case PM_SmallIconSize:
    case PM_ButtonIconSize:
        return type_.scaled(16);
    case PM_ToolBarIconSize:
        return type_.scaled(20);
    case PM_MenuPanelWidth:
        return 1;
    case PM_MenuVMargin:
        return 4;
    case PM_MenuHMargin:
    case PM_MenuBarHMargin:
    case PM_MenuBarVMargin:
    case PM_MenuBarPanelWidth:
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
    case PM_TabBarTabShiftVertical:
    case PM_ScrollView_ScrollBarSpacing:
        return 0;
    case PM_LayoutHorizontalSpacing:
    case PM_LayoutVerticalSpacing:
        return 8;
    case PM_LayoutLeftMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutBottomMargin:
        return 12;
    case PM_ToolTipLabelFrameWidth:
        return 6;
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int PaperStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* data) const {
    switch (hint) {
    case SH_Widget_Animate:
    case SH_Widget_Animation_Duration:
    case SH_ScrollBar_Transient:
    case SH_EtchDisabledText:
    case SH_ComboBox_Popup:
        return 0;
    case SH_ItemView_ShowDecorationSelected:
        return 1;
    case SH_Table_GridLineColor:
        return static_cast<int>(look_.line.rgba());
    default:
        return QProxyStyle::styleHint(hint, option, widget, data);
    }
}

} // namespace loopwright
