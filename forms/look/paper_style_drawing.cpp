// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/controls.h"
#include "forms/look/paint.h"
#include "forms/look/paper_style.h"

#include <QAbstractItemView>
#include <QPainter>
#include <QPushButton>
#include <QStyleOption>
#include <QToolButton>

namespace loopwright {

using controls::Direction;

namespace {

/// The same option with another colour for its text.
template <class Option>
Option withTextColour(const Option& option, const QColor& colour) {
    Option result(option);
    for (const auto role : {QPalette::ButtonText, QPalette::WindowText, QPalette::Text})
        result.palette.setColor(role, colour);
    return result;
}

} // namespace

void PaperStyle::drawFocusRect(const QStyleOption& option, QPainter& painter, const QWidget* widget) const {
    if (qobject_cast<const QPushButton*>(widget)) return; // drawButton has drawn it
    if (qobject_cast<const QToolButton*>(widget))
        drawFocusRing(painter, widget->rect(), look_, controls::radius);
    else
        drawFocusRing(painter, option.rect, look_);
}

void PaperStyle::drawLineEdit(const QStyleOption& option, QPainter& painter, const QWidget* widget) const {
    const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(&option);
    const bool refused = controls::isRefused(widget);
    if (frame && frame->lineWidth > 0) {
        controls::drawField(painter, option.rect, option.state, refused, look_);
        return;
    }
    const auto* view = widget && widget->parentWidget()
                           ? qobject_cast<const QAbstractItemView*>(widget->parentWidget()->parentWidget())
                           : nullptr;
    if (!view) return; // inside a combo box or a spin box, which draws the field
    painter.fillRect(option.rect, look_.sheet);
    if (refused) {
        painter.setPen(QPen(look_.fails, 2, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter.drawRect(option.rect.toRectF().adjusted(1, 1, -1, -1));
    } else {
        drawFocusRing(painter, option.rect, look_);
    }
}

bool PaperStyle::drawIndicator(PrimitiveElement element, const QStyleOption& option,
                               QPainter& painter) const {
    const QColor ink = option.state & State_Enabled ? look_.inkSoft : look_.inkFaint;
    switch (element) {
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
        controls::drawCheckBox(painter, option, look_);
        return true;
    case PE_IndicatorRadioButton:
        controls::drawRadioButton(painter, option, look_);
        return true;
    case PE_IndicatorArrowUp:
        controls::drawChevron(painter, option.rect, Direction::Up, ink);
        return true;
    case PE_IndicatorArrowDown:
        controls::drawChevron(painter, option.rect, Direction::Down, ink);
        return true;
    case PE_IndicatorArrowLeft:
        controls::drawChevron(painter, option.rect, Direction::Left, ink);
        return true;
    case PE_IndicatorArrowRight:
        controls::drawChevron(painter, option.rect, Direction::Right, ink);
        return true;
    case PE_IndicatorBranch:
        if (option.state & State_Children)
            controls::drawChevron(painter, option.rect,
                                  option.state & State_Open ? Direction::Down : Direction::Right, ink);
        return true;
    default:
        return false;
    }
}

bool PaperStyle::drawSurface(PrimitiveElement element, const QStyleOption& option, QPainter& painter) const {
    switch (element) {
    case PE_PanelTipLabel:
        controls::drawBox(painter, option.rect, look_.panel, look_.lineStrong);
        return true;
    case PE_PanelMenu:
        controls::drawBox(painter, option.rect, look_.sheet, look_.lineStrong);
        return true;
    case PE_FrameMenu:
    case PE_FrameStatusBarItem:
    case PE_PanelMenuBar:
    case PE_FrameTabWidget:
        return true;
    case PE_FrameTabBarBase:
        painter.fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), look_.line);
        return true;
    case PE_FrameGroupBox:
        painter.setPen(look_.line);
        painter.drawRect(option.rect.adjusted(0, 0, -1, -1));
        return true;
    case PE_Frame: {
        const bool focused = option.state & State_HasFocus;
        painter.setPen(look_.lineStrong);
        painter.drawRect(option.rect.adjusted(0, 0, -1, -1));
        if (focused) drawFocusRing(painter, option.rect, look_);
        return true;
    }
    default:
        return false;
    }
}

void PaperStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    const bool selected = option->state & State_Selected;
    switch (element) {
    case PE_PanelButtonCommand: {
        const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
        const bool isDefault = button && (button->features & QStyleOptionButton::DefaultButton);
        controls::drawButton(*painter, *option, controls::kindOf(widget), isDefault, look_);
        return;
    }
    case PE_PanelButtonTool: {
        QStyleOption plain(*option);
        plain.state &= ~State_HasFocus; // the focus rectangle of a tool button comes by itself
        controls::drawButton(*painter, plain, controls::kindOf(widget), false, look_);
        return;
    }
    case PE_FrameFocusRect:
        drawFocusRect(*option, *painter, widget);
        return;
    case PE_PanelLineEdit:
        drawLineEdit(*option, *painter, widget);
        return;
    case PE_FrameLineEdit:
        return;               // the panel has drawn it
    case PE_PanelItemViewRow: // what is left of a tree's item; the item follows
        if (selected) controls::drawSelection(*painter, option->rect, true, look_);
        return;
    case PE_PanelItemViewItem:
        if (selected) controls::drawSelection(*painter, option->rect, false, look_);
        return;
    default:
        break;
    }
    if (drawIndicator(element, *option, *painter) || drawSurface(element, *option, *painter)) return;
    QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void PaperStyle::drawMenuItem(const QStyleOption& option, QPainter& painter, const QWidget* widget) const {
    const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(&option);
    if (!item) return;
    if (item->menuItemType == QStyleOptionMenuItem::Separator && item->text.isEmpty()) {
        painter.fillRect(QRect(option.rect.left() + 8, option.rect.center().y(), option.rect.width() - 16, 1),
                         look_.line);
        return;
    }
    if (option.state & State_Selected) painter.fillRect(option.rect, look_.selection);
    QStyleOptionMenuItem plain(*item); // the fill is ours, so that Fusion's outline stays away
    plain.state &= ~State_Selected;
    QProxyStyle::drawControl(CE_MenuItem, &plain, &painter, widget);
}

void PaperStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
    switch (element) {
    case CE_PushButtonLabel:
        if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
            const ButtonKind kind = controls::kindOf(widget);
            if (kind == ButtonKind::Primary) {
                QFont font = painter->font();
                font.setWeight(QFont::DemiBold);
                painter->setFont(font);
            }
            const auto coloured = withTextColour(*button, controls::buttonTextColour(*option, kind, look_));
            QProxyStyle::drawControl(element, &coloured, painter, widget);
            return;
        }
        break;
    case CE_ToolButtonLabel:
        if (const auto* button = qstyleoption_cast<const QStyleOptionToolButton*>(option)) {
            const auto coloured =
                withTextColour(*button, controls::buttonTextColour(*option, controls::kindOf(widget), look_));
            QProxyStyle::drawControl(element, &coloured, painter, widget);
            return;
        }
        break;
    case CE_HeaderSection:
        if (const auto* header = qstyleoption_cast<const QStyleOptionHeader*>(option)) {
            controls::drawHeaderSection(*painter, *header, look_);
            return;
        }
        break;
    case CE_HeaderEmptyArea:
        painter->fillRect(option->rect, look_.header);
        return;
    case CE_Splitter:
        painter->fillRect(option->rect, look_.lineStrong);
        return;
    case CE_MenuItem:
        drawMenuItem(*option, *painter, widget);
        return;
    case CE_MenuBarItem:
        if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option)) {
            controls::drawMenuBarItem(*painter, *item, look_);
            return;
        }
        break;
    case CE_MenuBarEmptyArea:
        painter->fillRect(option->rect, look_.window);
        return;
    case CE_ToolBar:
        return;
    case CE_ProgressBar:
        if (const auto* bar = qstyleoption_cast<const QStyleOptionProgressBar*>(option)) {
            controls::drawProgress(*painter, *bar, look_);
            return;
        }
        break;
    case CE_TabBarTabShape:
        if (const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(option)) {
            controls::drawTab(*painter, *tab, look_);
            return;
        }
        break;
    default:
        break;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void PaperStyle::drawSpinBox(const QStyleOptionSpinBox& option, QPainter& painter,
                             const QWidget* widget) const {
    controls::drawField(painter, option.rect, option.state, controls::isRefused(widget), look_);
    if (option.buttonSymbols == QAbstractSpinBox::NoButtons) return;
    const auto draw = [&](SubControl part, Direction direction, QAbstractSpinBox::StepEnabledFlag step) {
        const bool usable = option.stepEnabled.testFlag(step) && (option.state & State_Enabled);
        controls::drawChevron(painter, subControlRect(CC_SpinBox, &option, part, widget), direction,
                              usable ? look_.inkSoft : look_.inkFaint);
    };
    draw(SC_SpinBoxUp, Direction::Up, QAbstractSpinBox::StepUpEnabled);
    draw(SC_SpinBoxDown, Direction::Down, QAbstractSpinBox::StepDownEnabled);
}

void PaperStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                    QPainter* painter, const QWidget* widget) const {
    if (const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
        bar && control == CC_ScrollBar) {
        controls::drawScrollBar(*painter, *bar, scrollBarRect(*bar, SC_ScrollBarSlider), look_);
        return;
    }
    if (const auto* box = qstyleoption_cast<const QStyleOptionComboBox*>(option);
        box && control == CC_ComboBox) {
        if (box->frame)
            controls::drawField(*painter, option->rect, option->state, controls::isRefused(widget), look_);
        const QColor ink = option->state & State_Enabled ? look_.inkSoft : look_.inkFaint;
        controls::drawChevron(*painter, subControlRect(control, option, SC_ComboBoxArrow, widget),
                              Direction::Down, ink);
        return;
    }
    if (const auto* box = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
        box && control == CC_SpinBox) {
        drawSpinBox(*box, *painter, widget);
        return;
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

} // namespace loopwright
