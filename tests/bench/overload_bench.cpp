// SPDX-License-Identifier: GPL-3.0-or-later
// How long a logged current takes, as a ratio to the sum of its squares in the same run; and one circuit's
// answer, and a year of a duty, in time.
#include "core/overload/hidden_overload.h"
#include "core/overload/logged_current.h"

#include <benchmark/benchmark.h>

#include <chrono>
#include <numeric>

namespace {

using namespace loopwright;
using namespace loopwright::overload;

const ReferenceTables& tables() {
    static const ReferenceTables built = ReferenceTables::builtIn();
    return built;
}
const DeviceFamily& family() {
    return *tables().deviceFamily("60898-C");
}
const ThermalDevice& device() {
    return *tables().thermalDevice(family(), amperes(50));
}
Conductor conductor() {
    return {celsius(30), celsius(70), amperes(57), seconds(106), seconds(450), {89'000, 98'000}};
}

/// A million seconds of forge and welder on one 50 A breaker.
const LoggedChannel& millionSamples() {
    static const LoggedChannel made = [] {
        constexpr int samples = 1'000'000;
        LoggedChannel channel{"I", {}, {}, seconds(1), {}};
        for (int i = 0; i < samples; ++i) {
            channel.seconds.push_back(i);
            channel.amperes.push_back((i % 900 < 360 ? 40.0 : 0.3) + (i % 600 < 240 ? 25.0 : 0.0) +
                                      i % 7 * 0.1);
        }
        return channel;
    }();
    return made;
}

/// The same hours from a logger that writes when it gets round to it.
const LoggedChannel& oddSamples() {
    static const LoggedChannel made = [] {
        LoggedChannel channel = millionSamples();
        for (std::size_t i = 0; i < channel.seconds.size(); ++i)
            channel.seconds[i] += static_cast<double>(i * 7919 % 1000) / 2500;
        return channel;
    }();
    return made;
}

/// What any program does that looks at the same array at all.
double plainSumOfSquares(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0,
                           [](double sum, double value) { return sum + value * value; });
}

void sumOfSquares(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(plainSumOfSquares(millionSamples().amperes));
}

void loggedMillion(benchmark::State& state, const LoggedChannel& (*samples)()) {
    const LoggedQuestion question{device(), amperes(50), tables().instantaneousBand(family(), amperes(50)),
                                  conductor()};
    const auto seconds = [](auto&& work) {
        const auto begin = std::chrono::steady_clock::now();
        work();
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    };
    double sums = 0, answers = 0;
    for (auto _ : state) {
        sums += seconds([] { benchmark::DoNotOptimize(plainSumOfSquares(millionSamples().amperes)); });
        answers += seconds([&] { benchmark::DoNotOptimize(answerLogged(question, samples())); });
    }
    state.counters["times_a_sum_of_squares"] = answers / sums;
}

void answerOfACircuit(benchmark::State& state) {
    const std::vector pieces{Piece{amperes(40), 1, minutes(6), minutes(9)},
                             Piece{amperes(25), 1, minutes(4), minutes(6)}};
    for (auto _ : state) {
        const Load load = loadOf(pieces);
        benchmark::DoNotOptimize(
            answer({device(), amperes(50), tables().instantaneousBand(family(), amperes(50)), load,
                    conductor(), 0.1}));
    }
}

void yearOfADuty(benchmark::State& state) {
    const Steps cycle{{amperes(56), minutes(4)}, {amperes(0), minutes(16)}};
    constexpr std::uint64_t cyclesAYear = 365 * 24 * 3;
    for (auto _ : state)
        benchmark::DoNotOptimize(
            physics::firstCrossing(device().replicas.late.front(), cycle, {}, cyclesAYear));
}

void makingAFusesReplicas(benchmark::State& state) {
    const auto& limits = tables().thermalDevice(*tables().deviceFamily("88-2"), amperes(32))->limits;
    for (auto _ : state)
        benchmark::DoNotOptimize(physics::conformingReplicas(limits, physics::Elements::Two));
}

BENCHMARK(sumOfSquares)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(loggedMillion, evenSteps, millionSamples)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(loggedMillion, oddSteps, oddSamples)->Unit(benchmark::kMillisecond);
BENCHMARK(answerOfACircuit)->Unit(benchmark::kMicrosecond);
BENCHMARK(yearOfADuty)->Unit(benchmark::kMicrosecond);
BENCHMARK(makingAFusesReplicas)->Unit(benchmark::kMillisecond);

} // namespace
