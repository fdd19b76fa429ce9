// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/log_picture.h"
#include "core/overload/pictures.h"

#include <cmath>

/// Pictures of invented figures, to try how they are drawn.
namespace loopwright::test {

inline overload::TimeCurrentPicture kilnOnFuse() {
    overload::TimeCurrentPicture picture;
    picture.device = "check.word.fuse";
    picture.rated = amperes(30);
    picture.earliest = {{amperes(37), hours(10)},      {amperes(38), hours(1)},
                        {amperes(45), minutes(12)},    {amperes(60), seconds(110)},
                        {amperes(100), seconds(5.5)},  {amperes(200), seconds(0.15)},
                        {amperes(320), seconds(0.015)}};
    picture.latest = {{amperes(45), hours(10)},      {amperes(47), hours(2)},
                      {amperes(60), minutes(12)},    {amperes(125), seconds(5)},
                      {amperes(200), seconds(0.4)},  {amperes(440), seconds(0.02)},
                      {amperes(500), seconds(0.012)}};
    picture.published = {{amperes(125), seconds(5)}, {amperes(200), seconds(0.4)}};
    picture.isModelled = true;
    picture.loadName = "Kiln, glaze room";
    picture.load = amperes(41.7);
    picture.onTime = minutes(25);
    picture.fault = amperes(310);
    picture.required = seconds(0.4);
    picture.adiabaticUpTo = seconds(5);
    picture.withstand = JouleIntegral(115.0 * 115 * 6 * 6);
    return picture;
}

inline overload::HeatPicture kilnDuty() {
    overload::HeatPicture picture;
    picture.device = "check.word.fuse";
    picture.loadName = "Kiln, glaze room";
    picture.limit = celsius(70);
    double conductor = 40, early = 0, late = 0;
    for (int minute = 0; minute <= 240; ++minute) {
        const bool on = minute % 60 < 25;
        picture.moments.push_back({minutes(minute), celsius(conductor), early, late});
        conductor += ((on ? 93 : 40) - conductor) * (1 - std::exp(-1 / 6.5));
        early += ((on ? 1.24 : 0) - early) * (1 - std::exp(-1 / 22.0));
        late += ((on ? 0.86 : 0) - late) * (1 - std::exp(-1 / 66.0));
    }
    for (int hour = 0; hour < 4; ++hour)
        picture.runs.push_back({hours(hour), hours(hour) + minutes(25)});
    return picture;
}

/// Four hours in columns of half a minute, half an hour of it not logged.
inline overload::LogPicture kilnLog() {
    overload::LogPicture picture;
    picture.device = "check.word.fuse";
    picture.rated = amperes(30);
    picture.limit = celsius(70);
    double conductor = 40, early = 0, late = 0;
    for (int half = 0; half < 480; ++half) {
        const bool on = half % 120 < 50;
        conductor += ((on ? 93 : 40) - conductor) * (1 - std::exp(-0.5 / 6.5));
        early += ((on ? 1.44 : 0) - early) * (1 - std::exp(-0.5 / 22));
        late += ((on ? 0.86 : 0) - late) * (1 - std::exp(-0.5 / 66));
        overload::LogPicture::Column column;
        column.from = minutes(half * 0.5);
        column.to = minutes((half + 1) * 0.5);
        column.isLogged = half < 300 || half >= 360;
        column.most = amperes(on ? 42.1 : 0.4);
        column.least = amperes(on && half % 7 > 0 ? 41.2 : 0.4);
        column.conductor = celsius(conductor);
        if (!picture.earliestOperated) column.earliest = early;
        column.latest = late;
        if (early >= 1 && !picture.earliestOperated) picture.earliestOperated = column.to;
        picture.columns.push_back(column);
    }
    return picture;
}

} // namespace loopwright::test
