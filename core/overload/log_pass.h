// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/conductor.h"
#include "core/overload/log_steps.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <vector>

/// One pass over the samples of a log: what its conductor went through, and blocks that bound what a device
/// did.
namespace loopwright::overload {

inline constexpr std::size_t blockLength = 256; // samples

/// Samples side by side, and what bounds a replica's state over them.
struct Block {
    std::size_t first = 0, count = 0;
    double time = 0;    ///< s
    double energy = 0;  ///< sum of I2 t, A2s
    double highest = 0; ///< largest I2
};

/// What one step of a log does to a conductor, in shares of its rise at I_z.
struct Pace {
    double step = 0; ///< s
    double decay = 1;
    double perSquare = 0; ///< of what the square of the current adds
};

/// How warm a conductor is, and was at most. A value, so that a loop can keep it in registers.
struct Warmed {
    double state = 0, peak = 0;
    void advance(double square, const Pace& pace) {
        state = state * pace.decay + square * pace.perSquare;
        peak = std::max(peak, state);
    }
    /// Two steps at once, so that the second need not wait for the first.
    void advanceTwo(double first, double second, const Pace& pace) {
        const double between = state * pace.decay + first * pace.perSquare;
        state = state * (pace.decay * pace.decay) + (first * pace.decay + second) * pace.perSquare;
        peak = std::max(peak, std::max(between, state));
    }
};

/// A conductor on its way, and how long it was how warm.
class Warming {
  public:
    using Warmed = overload::Warmed;
    Warming(const Conductor& conductor, Time constant)
      : heating_(conductor, constant)
      , decay_(constant.base())
      , perSquare_(1 / (conductor.capacity.base() * conductor.capacity.base())) {}

    Pace paceOf(double step) { return paceOf(step, decay_.over(step)); }
    Pace paceOf(double step, double decay) const { return {step, decay, perSquare_ * (1 - decay)}; }
    /// How much is left after each of the steps. `decays` has room for as many.
    void decaysOver(std::span<const double> steps, double* decays) const { decay_.over(steps, decays); }
    /// Where it is, for samples that are gone through as if no resistance rose.
    Warmed begun() const { return {warmed.state, warmed.state}; }
    /// What came of them: that, or above the limit what the rise of the resistance makes of it. `paceOfStep`
    /// is asked by the number of the sample.
    template <class PaceOfStep>
    void finish(const Warmed& plain, std::span<const double> currents, PaceOfStep paceOfStep) {
        if (plain.peak <= 1 || heating_.feedback() == 0) {
            warmed.state = plain.state;
            warmed.peak = std::max(warmed.peak, plain.peak);
            return;
        }
        for (std::size_t i = 0; i < currents.size(); ++i) {
            warmed.state = hotState(currents[i], paceOfStep(i));
            warmed.peak = std::max(warmed.peak, warmed.state);
        }
    }
    /// By one sample.
    void goOn(double current, double step) {
        const Pace pace = paceOf(step);
        Warmed plain = begun();
        plain.advance(current * current, pace);
        finish(plain, std::span(&current, 1), [&](std::size_t) { return pace; });
    }
    /// Counts the state for so long.
    void stay(double time) {
        const double bin = std::min(warmed.state * binsToLimit, static_cast<double>(bins_.size() - 1));
        bins_[static_cast<std::size_t>(bin)] += time;
    }
    Ratio ageing(const Conductor& conductor, double energy) const {
        double sum = 0, time = 0;
        for (std::size_t i = 0; i < bins_.size(); ++i) {
            if (bins_[i] == 0) continue;
            const double middle = (static_cast<double>(i) + 0.5) / binsToLimit;
            sum += bins_[i] * relativeAgeing(energy, conductor.limit, temperatureOf(conductor, middle));
            time += bins_[i];
        }
        return time > 0 ? sum / time : 0;
    }

    Warmed warmed;

  private:
    /// In short steps with the resistance that it has at their beginning.
    double hotState(double current, const Pace& pace) const {
        constexpr double shortStep = 0.05; // time constants
        if (pace.step > shortStep * heating_.constant().base())
            return heating_.stateAfter(warmed.state, amperes(current), seconds(pace.step));
        const double resistance = 1 + heating_.feedback() * std::max(warmed.state - 1, 0.0);
        return std::min(warmed.state * pace.decay + current * current * resistance * pace.perSquare,
                        heating_.highest());
    }

    static constexpr double binsToLimit = 64; // some tenths of a kelvin each
    Heating heating_;
    Decay decay_;
    double perSquare_;
    std::array<double, 1024> bins_{};
};

/// Without a conductor nothing warms.
struct NoWarming {
    struct Warmed {
        void advance(double, const Pace&) {}
        void advanceTwo(double, double, const Pace&) {}
    };
    Pace paceOf(double, double = 1) { return {}; }
    void decaysOver(std::span<const double>, double*) const {}
    Warmed begun() const { return {}; }
    template <class PaceOfStep>
    void finish(const Warmed&, std::span<const double>, PaceOfStep) {}
    void stay(double) {}
    Warmed warmed;
};

/// How many samples may pass between two looks at a temperature.
inline std::size_t lookEvery(const LoggedChannel& channel, Time quick) {
    const double step =
        (channel.seconds.back() + channel.lastStep.base()) / static_cast<double>(channel.seconds.size());
    constexpr double looksPerConstant = 8;
    return static_cast<std::size_t>(std::clamp(quick.base() / (looksPerConstant * step), 1.0, 64.0));
}

/// One pass over the samples, with the conductor at both of its constants.
template <class Warms>
class Pass {
  public:
    Pass(const LoggedChannel& channel, double rated, std::size_t look, Warms& quick, Warms& slow)
      : channel_(channel)
      , rated_(rated)
      , look_(look)
      , quick_(quick)
      , slow_(slow) {
        const std::size_t samples = channel.amperes.size();
        blocks_.reserve(samples / blockLength + 1);
        for (std::size_t first = 0; first < samples; first += blockLength) {
            Block block{first, std::min(blockLength, samples - first)};
            if (const auto step = commonStep(block))
                goEvenly(block, *step);
            else
                goOneByOne(block);
            blocks_.push_back(block);
        }
        if (unseen_ > 0) lookAtBoth();
    }
    std::vector<Block> blocks() && { return std::move(blocks_); }
    double above() const { return above_; } ///< s above the rating

  private:
    /// How long each of the block's samples holds, where all hold equally long.
    std::optional<double> commonStep(const Block& block) const {
        const std::size_t end = block.first + block.count;
        const double step = stepOf(channel_, block.first);
        if (!isSameStep(stepOf(channel_, end - 1), step)) return std::nullopt;
        double least = step, most = step;
        for (std::size_t i = block.first + 1; i < end; ++i) {
            const double each = channel_.seconds[i] - channel_.seconds[i - 1];
            least = std::min(least, each);
            most = std::max(most, each);
        }
        return isSameStep(least, step) && isSameStep(most, step) ? std::optional(step) : std::nullopt;
    }

    void goEvenly(Block& block, double step) {
        const Pace quickPace = quick_.paceOf(step), slowPace = slow_.paceOf(step);
        const double* const current = channel_.amperes.data();
        double squares = 0, highest = 0;
        std::size_t above = 0;
        for (std::size_t i = block.first, end = block.first + block.count; i < end;) {
            const std::size_t looked = std::min(end, i + look_ - sinceLook_);
            unseen_ += static_cast<double>(looked - i) * step;
            sinceLook_ += looked - i;
            const std::span taken(current + i, looked - i);
            auto quick = quick_.begun();
            auto slow = slow_.begun();
            for (; i + 1 < looked; i += 2) {
                const double one = current[i] * current[i], other = current[i + 1] * current[i + 1];
                quick.advanceTwo(one, other, quickPace);
                slow.advanceTwo(one, other, slowPace);
                squares += one + other;
                highest = std::max(highest, std::max(one, other));
                above += std::size_t{current[i] > rated_} + std::size_t{current[i + 1] > rated_};
            }
            if (i < looked) {
                const double square = current[i] * current[i];
                quick.advance(square, quickPace);
                slow.advance(square, slowPace);
                squares += square;
                highest = std::max(highest, square);
                above += current[i++] > rated_;
            }
            quick_.finish(quick, taken, [&](std::size_t) { return quickPace; });
            slow_.finish(slow, taken, [&](std::size_t) { return slowPace; });
            if (sinceLook_ >= look_) lookAtBoth();
        }
        block.energy = squares * step;
        block.time = static_cast<double>(block.count) * step;
        block.highest = highest;
        above_ += static_cast<double>(above) * step;
    }

    void goOneByOne(Block& block) {
        std::array<double, mostAtOnce> steps, quickDecays, slowDecays;
        double energy = 0, time = 0, highest = 0, above = 0;
        for (std::size_t i = block.first, end = block.first + block.count; i < end;) {
            const std::size_t looked = std::min({end, i + look_ - sinceLook_, i + mostAtOnce});
            const std::span taken(channel_.amperes.data() + i, looked - i);
            const std::span lasting(steps.data(), taken.size());
            for (std::size_t k = 0; k < taken.size(); ++k)
                steps[k] = stepOf(channel_, i + k);
            quick_.decaysOver(lasting, quickDecays.data());
            slow_.decaysOver(lasting, slowDecays.data());
            const auto quickPace = [&](std::size_t k) { return quick_.paceOf(steps[k], quickDecays[k]); };
            const auto slowPace = [&](std::size_t k) { return slow_.paceOf(steps[k], slowDecays[k]); };
            auto quick = quick_.begun();
            auto slow = slow_.begun();
            double passed = 0;
            for (std::size_t k = 0; k < taken.size(); ++k) {
                const double square = taken[k] * taken[k];
                quick.advance(square, quickPace(k));
                slow.advance(square, slowPace(k));
                energy += square * steps[k];
                passed += steps[k];
                highest = std::max(highest, square);
                above += taken[k] > rated_ ? steps[k] : 0;
            }
            quick_.finish(quick, taken, quickPace);
            slow_.finish(slow, taken, slowPace);
            time += passed;
            unseen_ += passed;
            sinceLook_ += taken.size();
            i = looked;
            if (sinceLook_ >= look_) lookAtBoth();
        }
        block.energy = energy;
        block.time = time;
        block.highest = highest;
        above_ += above;
    }

    void lookAtBoth() {
        quick_.stay(unseen_);
        slow_.stay(unseen_);
        unseen_ = 0;
        sinceLook_ = 0;
    }

    static constexpr std::size_t mostAtOnce = 64; ///< samples of odd steps

    const LoggedChannel& channel_;
    double rated_;
    std::size_t look_;
    Warms& quick_;
    Warms& slow_;
    std::vector<Block> blocks_;
    double above_ = 0;
    double unseen_ = 0; ///< s since the last look
    std::size_t sinceLook_ = 0;
};

} // namespace loopwright::overload
