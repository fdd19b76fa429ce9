// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/look.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace loopwright {
namespace {

QColor rgb(unsigned value) {
    return QColor::fromRgb(value);
}

Look makeLight() {
    Look look;
    look.window = rgb(0xF2EEE6);
    look.sheet = rgb(0xFEFDFA);
    look.panel = rgb(0xF8F5EF);
    look.header = rgb(0xE9E3D8);
    look.ink = rgb(0x1C2025);
    look.inkSoft = rgb(0x53575D);
    look.inkFaint = rgb(0x67635A);
    look.line = rgb(0xDDD7CB);
    look.lineStrong = rgb(0x877F71);
    look.accent = rgb(0x8A4A1E);
    look.accentInk = rgb(0xFFFFFF);
    look.accentWash = rgb(0xF5E7DA);
    look.selection = rgb(0xF3E1CF);
    look.focus = rgb(0x0F5C9C);
    look.holds = look.worthImproving = rgb(0x31687A);
    look.close = look.putRight = rgb(0x735A08);
    look.closeWash = rgb(0xF8EBC2);
    look.fails = rgb(0x7E0D38);
    look.failsWash = rgb(0xFADFE3);
    look.cannotTell = look.lookFurther = rgb(0x432A8E);
    look.cannotTellWash = rgb(0xEAE6F6);
    look.doesNotApply = rgb(0x63666B);
    look.makeSafe = rgb(0x5E0A28);
    return look;
}

Look makeDark() {
    Look look;
    look.window = rgb(0x15171A);
    look.sheet = rgb(0x1B1E21);
    look.panel = rgb(0x202428);
    look.header = rgb(0x2B2F34);
    look.ink = rgb(0xEDE8DF);
    look.inkSoft = rgb(0xB7B2A8);
    look.inkFaint = rgb(0xA19D94);
    look.line = rgb(0x353A40);
    look.lineStrong = rgb(0x82868C);
    look.accent = rgb(0xE2A273);
    look.accentInk = rgb(0x1C1209);
    look.accentWash = rgb(0x3A2B20);
    look.selection = rgb(0x413022);
    look.focus = rgb(0x7FBBEE);
    look.holds = look.worthImproving = rgb(0xA6DDEB);
    look.close = look.putRight = rgb(0xF2D472);
    look.closeWash = rgb(0x3B3317);
    look.fails = rgb(0xF78A9C);
    look.failsWash = rgb(0x4A1F2B);
    look.cannotTell = look.lookFurther = rgb(0xA29FDA);
    look.cannotTellWash = rgb(0x2F2947);
    look.doesNotApply = rgb(0xA4A7AC);
    look.makeSafe = rgb(0xFFB3BE);
    return look;
}

Look makePrint() {
    Look look;
    look.window = look.sheet = look.panel = look.selection = rgb(0xFFFFFF);
    look.header = rgb(0xECE9E3);
    look.ink = look.focus = rgb(0x15171A);
    look.inkSoft = rgb(0x4A4E54);
    look.inkFaint = rgb(0x67635A);
    look.line = rgb(0xC9C4BA);
    look.lineStrong = rgb(0x7D776C);
    look.accent = rgb(0x7E4019);
    look.accentInk = rgb(0xFFFFFF);
    look.accentWash = rgb(0xF5E7DA);
    look.holds = look.worthImproving = rgb(0x31687A);
    look.close = look.putRight = rgb(0x735A08);
    look.closeWash = rgb(0xF4EBCF);
    look.fails = rgb(0x7E0D38);
    look.failsWash = rgb(0xF6E1E4);
    look.cannotTell = look.lookFurther = rgb(0x432A8E);
    look.cannotTellWash = rgb(0xECE9F4);
    look.doesNotApply = rgb(0x63666B);
    look.makeSafe = rgb(0x5E0A28);
    return look;
}

constexpr std::array texts{&Look::ink,         &Look::inkSoft,  &Look::inkFaint,    &Look::accent,
                           &Look::holds,       &Look::close,    &Look::fails,       &Look::cannotTell,
                           &Look::makeSafe,    &Look::putRight, &Look::lookFurther, &Look::worthImproving,
                           &Look::doesNotApply};

/// Cells and shaded periods may hold any text, so every text must be read on every wash as well.
constexpr std::array washes{&Look::closeWash, &Look::failsWash, &Look::cannotTellWash, &Look::accentWash};

std::vector<RolePair> textsOn(std::initializer_list<Role> surfaces) {
    std::vector<RolePair> pairs{{&Look::accentInk, &Look::accent}, {&Look::sheet, &Look::ink}};
    for (const Role text : texts) {
        for (const Role surface : surfaces)
            pairs.push_back({text, surface});
        for (const Role wash : washes)
            pairs.push_back({text, wash});
    }
    return pairs;
}

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& colour) {
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

} // namespace

const Look& lightLook() {
    static const Look look = makeLight();
    return look;
}
const Look& darkLook() {
    static const Look look = makeDark();
    return look;
}
const Look& printLook() {
    static const Look look = makePrint();
    return look;
}

QPalette palette(const Look& look) {
    QPalette result;
    result.setColor(QPalette::Window, look.window);
    result.setColor(QPalette::Base, look.sheet);
    result.setColor(QPalette::AlternateBase, look.sheet);
    result.setColor(QPalette::Button, look.window);
    result.setColor(QPalette::Text, look.ink);
    result.setColor(QPalette::WindowText, look.ink);
    result.setColor(QPalette::ButtonText, look.ink);
    result.setColor(QPalette::BrightText, look.accentInk);
    result.setColor(QPalette::PlaceholderText, look.inkFaint);
    result.setColor(QPalette::Highlight, look.selection);
    result.setColor(QPalette::HighlightedText, look.ink);
    result.setColor(QPalette::Light, look.sheet);
    result.setColor(QPalette::Midlight, look.line);
    result.setColor(QPalette::Mid, look.line);
    result.setColor(QPalette::Dark, look.lineStrong);
    result.setColor(QPalette::Shadow, look.lineStrong);
    result.setColor(QPalette::Link, look.accent);
    result.setColor(QPalette::LinkVisited, look.accent);
    result.setColor(QPalette::ToolTipBase, look.panel);
    result.setColor(QPalette::ToolTipText, look.ink);
    for (const auto role :
         {QPalette::Text, QPalette::WindowText, QPalette::ButtonText, QPalette::HighlightedText})
        result.setColor(QPalette::Disabled, role, look.inkFaint);
    return result;
}

QPalette selectedTextPalette(const Look& look) {
    QPalette result = palette(look);
    result.setColor(QPalette::Highlight, look.accent);
    result.setColor(QPalette::HighlightedText, look.accentInk);
    return result;
}

std::span<const RolePair> screenTextPairs() {
    static const std::vector pairs =
        textsOn({&Look::window, &Look::sheet, &Look::panel, &Look::header, &Look::selection});
    return pairs;
}

std::span<const RolePair> printTextPairs() {
    static const std::vector pairs = textsOn({&Look::sheet, &Look::header});
    return pairs;
}

std::span<const RolePair> edgePairs() {
    static constexpr std::array pairs{
        RolePair{&Look::focus, &Look::sheet},      RolePair{&Look::focus, &Look::window},
        RolePair{&Look::focus, &Look::panel},      RolePair{&Look::focus, &Look::selection},
        RolePair{&Look::lineStrong, &Look::sheet}, RolePair{&Look::lineStrong, &Look::window},
        RolePair{&Look::lineStrong, &Look::panel}};
    return pairs;
}

double contrast(const QColor& first, const QColor& second) {
    const auto [darker, lighter] = std::minmax({luminance(first), luminance(second)});
    return (lighter + 0.05) / (darker + 0.05);
}

} // namespace loopwright
