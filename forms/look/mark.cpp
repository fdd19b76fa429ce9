// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/mark.h"

#include <QPainter>
#include <QPainterPathStroker>

#include <array>

namespace loopwright {
namespace {

constexpr double grid = 16;

QPainterPath circle(double radius) {
    QPainterPath path;
    path.addEllipse(QPointF(grid / 2, grid / 2), radius, radius);
    return path;
}

QPainterPath line(std::initializer_list<QPointF> points, bool closed = false) {
    QPainterPath path(*points.begin());
    for (auto point = points.begin() + 1; point != points.end(); ++point)
        path.lineTo(*point);
    if (closed) path.closeSubpath();
    return path;
}

QPainterPath stroked(const QPainterPath& path, double width) {
    QPainterPathStroker stroker;
    stroker.setWidth(width);
    stroker.setCapStyle(Qt::FlatCap);
    stroker.setJoinStyle(Qt::MiterJoin);
    return stroker.createStroke(path).simplified();
}

QPainterPath holds() {
    return stroked(circle(5.25), 1.75);
}

QPainterPath close() {
    QPainterPath lowerHalf;
    lowerHalf.moveTo(2.75, 8);
    lowerHalf.arcTo(QRectF(2.75, 2.75, 10.5, 10.5), 180, 180);
    lowerHalf.closeSubpath();
    return holds().united(lowerHalf);
}

QPainterPath fails() {
    QPainterPath path = line({{8, .8}, {15.2, 8}, {12.3, 10.9}, {5.1, 3.7}}, true);
    path.addPath(line({{3.7, 5.1}, {10.9, 12.3}, {8, 15.2}, {.8, 8}}, true));
    return path;
}

QPainterPath cannotTell() {
    QPainterPath corners = line({{2, 5.75}, {2, 2}, {5.75, 2}});
    corners.addPath(line({{10.25, 2}, {14, 2}, {14, 5.75}}));
    corners.addPath(line({{14, 10.25}, {14, 14}, {10.25, 14}}));
    corners.addPath(line({{5.75, 14}, {2, 14}, {2, 10.25}}));
    QPainterPath path = stroked(corners, 1.75);
    path.addPath(circle(1.5));
    return path;
}

QPainterPath makeSafe() {
    QPainterPath path;
    path.addRect(1.5, 1.5, 13, 5);
    path.addRect(1.5, 9.5, 13, 5);
    return path;
}

QPainterPath lookFurther() {
    QPainterPath lens(QPointF(1.25, 8));
    lens.quadTo(8, .6, 14.75, 8);
    lens.quadTo(8, 15.4, 1.25, 8);
    lens.closeSubpath();
    QPainterPathStroker stroker;
    stroker.setWidth(1.6);
    stroker.setJoinStyle(Qt::RoundJoin);
    QPainterPath path = stroker.createStroke(lens).simplified();
    path.addPath(circle(2.1));
    return path;
}

/// In the order of Mark.
std::array<QPainterPath, markCount> makePaths() {
    return {holds(),
            close(),
            fails(),
            cannotTell(),
            stroked(line({{3.5, 8}, {12.5, 8}}), 1.75),
            makeSafe(),
            line({{1.75, 14.25}, {1.75, 1.25}, {14.75, 14.25}}, true),
            stroked(line({{1.5, 13.5}, {6, 13.5}, {6, 9}, {10.25, 9}, {10.25, 4.5}, {14.5, 4.5}}), 2),
            lookFurther()};
}

struct VerdictFace {
    Mark mark;
    Role ink;
    Role wash;
    std::string_view word;
    bool loud;
};

const VerdictFace& faceOf(Verdict verdict) {
    static constexpr VerdictFace fails{Mark::Fails, &Look::fails, &Look::failsWash, "verdict.fails", true};
    static constexpr VerdictFace cannotTell{Mark::CannotTell, &Look::cannotTell, &Look::cannotTellWash,
                                            "verdict.cannot-tell", true};
    static constexpr VerdictFace close{Mark::Close, &Look::close, &Look::closeWash, "verdict.close", true};
    static constexpr VerdictFace holds{Mark::Holds, &Look::holds, nullptr, "verdict.holds", false};
    static constexpr VerdictFace doesNotApply{Mark::DoesNotApply, &Look::doesNotApply, nullptr,
                                              "verdict.does-not-apply", false};
    switch (verdict) {
    case Verdict::Fails:
        return fails;
    case Verdict::CannotTell:
        return cannotTell;
    case Verdict::Close:
        return close;
    case Verdict::Holds:
        return holds;
    case Verdict::DoesNotApply:
        break;
    }
    return doesNotApply;
}

struct GradeFace {
    Mark mark;
    Role ink;
    Role wash;
    std::string_view word;
};

const GradeFace& faceOf(Grade grade) {
    static constexpr GradeFace makeSafe{Mark::MakeSafe, &Look::makeSafe, &Look::failsWash,
                                        "choice.grade.make-safe"};
    static constexpr GradeFace putRight{Mark::PutRight, &Look::putRight, &Look::closeWash,
                                        "choice.grade.put-right"};
    static constexpr GradeFace lookFurther{Mark::LookFurther, &Look::lookFurther, &Look::cannotTellWash,
                                           "choice.grade.look-further"};
    static constexpr GradeFace worthImproving{Mark::WorthImproving, &Look::worthImproving, nullptr,
                                              "choice.grade.worth-improving"};
    switch (grade) {
    case Grade::MakeSafe:
        return makeSafe;
    case Grade::PutRight:
        return putRight;
    case Grade::LookFurther:
        return lookFurther;
    case Grade::WorthImproving:
        break;
    }
    return worthImproving;
}

} // namespace

const QPainterPath& markPath(Mark mark) {
    static const std::array<QPainterPath, markCount> paths = makePaths();
    return paths[static_cast<std::size_t>(mark)];
}

void drawMark(QPainter& painter, const QRectF& place, Mark mark, const QColor& colour) {
    const double scale = std::min(place.width(), place.height()) / grid;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(place.center());
    painter.scale(scale, scale);
    painter.translate(-grid / 2, -grid / 2);
    painter.fillPath(markPath(mark), colour);
    painter.restore();
}

Mark markOf(Verdict verdict) {
    return faceOf(verdict).mark;
}
Mark markOf(Grade grade) {
    return faceOf(grade).mark;
}
Role inkOf(Verdict verdict) {
    return faceOf(verdict).ink;
}
Role inkOf(Grade grade) {
    return faceOf(grade).ink;
}
Role washOf(Verdict verdict) {
    return faceOf(verdict).wash;
}
Role washOf(Grade grade) {
    return faceOf(grade).wash;
}
std::string_view wordKey(Verdict verdict) {
    return faceOf(verdict).word;
}
std::string_view wordKey(Grade grade) {
    return faceOf(grade).word;
}
bool isLoud(Verdict verdict) {
    return faceOf(verdict).loud;
}

} // namespace loopwright
