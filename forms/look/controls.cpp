// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/controls.h"

#include "forms/look/paint.h"

#include <QPainter>
#include <QPainterPath>
#include <QStyleOption>
#include <QVariant>
#include <QWidget>

#include <algorithm>

namespace loopwright::controls {
namespace {

constexpr char kindProperty[] = "buttonKind";
constexpr char refusedProperty[] = "refused";

QRectF edgeOf(const QRect& rect) {
    return rect.toRectF().adjusted(.5, .5, -.5, -.5);
}

QPainterPath rounded(const QRectF& rect, bool left, bool right) {
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    path.addRoundedRect(rect, radius, radius);
    if (!left) path.addRect(rect.adjusted(0, 0, -radius, 0));
    if (!right) path.addRect(rect.adjusted(radius, 0, 0, 0));
    return path.simplified();
}

bool isSwitch(ButtonKind kind) {
    return kind >= ButtonKind::SwitchFirst;
}

bool isPressed(const QStyleOption& option) {
    return option.state & QStyle::State_Sunken;
}
bool isEnabled(const QStyleOption& option) {
    return option.state & QStyle::State_Enabled;
}
bool isUnderPointer(const QStyleOption& option) {
    return isEnabled(option) && (option.state & QStyle::State_MouseOver);
}

QColor buttonFill(const QStyleOption& option, ButtonKind kind, const Look& look) {
    if (kind == ButtonKind::Primary && isEnabled(option)) return look.accent;
    if (option.state & QStyle::State_On) return isEnabled(option) ? look.ink : look.line;
    if (isPressed(option)) return look.line;
    if (isUnderPointer(option)) return look.header;
    return kind == ButtonKind::Quiet ? QColor(Qt::transparent) : isEnabled(option) ? look.sheet : look.window;
}

QColor buttonEdge(const QStyleOption& option, ButtonKind kind, bool isDefault, const Look& look) {
    if (!isEnabled(option)) return kind == ButtonKind::Quiet ? QColor(Qt::transparent) : look.line;
    if (kind == ButtonKind::Primary)
        return isUnderPointer(option) || isPressed(option) ? look.ink : look.accent;
    if (kind == ButtonKind::Quiet && !isUnderPointer(option) && !isPressed(option)) return Qt::transparent;
    return isDefault ? look.ink : look.lineStrong;
}

} // namespace

ButtonKind kindOf(const QWidget* widget) {
    const QVariant kind = widget ? widget->property(kindProperty) : QVariant();
    return kind.isValid() ? static_cast<ButtonKind>(kind.toInt()) : ButtonKind::Plain;
}

void setKind(QWidget& widget, ButtonKind kind) {
    widget.setProperty(kindProperty, static_cast<int>(kind));
}

void setRefused(QWidget& widget, bool refused) {
    widget.setProperty(refusedProperty, refused);
}

bool isRefused(const QWidget* widget) {
    return widget && widget->property(refusedProperty).toBool();
}

void drawButton(QPainter& painter, const QStyleOption& option, ButtonKind kind, bool isDefault,
                const Look& look) {
    const bool roundLeft = !isSwitch(kind) || kind == ButtonKind::SwitchFirst;
    const bool roundRight = !isSwitch(kind) || kind == ButtonKind::SwitchLast;
    QRect rect = option.rect;
    if (!roundRight)
        rect.adjust(0, 0, 1, 0); // neighbours share one edge: this one's right is the next one's left
    painter.save();
    painter.setClipRect(option.rect);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(buttonFill(option, kind, look));
    painter.setPen(QPen(buttonEdge(option, kind, isDefault, look), 1));
    painter.drawPath(rounded(edgeOf(rect), roundLeft, roundRight));
    painter.restore();
    if (option.state & QStyle::State_HasFocus) drawFocusRing(painter, option.rect, look, radius);
}

QColor buttonTextColour(const QStyleOption& option, ButtonKind kind, const Look& look) {
    if (!isEnabled(option)) return look.inkFaint;
    if (kind == ButtonKind::Primary) return look.accentInk;
    return option.state & QStyle::State_On ? look.sheet : look.ink;
}

void drawField(QPainter& painter, const QRect& rect, QStyle::State state, bool refused, const Look& look) {
    const bool enabled = state & QStyle::State_Enabled;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(enabled ? look.sheet : look.window);
    painter.setPen(QPen(enabled ? look.lineStrong : look.line, 1));
    painter.drawRoundedRect(edgeOf(rect), radius, radius);
    if (refused) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.fails, 2));
        painter.drawRoundedRect(rect.toRectF().adjusted(1, 1, -1, -1), radius - 1, radius - 1);
    }
    painter.restore();
    if (!refused && (state & QStyle::State_HasFocus)) drawFocusRing(painter, rect, look, radius);
}

void drawCheckBox(QPainter& painter, const QStyleOption& option, const Look& look) {
    const QColor ink = isEnabled(option) ? look.ink : look.inkFaint;
    const bool filled = option.state & (QStyle::State_On | QStyle::State_NoChange);
    const QRectF box = edgeOf(option.rect);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(filled ? ink : look.sheet);
    painter.setPen(QPen(filled ? ink : isUnderPointer(option) ? look.ink : look.lineStrong, 1));
    painter.drawRoundedRect(box, radius - 1, radius - 1);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.sheet, 2, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    const auto at = [&](double x, double y) {
        return box.topLeft() + QPointF(x * box.width(), y * box.height());
    };
    if (option.state & QStyle::State_On)
        painter.drawPolyline(QPolygonF{{at(.2, .52), at(.42, .74), at(.8, .26)}});
    else if (option.state & QStyle::State_NoChange)
        painter.drawLine(at(.22, .5), at(.78, .5));
    painter.restore();
}

void drawRadioButton(QPainter& painter, const QStyleOption& option, const Look& look) {
    const QColor ink = isEnabled(option) ? look.ink : look.inkFaint;
    const bool chosen = option.state & QStyle::State_On;
    const QRectF box = edgeOf(option.rect);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(look.sheet);
    painter.setPen(QPen(chosen || isUnderPointer(option) ? ink : look.lineStrong, 1));
    painter.drawEllipse(box);
    if (chosen) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(ink);
        painter.drawEllipse(box.center(), box.width() * .28, box.height() * .28);
    }
    painter.restore();
}

void drawChevron(QPainter& painter, const QRectF& place, Direction direction, const QColor& colour) {
    constexpr double half = 4, rise = 2;
    constexpr double angles[]{180, 0, 90, -90}; // in the order of Direction; drawn pointing down
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(place.center());
    painter.rotate(angles[static_cast<std::size_t>(direction)]);
    painter.setPen(QPen(colour, 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(QPolygonF{{QPointF(-half, -rise), QPointF(0, rise), QPointF(half, -rise)}});
    painter.restore();
}

void drawScrollBar(QPainter& painter, const QStyleOptionSlider& option, const QRect& slider,
                   const Look& look) {
    painter.fillRect(option.rect, option.palette.color(QPalette::Base));
    if (option.maximum <= option.minimum) return;
    const bool held = option.activeSubControls & QStyle::SC_ScrollBarSlider;
    constexpr double inset = 2;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(held ? look.inkSoft : look.lineStrong);
    painter.drawRoundedRect(slider.toRectF().adjusted(inset, inset, -inset, -inset), radius, radius);
    painter.restore();
}

void drawHeaderSection(QPainter& painter, const QStyleOptionHeader& option, const Look& look) {
    const QRect& rect = option.rect;
    painter.fillRect(rect, look.header);
    painter.fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), look.line);
    if (option.orientation == Qt::Vertical || option.position != QStyleOptionHeader::End)
        painter.fillRect(QRect(rect.right(), rect.top(), 1, rect.height()), look.line);
}

void drawTab(QPainter& painter, const QStyleOptionTab& option, const Look& look) {
    constexpr int thickness = 2;
    const QRect& rect = option.rect;
    if (option.state & QStyle::State_Selected)
        painter.fillRect(QRect(rect.left(), rect.bottom() - thickness + 1, rect.width(), thickness),
                         look.accent);
    else if (isUnderPointer(option))
        painter.fillRect(rect, look.header);
    if (option.state & QStyle::State_HasFocus) drawFocusRing(painter, rect, look);
}

void drawProgress(QPainter& painter, const QStyleOptionProgressBar& option, const Look& look) {
    constexpr int thickness = 5;
    const int span = std::max(1, option.maximum - option.minimum);
    const double share = std::clamp(static_cast<double>(option.progress - option.minimum) / span, 0.0, 1.0);
    QRect track = option.rect;
    track.setHeight(thickness);
    track.moveCenter(option.rect.center());
    painter.fillRect(track, look.line);
    track.setWidth(static_cast<int>(track.width() * share));
    painter.fillRect(track, look.accent);
}

void drawMenuBarItem(QPainter& painter, const QStyleOptionMenuItem& option, const Look& look) {
    const bool chosen = option.state & (QStyle::State_Selected | QStyle::State_Sunken);
    painter.fillRect(option.rect, chosen ? look.selection : look.window);
    painter.setPen(isEnabled(option) ? look.ink : look.inkFaint);
    painter.drawText(option.rect, Qt::AlignCenter | Qt::TextHideMnemonic | Qt::TextSingleLine, option.text);
}

void drawSelection(QPainter& painter, const QRect& row, bool bar, const Look& look) {
    constexpr int barWidth = 3;
    painter.fillRect(row, look.selection);
    if (bar) painter.fillRect(QRect(row.left(), row.top(), barWidth, row.height()), look.accent);
}

void drawBox(QPainter& painter, const QRect& rect, const QColor& fill, const QColor& edge) {
    painter.fillRect(rect, edge);
    painter.fillRect(rect.adjusted(1, 1, -1, -1), fill);
}

} // namespace loopwright::controls
