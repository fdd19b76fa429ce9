// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/logged_current.h"

#include "core/overload/log_steps.h"
#include "core/physics/thermal_replica.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace loopwright::overload {

namespace {

constexpr std::size_t blockLength = 256; // samples

/// Samples side by side, and what bounds a replica's state over them.
struct Block {
    std::size_t first = 0, count = 0;
    double time = 0;    ///< s
    double energy = 0;  ///< sum of I2 t, A2s
    double highest = 0; ///< largest I2
};

/// A conductor on its way, in shares of its rise at I_z, and how long it was how warm.
class Warming {
  public:
    Warming(const Conductor& conductor, Time constant)
      : decay_(constant.base())
      , perSquare_(1 / (conductor.capacity.base() * conductor.capacity.base())) {}

    void advance(double square, double step) {
        const double decay = decay_.over(step);
        state_ = state_ * decay + square * (perSquare_ * (1 - decay));
        peak_ = std::max(peak_, state_);
    }
    /// Counts the state for so long.
    void stay(double time) {
        const double bin = std::min(state_ * binsToLimit, static_cast<double>(bins_.size() - 1));
        bins_[static_cast<std::size_t>(bin)] += time;
    }
    double peak() const { return peak_; }
    Temperature at(const Conductor& conductor, double state) const {
        return conductor.ambient + (conductor.limit - conductor.ambient) * state;
    }
    Ratio ageing(const Conductor& conductor, double energy) const {
        double sum = 0, time = 0;
        for (std::size_t i = 0; i < bins_.size(); ++i) {
            if (bins_[i] == 0) continue;
            const double middle = (static_cast<double>(i) + 0.5) / binsToLimit;
            sum += bins_[i] * relativeAgeing(energy, conductor.limit, at(conductor, middle));
            time += bins_[i];
        }
        return time > 0 ? sum / time : 0;
    }

  private:
    static constexpr double binsToLimit = 64; // some tenths of a kelvin each
    Decay decay_;
    double perSquare_;
    double state_ = 0, peak_ = 0;
    std::array<double, 1024> bins_{};
};

/// What one pass over the samples gathers.
struct Gathered {
    std::vector<Block> blocks;
    double above = 0; ///< s
};

/// Without a conductor nothing warms.
struct NoWarming {
    void advance(double, double) {}
    void stay(double) {}
};

/// How many samples may pass between two looks at a temperature.
std::size_t lookEvery(const LoggedChannel& channel, Time quick) {
    const double step =
        (channel.seconds.back() + channel.lastStep.base()) / static_cast<double>(channel.seconds.size());
    constexpr double looksPerConstant = 8;
    return static_cast<std::size_t>(std::clamp(quick.base() / (looksPerConstant * step), 1.0, 64.0));
}

template <class Quick, class Slow>
Gathered gather(const LoggedChannel& channel, double rated, std::size_t look, Quick& quick, Slow& slow) {
    Gathered gathered;
    const std::size_t samples = channel.amperes.size();
    gathered.blocks.reserve(samples / blockLength + 1);
    double unseen = 0;
    std::size_t sinceLook = 0;
    for (std::size_t first = 0; first < samples; first += blockLength) {
        Block block{first, std::min(blockLength, samples - first)};
        double above = 0;
        for (std::size_t i = first; i < first + block.count; ++i) {
            const double current = channel.amperes[i], square = current * current;
            const double step = stepOf(channel, i);
            quick.advance(square, step);
            slow.advance(square, step);
            block.energy += square * step;
            block.time += step;
            block.highest = std::max(block.highest, square);
            above += current > rated ? step : 0;
            unseen += step;
            if (++sinceLook >= look) {
                quick.stay(unseen);
                slow.stay(unseen);
                unseen = 0;
                sinceLook = 0;
            }
        }
        gathered.above += above;
        gathered.blocks.push_back(block);
    }
    quick.stay(unseen);
    slow.stay(unseen);
    return gathered;
}

/// One replica on its way through the log.
class Passage {
  public:
    Passage(const LoggedChannel& channel, const std::vector<Block>& blocks,
            const physics::ThermalReplica& replica)
      : channel_(channel)
      , blocks_(blocks)
      , replica_(replica)
      , perSquare_(1 / (replica.reference.base() * replica.reference.base())) {
        for (std::size_t b = 0; b < 2; ++b) {
            constants_[b] = replica.branches[b].constant.base();
            weights_[b] = replica.branches[b].weight;
            sampleDecay_[b] = Decay(constants_[b]);
            blockDecay_[b] = Decay(constants_[b]);
        }
    }

    /// When it first operates, in seconds since the first sample, if before `horizon`.
    std::optional<double> crossing(double horizon) {
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
    physics::ReplicaState state_{}; ///< at the beginning of block `known_`
    physics::ReplicaState bound_{}; ///< no lower than the state
    std::size_t known_ = 0;
};

constexpr double never = std::numeric_limits<double>::infinity();

/// When the current first is above, or at, so much.
double firstAbove(const LoggedChannel& channel, const std::vector<Block>& blocks, double current, bool orAt) {
    const auto isThere = [&](double value) { return value > current || (orAt && value == current); };
    for (const Block& block : blocks) {
        if (!isThere(std::sqrt(block.highest))) continue;
        for (std::size_t i = block.first; i < block.first + block.count; ++i)
            if (isThere(channel.amperes[i])) return channel.seconds[i];
    }
    return never;
}

double earliest(const LoggedQuestion& question, const LoggedChannel& channel,
                const std::vector<Block>& blocks) {
    double first = never;
    if (question.instantaneous)
        first = firstAbove(channel, blocks, question.rated.base() * question.instantaneous->above, false);
    for (const physics::ThermalReplica& replica : question.device.replicas.early)
        if (const auto time = Passage(channel, blocks, replica).crossing(first)) first = *time;
    return first;
}

double latest(const LoggedQuestion& question, const LoggedChannel& channel,
              const std::vector<Block>& blocks) {
    const double atOnce =
        question.instantaneous
            ? firstAbove(channel, blocks, question.rated.base() * question.instantaneous->upTo, true)
            : never;
    if (question.device.replicas.late.empty()) return atOnce;
    double last = 0;
    for (const physics::ThermalReplica& replica : question.device.replicas.late) {
        const auto time = Passage(channel, blocks, replica).crossing(atOnce);
        if (!time) return atOnce;
        last = std::max(last, *time);
    }
    return std::min(last, atOnce);
}

LoggedHeat heatOf(const Conductor& conductor, const Warming& quick, const Warming& slow) {
    LoggedHeat heat;
    heat.peak = quick.at(conductor, quick.peak());
    heat.leastPeak = conductor.slow ? slow.at(conductor, slow.peak()) : conductor.ambient;
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

} // namespace

LoggedAnswer answerLogged(const LoggedQuestion& question, const LoggedChannel& channel) {
    LoggedAnswer answer;
    if (channel.amperes.empty()) return answer;
    Gathered gathered;
    if (const auto& conductor = question.conductor) {
        Warming quick(*conductor, conductor->quick),
            slow(*conductor, conductor->slow.value_or(conductor->quick));
        gathered = gather(channel, question.rated.base(), lookEvery(channel, conductor->quick), quick, slow);
        answer.conductor = heatOf(*conductor, quick, slow);
    } else {
        NoWarming none;
        gathered = gather(channel, question.rated.base(), channel.amperes.size() + 1, none, none);
    }
    double energy = 0, highest = 0;
    for (const Block& block : gathered.blocks) {
        energy += block.energy;
        highest = std::max(highest, block.highest);
    }
    answer.length = seconds(channel.seconds.back()) + channel.lastStep;
    answer.gaps = channel.gaps;
    const double logged = (answer.length - channel.gaps).base();
    answer.peak = amperes(std::sqrt(highest));
    answer.rms = amperes(logged > 0 ? std::sqrt(energy / logged) : 0);
    answer.shareAbove = logged > 0 ? gathered.above / logged : 0;
    answer.earliest = unlessNever(earliest(question, channel, gathered.blocks));
    answer.latest = unlessNever(latest(question, channel, gathered.blocks));
    return answer;
}

} // namespace loopwright::overload
