// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

namespace loopwright::published {

/// How a comparison with a published table went; says so in one line when it ends.
struct Comparison {
    std::string table;
    int rows = 0, equal = 0, explained = 0;

    explicit Comparison(std::string name)
      : table(std::move(name)) {}
    ~Comparison() {
        std::printf("%s: %d rows compared, %d equal, %d explained\n", table.c_str(), rows, equal, explained);
    }
    Comparison(const Comparison&) = delete;
    Comparison& operator=(const Comparison&) = delete;

    void count(bool isEqual) {
        ++rows;
        equal += isEqual;
    }
};

/// Tables are printed in decimal. 230 / 400 is 0.575 there and a hair less in binary, so the hair is given
/// back before a digit is dropped; it is far below anything printed.
constexpr double hair = 1e-9;

inline double roundedHalfUp(double value, int decimals) {
    const double scale = std::pow(10, decimals);
    return std::floor(value * scale + 0.5 + hair) / scale;
}

inline double cut(double value, int decimals) {
    const double scale = std::pow(10, decimals);
    return std::floor(value * scale + hair) / scale;
}

inline bool samePrinted(double a, double b) {
    return std::abs(a - b) < hair * std::max(1.0, std::abs(b));
}

} // namespace loopwright::published
