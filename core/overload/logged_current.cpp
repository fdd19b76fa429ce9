// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/logged_current.h"

#include "core/overload/log_pass.h"
#include "core/overload/log_start.h"
#include "core/physics/thermal_replica.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace loopwright::overload {

namespace {

/// One replica on its way through the log.
class Passage {
  public:
    Passage(const LoggedChannel& channel, const std::vector<Block>& blocks,
            const physics::ThermalReplica& replica, const physics::ReplicaState& start)
      : channel_(channel)
      , blocks_(blocks)
      , replica_(replica)
      , perSquare_(1 / (replica.reference.base() * replica.reference.base()))
      , state_(start)
      , bound_(start) {
        for (std::size_t b = 0; b < 2; ++b) {
            constants_[b] = replica.branches[b].constant.base();
            weights_[b] = replica.branches[b].weight;
            sampleDecay_[b] = Decay(constants_[b]);
            blockDecay_[b] = Decay(constants_[b]);
        }
    }

    /// When it first operates, in seconds since the first sample, if before `horizon`; 0 where it begins so.
    std::optional<double> crossing(double horizon) {
        if (thermalState(replica_, state_) >= 1) return horizon > 0 ? std::optional(0.0) : std::nullopt;
        for (std::size_t k = 0; k < blocks_.size(); ++k) {
            const Block& block = blocks_[k];
            if (channel_.seconds[block.first] >= horizon) return std::nullopt;
            if (mayReach(block) < 1) {
                passBy(block);
                continue;
            }
            comeTo(k);
            if (const auto time = goThrough(block)) return *time < horizon ? time : std::nullopt;
            known_ = k + 1;
            bound_ = state_;
        }
        return std::nullopt;
    }

  private:
    /// No state within the block is above this: no branch takes up more than all the heat, and none gets
    /// beyond the state that the highest current ends in.
    double mayReach(const Block& block) const {
        double most = 0;
        const double ends = block.highest * perSquare_, heat = block.energy * perSquare_;
        for (std::size_t b = 0; b < 2; ++b)
            most += weights_[b] * std::min(bound_[b] + heat / constants_[b], std::max(bound_[b], ends));
        return most;
    }
    void passBy(const Block& block) {
        const double ends = block.highest * perSquare_, heat = block.energy * perSquare_;
        for (std::size_t b = 0; b < 2; ++b) {
            const double decay = blockDecay_[b].over(block.time);
            bound_[b] = bound_[b] * decay + std::min(heat / constants_[b], (1 - decay) * ends);
        }
    }
    /// Makes the state that of the block's beginning, going through what has been passed by. Of what is
    /// older than many time constants nothing is left that a double could tell.
    void comeTo(std::size_t block) {
        constexpr double constantsToForget = 45;
        const double forgotten = constantsToForget * std::max(constants_[0], constants_[1]);
        const double begins = channel_.seconds[blocks_[block].first];
        std::size_t from = block;
        while (from > known_ && begins - channel_.seconds[blocks_[from].first] < forgotten)
            --from;
        if (from > known_) state_ = {0, 0};
        for (; from < block; ++from)
            for (std::size_t i = 0; i < blocks_[from].count; ++i)
                advance(blocks_[from].first + i);
    }
    void advance(std::size_t sample) {
        const double ends = channel_.amperes[sample] * channel_.amperes[sample] * perSquare_;
        const double step = stepOf(channel_, sample);
        for (std::size_t b = 0; b < 2; ++b)
            state_[b] = ends + (state_[b] - ends) * sampleDecay_[b].over(step);
    }
    std::optional<double> goThrough(const Block& block) {
        for (std::size_t i = block.first; i < block.first + block.count; ++i) {
            const physics::ReplicaState before = state_;
            advance(i);
            // Between its ends a step's state may rise and fall again only if it ends below its current's.
            const double ends = channel_.amperes[i] * channel_.amperes[i] * perSquare_;
            const double theta = weights_[0] * state_[0] + weights_[1] * state_[1];
            if (theta < 1 && ends < 1 && std::max(before[0], before[1]) < 1) continue;
            const std::array step{
                physics::DutyStep{amperes(channel_.amperes[i]), seconds(stepOf(channel_, i))}};
            if (const auto reached = physics::firstCrossing(replica_, step, before, 1))
                return channel_.seconds[i] + reached->inAll.base();
        }
        return std::nullopt;
    }

    const LoggedChannel& channel_;
    const std::vector<Block>& blocks_;
    const physics::ThermalReplica& replica_;
    double perSquare_;
    std::array<double, 2> constants_{}, weights_{};
    std::array<Decay, 2> sampleDecay_{Decay(1), Decay(1)}, blockDecay_{Decay(1), Decay(1)};
    physics::ReplicaState state_; ///< at the beginning of block `known_`
    physics::ReplicaState bound_; ///< no lower than the state
    std::size_t known_ = 0;
};

constexpr double never = std::numeric_limits<double>::infinity();

/// When the current has first been above, or at, so much for so long without a break; 0: as soon as it is. A
/// gap is a break, since a sample of 0 A stands there.
double firstAbove(const LoggedChannel& channel, const std::vector<Block>& blocks, double current, bool orAt,
                  double stays) {
    const auto isThere = [&](double value) { return value > current || (orAt && value == current); };
    double there = 0;
    for (const Block& block : blocks) {
        if (!isThere(std::sqrt(block.highest))) {
            there = 0;
            continue;
        }
        for (std::size_t i = block.first; i < block.first + block.count; ++i) {
            const bool holds = isThere(channel.amperes[i]);
            const double step = stepOf(channel, i);
            if (holds && there + step >= stays) return channel.seconds[i] + (stays - there);
            there = holds ? there + step : 0;
        }
    }
    return never;
}

/// When the quick releases first operate: the earliest, or the latest.
template <class OfBand>
double atOnce(const LoggedQuestion& question, OfBand first) {
    double sooner = never;
    for (const auto* band : {&question.instantaneous, &question.shortTime})
        if (*band) sooner = std::min(sooner, first(**band));
    return sooner;
}

/// Every replica's way through the log, begun cold or as `start` has it.
class Passages {
  public:
    Passages(const LoggedChannel& channel, const std::vector<Block>& blocks, const LogStart* start)
      : channel_(channel)
      , blocks_(blocks)
      , start_(start) {}

    /// When the first of them operates, each of whose currents its place makes such a share; `horizon` where
    /// none does before.
    double first(const std::vector<physics::ThermalReplica>& replicas, Ratio share, double horizon) const {
        for (const physics::ThermalReplica& replica : replicas)
            if (const auto time = crossing(inPlace(replica, share), horizon)) horizon = *time;
        return horizon;
    }
    /// When all of them have; `horizon` where one does not before.
    double all(const std::vector<physics::ThermalReplica>& replicas, Ratio share, double horizon) const {
        if (replicas.empty()) return horizon;
        double last = 0;
        for (const physics::ThermalReplica& replica : replicas) {
            const auto time = crossing(inPlace(replica, share), horizon);
            if (!time) return horizon;
            last = std::max(last, *time);
        }
        return last;
    }

  private:
    static physics::ThermalReplica inPlace(physics::ThermalReplica replica, Ratio share) {
        replica.reference = replica.reference * share;
        return replica;
    }
    std::optional<double> crossing(const physics::ThermalReplica& replica, double horizon) const {
        const auto start = start_ ? start_->stateOf(replica) : physics::ReplicaState{};
        return Passage(channel_, blocks_, replica, start).crossing(horizon);
    }

    const LoggedChannel& channel_;
    const std::vector<Block>& blocks_;
    const LogStart* start_;
};

/// When the earliest and the latest sound device operate.
struct Operations {
    double earliest = never, latest = never;
};
/// Where nothing operates before `horizon`, that: what the quick releases do; of what begins warm what it
/// does from cold, which is no sooner. Of the earliest nothing is told where its warmth is not known, and the
/// latest is not sure to where its cold is not.
Operations operations(const LoggedQuestion& question, const Passages& passages, const Operations& horizon) {
    const physics::ReplicaSet& replicas = question.device.replicas;
    const double earliest =
        question.inWarmth ? passages.first(replicas.early, *question.inWarmth, horizon.earliest) : never;
    const double latest =
        question.inCold ? passages.all(replicas.late, *question.inCold, horizon.latest) : horizon.latest;
    return {earliest, latest};
}

Operations quickOnes(const LoggedQuestion& question, const LoggedChannel& channel,
                     const std::vector<Block>& blocks) {
    const double rated = question.rated.base();
    return {atOnce(question,
                   [&](const InstantaneousBand& band) {
                       return firstAbove(channel, blocks, rated * band.above, false, band.notBefore.base());
                   }),
            atOnce(question, [&](const InstantaneousBand& band) {
                return firstAbove(channel, blocks, rated * band.upTo, true, band.within.base());
            })};
}

LoggedHeat heatOf(const Conductor& conductor, const Warming& quick, const Warming& slow) {
    LoggedHeat heat;
    heat.peak = temperatureOf(conductor, quick.warmed.peak);
    heat.leastPeak = conductor.slow ? temperatureOf(conductor, slow.warmed.peak) : conductor.ambient;
    heat.leastAgeing = never;
    for (const Warming* warming : {&quick, &slow})
        for (const double energy : {conductor.life.least, conductor.life.most}) {
            const Ratio ageing = warming->ageing(conductor, energy);
            heat.leastAgeing = std::min(heat.leastAgeing, ageing);
            heat.mostAgeing = std::max(heat.mostAgeing, ageing);
        }
    return heat;
}

std::optional<Time> unlessNever(double time) {
    return time < never ? std::optional(seconds(time)) : std::nullopt;
}

LoggedWarm warmAnswer(const LoggedQuestion& question, const Passages& passages, const LogStart& start,
                      const Operations& fromCold, const std::optional<LoggedHeat>& heat) {
    const Operations found = operations(question, passages, fromCold);
    LoggedWarm warm{unlessNever(found.earliest), unlessNever(found.latest), std::nullopt};
    if (const auto& conductor = question.conductor) {
        warm.peak = std::max(heat->peak, start.warmest(*conductor, conductor->quick));
        if (conductor->slow) warm.peak = std::max(*warm.peak, start.warmest(*conductor, *conductor->slow));
    }
    return warm;
}

} // namespace

LoggedAnswer answerLogged(const LoggedQuestion& question, const LoggedChannel& channel) {
    LoggedAnswer answer;
    if (channel.amperes.empty()) return answer;
    std::vector<Block> blocks;
    double above = 0;
    const auto goThrough = [&](std::size_t look, auto& quick, auto& slow) {
        Pass pass(channel, question.rated.base(), look, quick, slow);
        above = pass.above();
        blocks = std::move(pass).blocks();
    };
    if (const auto& conductor = question.conductor) {
        Warming quick(*conductor, conductor->quick),
            slow(*conductor, conductor->slow.value_or(conductor->quick));
        goThrough(lookEvery(channel, conductor->quick), quick, slow);
        answer.conductor = heatOf(*conductor, quick, slow);
    } else {
        NoWarming none;
        goThrough(channel.amperes.size(), none, none);
    }
    double energy = 0, highest = 0;
    for (const Block& block : blocks) {
        energy += block.energy;
        highest = std::max(highest, block.highest);
    }
    answer.length = seconds(channel.seconds.back()) + channel.lastStep;
    answer.gaps = channel.gaps;
    answer.atFirst = amperes(channel.amperes.front());
    const double logged = (answer.length - channel.gaps).base();
    answer.peak = amperes(std::sqrt(highest));
    answer.rms = amperes(logged > 0 ? std::sqrt(energy / logged) : 0);
    answer.shareAbove = logged > 0 ? above / logged : 0;
    const Operations cold =
        operations(question, Passages(channel, blocks, nullptr), quickOnes(question, channel, blocks));
    answer.earliest = unlessNever(cold.earliest);
    answer.latest = unlessNever(cold.latest);
    const LogStart start(channel, blocks, logged > 0 ? energy / logged : 0);
    answer.warm = warmAnswer(question, Passages(channel, blocks, &start), start, cold, answer.conductor);
    return answer;
}

} // namespace loopwright::overload
