// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/pictures.h"

#include "core/physics/thermal.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::overload {

namespace {

using physics::Operation;
using physics::TimeCurrent;

constexpr Time never = Time(std::numeric_limits<double>::infinity());
/// What stands for "at once" on a logarithmic axis, and for "for ever": far outside of what is drawn.
constexpr Time atOnce = milliseconds(1), forEver = hours(1000);

struct Times {
    Time earliest;
    Time latest;
};

/// What an edge does at a current in its place is what it does at another one where it was calibrated: the
/// earliest in the warmth at a larger one, the latest in the cold at a smaller one.
Current feltByEarliest(const Question& question, Current current) {
    return current / question.inWarmth.value_or(1);
}
Current feltByLatest(const Question& question, Current current) {
    return current / question.inCold.value_or(1);
}

/// When the edges operate at a steady current from cold.
Times timesAt(const Question& question, const physics::DeviceTimes& promised, Current current) {
    const Current felt = feltByEarliest(question, current), feltLate = feltByLatest(question, current);
    const physics::DutyStep warm{felt, forEver}, cold{feltLate, forEver};
    physics::OperationBand thermal;
    physics::TimeBand promise;
    if (question.inWarmth) {
        thermal.earliest = physics::earliestOf(question.device.replicas, std::span(&warm, 1), {}, 1);
        promise.earliest = physics::operatingTime(promised, current).earliest;
    }
    if (question.inCold) {
        thermal.latest = physics::latestOf(question.device.replicas, std::span(&cold, 1), {}, 1);
        promise.latest = physics::operatingTime(promised, current).latest;
    }
    const auto timeOf = [](const physics::OperationEdge& edge, Time unknown) {
        return edge.operation == Operation::Operates  ? edge.reached.inAll
               : edge.operation == Operation::Unknown ? unknown
                                                      : never;
    };
    // Where nothing limits how early it may operate, it still carries its rated current for ever.
    const Time unlimited = felt > question.rated ? Time() : never;
    Times times{timeOf(thermal.earliest, unlimited), timeOf(thermal.latest, never)};
    if (promise.earliest.isLimited()) times.earliest = std::max(times.earliest, promise.earliest.time);
    if (promise.latest.isLimited()) times.latest = std::min(times.latest, promise.latest.time);
    for (const auto* band : {&question.instantaneous, &question.shortTime}) {
        if (!*band) continue;
        if (current > question.rated * (*band)->above)
            times.earliest = std::min(times.earliest, promise.earliest.isLimited() ? promise.earliest.time
                                                                                   : (*band)->notBefore);
        const bool isSure = current >= question.rated * (*band)->upTo && (*band)->within > Time();
        if (isSure) times.latest = std::min(times.latest, (*band)->within);
    }
    return times;
}

/// Adds a point of an edge; one that begins or ends out of sight is led there straight up or down.
void put(std::vector<TimeCurrent>& edge, Current current, Time time) {
    if (!isFinite(time)) return;
    if (edge.empty()) edge.push_back({current, forEver});
    edge.push_back({current, std::max(time, atOnce)});
}

/// Evenly on a logarithmic scale, and where a promise begins or ends.
std::vector<Current> currentsFrom(const Question& question, const physics::DeviceTimes& times,
                                  Current highest) {
    constexpr int count = 240;
    constexpr double from = 0.8, hair = 1e-6;
    std::vector<Current> currents;
    const Current lowest = question.rated * question.inWarmth.value_or(1) * from;
    const double span = highest / lowest;
    for (int i = 0; i <= count; ++i)
        currents.push_back(lowest * std::pow(span, static_cast<double>(i) / count));
    for (const auto* points : {&times.notBefore, &times.operatedBy, &times.curve})
        for (const TimeCurrent& point : *points)
            for (const double side : {1 - hair, 1.0, 1 + hair})
                if (point.current * side <= highest) currents.push_back(point.current * side);
    std::ranges::sort(currents);
    return currents;
}

/// The state of every replica of one extreme as a load goes on.
class Extreme {
  public:
    explicit Extreme(const std::vector<physics::ThermalReplica>& replicas)
      : replicas_(replicas)
      , states_(replicas.size()) {}

    void advance(const physics::DutyStep& step) {
        for (std::size_t i = 0; i < replicas_.size(); ++i)
            states_[i] = physics::stateAfter(replicas_[i], states_[i], std::span(&step, 1));
    }
    template <class Worse>
    std::optional<Ratio> state(Worse worse) const {
        std::optional<Ratio> extreme;
        for (std::size_t i = 0; i < replicas_.size(); ++i) {
            const Ratio state = physics::thermalState(replicas_[i], states_[i]);
            extreme = extreme ? worse(*extreme, state) : state;
        }
        return extreme;
    }

  private:
    const std::vector<physics::ThermalReplica>& replicas_;
    std::vector<physics::ReplicaState> states_;
};

constexpr int cycles = 4;

/// How long to look: some cycles, or until a steady load has warmed everything.
Time spanOf(const Question& question) {
    constexpr Time longest = hours(4);
    if (!question.load.isSteady) return physics::lengthOf(question.load.together) * cycles;
    Time slowest = minutes(10);
    if (question.conductor)
        slowest = std::max(slowest, question.conductor->slow.value_or(question.conductor->quick) * 5);
    for (const auto* replicas : {&question.device.replicas.early, &question.device.replicas.late})
        for (const physics::ThermalReplica& replica : *replicas)
            for (const physics::ThermalBranch& branch : replica.branches)
                if (branch.weight > 0) slowest = std::max(slowest, branch.constant * 3);
    return std::min(slowest, longest);
}

/// Runs the load in small steps and notes what it does on the way.
class HeatRun {
  public:
    explicit HeatRun(const Question& question)
      : question_(question)
      , early_(question.device.replicas.early)
      , late_(question.device.replicas.late) {
        if (question.conductor) {
            picture_.limit = question.conductor->limit;
            conductor_ = question.conductor->ambient;
            heating_.emplace(*question.conductor, question.conductor->quick);
        }
    }

    HeatPicture run() {
        constexpr double moments = 480;
        const Time span = spanOf(question_), grain = span / moments;
        note();
        for (int cycle = 0; cycle < cycles && now_ < span; ++cycle)
            for (const physics::DutyStep& step : question_.load.together) {
                const Time length = std::min(step.duration, span - now_);
                if (!(length > Time())) continue;
                if (step.current > Current()) shade(now_, now_ + length);
                const double pieces = std::ceil(length / grain);
                for (int i = 0; i < pieces; ++i)
                    advance({step.current, length / pieces});
            }
        return std::move(picture_);
    }

  private:
    void advance(const physics::DutyStep& step) {
        if (heating_) {
            warmth_ = heating_->stateAfter(warmth_, step.current, step.duration);
            conductor_ = temperatureOf(*question_.conductor, warmth_);
        }
        early_.advance({feltByEarliest(question_, step.current), step.duration});
        late_.advance({feltByLatest(question_, step.current), step.duration});
        now_ += step.duration;
        note();
    }

    void note() {
        std::optional<Ratio> warmest, coolest;
        if (question_.inWarmth) warmest = early_.state([](Ratio a, Ratio b) { return std::max(a, b); });
        if (question_.inCold) coolest = late_.state([](Ratio a, Ratio b) { return std::min(a, b); });
        earlyOperated_ = earlyOperated_ || (warmest && *warmest >= 1);
        lateOperated_ = lateOperated_ || (coolest && *coolest >= 1);
        picture_.moments.push_back({now_, conductor_, earlyOperated_ ? std::nullopt : warmest,
                                    lateOperated_ ? std::nullopt : coolest});
    }

    void shade(Time from, Time to) {
        if (!picture_.runs.empty() && picture_.runs.back().to == from)
            picture_.runs.back().to = to;
        else
            picture_.runs.push_back({from, to});
    }

    const Question& question_;
    HeatPicture picture_;
    Extreme early_;
    Extreme late_;
    std::optional<Heating> heating_; ///< of the conductor alone
    Ratio warmth_ = 0;
    Temperature conductor_;
    Time now_;
    bool earlyOperated_ = false;
    bool lateOperated_ = false;
};

} // namespace

void addEdges(TimeCurrentPicture& picture, const Question& question, const physics::DeviceTimes& times,
              Current highest) {
    for (const Current current : currentsFrom(question, times, highest)) {
        const Times at = timesAt(question, times, current);
        if (question.inWarmth) put(picture.earliest, current, at.earliest);
        put(picture.latest, current, at.latest);
    }
    for (const auto* points : {&times.notBefore, &times.operatedBy, &times.curve})
        picture.published.insert(picture.published.end(), points->begin(), points->end());
    picture.isModelled = !question.device.replicas.early.empty() || !question.device.replicas.late.empty();
}

HeatPicture heatPicture(const Question& question) {
    return HeatRun(question).run();
}

} // namespace loopwright::overload
