// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/log_picture.h"

#include "core/overload/log_steps.h"

#include <algorithm>
#include <array>
#include <limits>

namespace loopwright::overload {

namespace {

/// A branch of a replica, or a conductor, on its way: tau theta' = ends - theta.
class Element {
  public:
    explicit Element(double constant)
      : decay_(constant) {}
    void advance(double ends, double step) { state_ = ends + (state_ - ends) * decay_.over(step); }
    double state() const { return state_; }

  private:
    Decay decay_;
    double state_ = 0;
};

/// All replicas of one extreme, and the one of them that counts.
class Extreme {
  public:
    explicit Extreme(const std::vector<physics::ThermalReplica>& replicas) {
        for (const physics::ThermalReplica& replica : replicas)
            running_.push_back({1 / (replica.reference.base() * replica.reference.base()),
                                {replica.branches[0].weight, replica.branches[1].weight},
                                {Element(replica.branches[0].constant.base()),
                                 Element(replica.branches[1].constant.base())}});
    }
    void advance(double square, double step) {
        for (Running& each : running_)
            for (Element& element : each.elements)
                element.advance(square * each.perSquare, step);
    }
    template <class Worse>
    std::optional<Ratio> state(Worse worse) const {
        std::optional<Ratio> extreme;
        for (const Running& each : running_) {
            const Ratio state =
                each.weights[0] * each.elements[0].state() + each.weights[1] * each.elements[1].state();
            extreme = extreme ? worse(*extreme, state) : state;
        }
        return extreme;
    }

  private:
    struct Running {
        double perSquare;
        std::array<double, 2> weights;
        std::array<Element, 2> elements;
    };
    std::vector<Running> running_;
};

void keepHighest(std::optional<Ratio>& highest, const std::optional<Ratio>& state) {
    if (state) highest = highest ? std::max(*highest, *state) : *state;
}

/// Goes through a log and notes in each column what happened.
class LogRun {
  public:
    LogRun(const LoggedQuestion& question, const LoggedChannel& channel, const LoggedAnswer& answer,
           std::size_t columns)
      : question_(question)
      , channel_(channel)
      , columns_(columns)
      , width_(answer.length.base() / static_cast<double>(columns))
      , early_(question.device.replicas.early)
      , late_(question.device.replicas.late) {
        if (const auto& conductor = question.conductor) heating_.emplace(*conductor, conductor->quick);
        picture_.rated = question.rated;
        picture_.earliestOperated = answer.earliest;
        picture_.latestOperated = answer.latest;
        if (question.conductor) picture_.limit = question.conductor->limit;
        picture_.columns.reserve(columns);
    }

    LogPicture run() {
        auto gap = channel_.gapsApart.begin();
        open();
        for (std::size_t i = 0; i < channel_.amperes.size(); ++i) {
            double from = channel_.seconds[i];
            const double to = from + stepOf(channel_, i);
            while (gap != channel_.gapsApart.end() && gap->to <= from)
                ++gap;
            const bool isLogged = gap == channel_.gapsApart.end() || from < gap->from;
            while (from < to) {
                const double until = std::min(to, end_);
                advance(channel_.amperes[i], until - from, isLogged);
                if (until >= end_) open();
                from = until;
            }
        }
        return std::move(picture_);
    }

  private:
    LogPicture::Column& column() { return picture_.columns.back(); }

    /// Begins the next column with what the last ended in. The last one takes what rounding leaves over.
    void open() {
        const double place = static_cast<double>(picture_.columns.size());
        LogPicture::Column fresh;
        fresh.from = seconds(place * width_);
        fresh.to = seconds((place + 1) * width_);
        picture_.columns.push_back(fresh);
        end_ =
            picture_.columns.size() == columns_ ? std::numeric_limits<double>::infinity() : fresh.to.base();
        if (question_.conductor) column().conductor = question_.conductor->ambient;
        note();
    }

    void advance(double current, double step, bool isLogged) {
        const double square = current * current;
        if (heating_) warmth_ = heating_->stateAfter(warmth_, amperes(current), seconds(step));
        const Ratio left = question_.inWarmth.value_or(1);
        if (!isOver(picture_.earliestOperated)) early_.advance(square / (left * left), step);
        const Ratio cold = question_.inCold.value_or(1);
        if (!isOver(picture_.latestOperated)) late_.advance(square / (cold * cold), step);
        note();
        if (!isLogged) return;
        const Current flowed = amperes(current);
        column().least = column().isLogged ? std::min(column().least, flowed) : flowed;
        column().most = column().isLogged ? std::max(column().most, flowed) : flowed;
        column().isLogged = true;
    }

    /// Whether it had happened when the column began.
    bool isOver(const std::optional<Time>& operated) { return operated && *operated < column().from; }

    void note() {
        if (const auto& conductor = question_.conductor)
            column().conductor = std::max(column().conductor, temperatureOf(*conductor, warmth_));
        if (question_.inWarmth && !isOver(picture_.earliestOperated))
            keepHighest(column().earliest, early_.state([](Ratio a, Ratio b) { return std::max(a, b); }));
        if (question_.inCold && !isOver(picture_.latestOperated))
            keepHighest(column().latest, late_.state([](Ratio a, Ratio b) { return std::min(a, b); }));
    }

    const LoggedQuestion& question_;
    const LoggedChannel& channel_;
    std::size_t columns_;
    double width_;   ///< s
    double end_ = 0; ///< of the column in hand, s
    LogPicture picture_;
    Extreme early_;
    Extreme late_;
    std::optional<Heating> heating_; ///< of the conductor alone
    Ratio warmth_ = 0;
};

} // namespace

LogPicture logPicture(const LoggedQuestion& question, const LoggedChannel& channel,
                      const LoggedAnswer& answer, std::size_t columns) {
    if (channel.amperes.empty() || columns == 0) return {};
    return LogRun(question, channel, answer, columns).run();
}

} // namespace loopwright::overload
