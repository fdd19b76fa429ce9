// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"
#include "forms/look/style.h"

#include <QRectF>
#include <QStyle>

class QPainter;
class QStyleOption;
class QStyleOptionHeader;
class QStyleOptionMenuItem;
class QStyleOptionProgressBar;
class QStyleOptionSlider;
class QStyleOptionTab;

/// The drawings that PaperStyle puts together. Each draws one part of a control in the colours of a look.
namespace loopwright::controls {

inline constexpr double radius = 3;

ButtonKind kindOf(const QWidget* widget);
void setKind(QWidget& widget, ButtonKind kind);
bool isRefused(const QWidget* widget);
void setRefused(QWidget& widget, bool refused);

void drawButton(QPainter& painter, const QStyleOption& option, ButtonKind kind, bool isDefault,
                const Look& look);
/// The colour of a button's text, which on filled buttons is not the ink.
QColor buttonTextColour(const QStyleOption& option, ButtonKind kind, const Look& look);

void drawField(QPainter& painter, const QRect& rect, QStyle::State state, bool refused, const Look& look);
void drawCheckBox(QPainter& painter, const QStyleOption& option, const Look& look);
void drawRadioButton(QPainter& painter, const QStyleOption& option, const Look& look);

enum class Direction : std::uint8_t { Up, Down, Left, Right };
void drawChevron(QPainter& painter, const QRectF& place, Direction direction, const QColor& colour);

void drawScrollBar(QPainter& painter, const QStyleOptionSlider& option, const QRect& slider,
                   const Look& look);
void drawHeaderSection(QPainter& painter, const QStyleOptionHeader& option, const Look& look);
void drawTab(QPainter& painter, const QStyleOptionTab& option, const Look& look);
/// The bar of a long job; its figure stands beside it, not on it.
void drawProgress(QPainter& painter, const QStyleOptionProgressBar& option, const Look& look);
void drawMenuBarItem(QPainter& painter, const QStyleOptionMenuItem& option, const Look& look);
/// The fill of a selected row, with an accent bar at its left end when `bar` is set.
void drawSelection(QPainter& painter, const QRect& row, bool bar, const Look& look);
void drawBox(QPainter& painter, const QRect& rect, const QColor& fill, const QColor& edge);

} // namespace loopwright::controls
