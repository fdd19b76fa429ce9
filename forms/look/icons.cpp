// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/icons.h"

#include <QFile>
#include <QPainter>
#include <QSvgRenderer>

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

using namespace std::string_view_literals;

constexpr std::array names{"add"sv,
                           "board"sv,
                           "circuit"sv,
                           "dead-first"sv,
                           "device"sv,
                           "diagram"sv,
                           "due"sv,
                           "equipment"sv,
                           "fuse"sv,
                           "go-to"sv,
                           "grade-look-further"sv,
                           "grade-make-safe"sv,
                           "grade-put-right"sv,
                           "grade-worth-improving"sv,
                           "hand-over"sv,
                           "heat"sv,
                           "inspection"sv,
                           "instrument"sv,
                           "issue"sv,
                           "journal"sv,
                           "keys"sv,
                           "missing"sv,
                           "observations"sv,
                           "photo"sv,
                           "picture"sv,
                           "places"sv,
                           "reasons"sv,
                           "redo"sv,
                           "remedy"sv,
                           "report"sv,
                           "settings"sv,
                           "sheet"sv,
                           "since-last"sv,
                           "site"sv,
                           "sums"sv,
                           "supply"sv,
                           "take-in"sv,
                           "undo"sv,
                           "verdict-cannot-tell"sv,
                           "verdict-close"sv,
                           "verdict-does-not-apply"sv,
                           "verdict-fails"sv,
                           "verdict-holds"sv,
                           "visit"sv,
                           "wiring"sv};

static_assert(names.size() == static_cast<std::size_t>(Icon::Wiring) + 1);

/// The one colour that every drawing carries, to be replaced.
constexpr char drawnInk[] = "#1C2025";

constexpr std::array sides{16, 18, 20, 24};
constexpr std::array windowIconSides{16, 24, 32, 48, 64, 128, 256};
constexpr std::array pixelRatios{1, 2};

QByteArray svg(std::string_view name) {
    QFile file(QStringLiteral(":/icons/%1.svg")
                   .arg(QLatin1String(name.data(), static_cast<qsizetype>(name.size()))));
    if (!file.open(QIODevice::ReadOnly)) return {};
    return file.readAll();
}

QPixmap drawn(QSvgRenderer& renderer, int side, int pixelRatio) {
    QPixmap pixmap(side * pixelRatio, side * pixelRatio);
    pixmap.setDevicePixelRatio(pixelRatio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    renderer.render(&painter, QRectF(0, 0, side, side));
    return pixmap;
}

void add(QIcon& icon, const QByteArray& drawing, std::span<const int> wanted, QIcon::Mode mode) {
    QSvgRenderer renderer(drawing);
    if (!renderer.isValid()) return;
    for (const int side : wanted)
        for (const int ratio : pixelRatios)
            icon.addPixmap(drawn(renderer, side, ratio), mode);
}

QByteArray recoloured(QByteArray drawing, const QColor& ink) {
    return drawing.replace(drawnInk, ink.name().toLatin1());
}

} // namespace

std::span<const std::string_view> iconNames() {
    return names;
}

QIcon Icons::icon(Icon icon, Role ink) const {
    const auto known = std::ranges::find_if(
        drawn_, [&](const Drawn& candidate) { return candidate.icon == icon && candidate.ink == ink; });
    if (known != drawn_.end()) return known->picture;

    const QByteArray drawing = svg(names[static_cast<std::size_t>(icon)]);
    QIcon picture;
    add(picture, recoloured(drawing, look_.*ink), sides, QIcon::Normal);
    add(picture, recoloured(drawing, look_.inkFaint), sides, QIcon::Disabled);
    drawn_.push_back({icon, ink, picture});
    return picture;
}

QIcon windowIcon() {
    QIcon icon;
    add(icon, svg("loopwright"), windowIconSides, QIcon::Normal);
    return icon;
}

} // namespace loopwright
