// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/current_log.h"

#include "core/overload/log_heads.h"
#include "core/overload/log_times.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace loopwright::overload {

namespace {

constexpr std::size_t mostChannels = 64;
constexpr double gapSteps = 10; // of the usual step

using Cells = std::vector<std::string_view>;
using Refusal = tl::unexpected<Message>;

Refusal refused(std::string_view key, std::size_t line) {
    return Refusal(Message{key, {static_cast<std::int64_t>(line)}});
}

/// Hands out lines, counting them.
class Lines {
  public:
    explicit Lines(std::string_view text)
      : rest_(text) {}
    bool next() {
        if (rest_.empty()) return false;
        const std::size_t end = std::min(rest_.find('\n'), rest_.size());
        line_ = rest_.substr(0, end);
        rest_.remove_prefix(std::min(end + 1, rest_.size()));
        ++number_;
        return true;
    }
    std::string_view line() const { return line_; }
    std::size_t number() const { return number_; }

  private:
    std::string_view rest_, line_;
    std::size_t number_ = 0;
};

/// What stands between quotes is one cell, separators and all.
void split(std::string_view line, char separator, Cells& cells) {
    cells.clear();
    while (cells.size() <= mostChannels + 2) {
        const std::size_t begins = std::min(line.find_first_not_of(" \t"), line.size());
        const std::size_t quoteEnds =
            begins < line.size() && line[begins] == '"' ? line.find('"', begins + 1) : line.npos;
        const std::size_t end = line.find(separator, quoteEnds == line.npos ? 0 : quoteEnds);
        cells.push_back(trimmed(line.substr(0, end)));
        if (end == line.npos) return;
        line.remove_prefix(end + 1);
    }
}

/// The time in the first cells of a line.
std::optional<double> timeOf(const Cells& cells, const LogFormat& format) {
    using enum LogFormat::Times;
    switch (format.times) {
    case Number:
        return logNumber(cells[0], format.decimalPoint);
    case DateTime:
        return logDateTime(cells[0]);
    case ClockTime:
        return logClock(cells[0]);
    case DateAndTime:
        if (const auto date = logDate(cells[0]), clock = logClock(cells[1]); date && clock)
            return *date + *clock;
        break;
    }
    return std::nullopt;
}

/// Whether the line reads as times and numbers in this format.
bool reads(const Cells& cells, const LogFormat& format) {
    if (cells.size() <= format.timeColumns() || !timeOf(cells, format)) return false;
    return std::any_of(
        cells.begin() + static_cast<std::ptrdiff_t>(format.timeColumns()), cells.end(),
        [&](std::string_view cell) { return logNumber(cell, format.decimalPoint).has_value(); });
}

std::optional<LogFormat> formatOf(std::string_view line) {
    using enum LogFormat::Times;
    Cells cells;
    for (const char separator : {';', '\t', ','}) {
        if (line.find(separator) == line.npos) continue;
        split(line, separator, cells);
        for (const auto times : {DateTime, DateAndTime, ClockTime, Number})
            if (const LogFormat format{separator, 0, times}; reads(cells, format)) return format;
    }
    return std::nullopt;
}

struct Column {
    std::string name;
    std::size_t place; ///< which cell of a line
    LogHead head;
    std::vector<double> values; ///< NaN: nothing logged
};

/// Without the empty cells that a separator at the end of a line makes.
std::size_t filled(const Cells& cells) {
    std::size_t count = cells.size();
    while (count > 0 && cells[count - 1].empty())
        --count;
    return count;
}

/// The lines of a log once its format is known.
class Reader {
  public:
    explicit Reader(const LogFormat& format)
      : format_(format) {}

    /// Chooses the columns by the first line of figures and the line above it.
    tl::expected<void, Message> choose(const Cells& first, const Cells& above) {
        const bool isHeader = above.size() == first.size();
        if (!isHeader && format_.separator == ',' && above.size() > 1 && filled(above) < filled(first))
            return Refusal(Message{"log.commas", {}});
        const auto nameOf = [&](std::size_t cell) { return isHeader ? above[cell] : std::string_view(); };
        const LogHead time = logHead(nameOf(0));
        const bool isNumber = format_.times == LogFormat::Times::Number;
        if (isNumber && time.holds == LogHead::Holds::Time) timeFactor_ = time.factor;
        for (std::size_t cell = format_.timeColumns(); cell < first.size(); ++cell) {
            const bool isFigure = first[cell].empty() || logNumber(first[cell], format_.decimalPoint);
            if (!isFigure || columns_.size() >= mostChannels) continue;
            const LogHead head = logHead(nameOf(cell));
            const bool isTime = head.holds == LogHead::Holds::Time && !isLeast(nameOf(cell));
            if (isTime && isNumber && time.holds != LogHead::Holds::Time)
                return Refusal(Message{"log.time-not-first", {}});
            if (isTime || head.holds == LogHead::Holds::Other) continue;
            std::string name(nameOf(cell));
            if (name.empty()) name = std::to_string(columns_.size() + 1);
            columns_.push_back({distinct(std::move(name)), cell, head, {}});
        }
        if (columns_.empty()) return Refusal(Message{"log.no-current-column", {}});
        // Who asks for no channel gets the first: rather one that says that it is a current.
        std::stable_partition(columns_.begin(), columns_.end(), [](const Column& column) {
            return column.head.holds == LogHead::Holds::Current;
        });
        return {};
    }

    tl::expected<void, Message> take(std::string_view line, std::size_t number) {
        if (trimmed(line).empty()) return {};
        split(line, format_.separator, cells_);
        cells_.resize(std::max(cells_.size(), format_.timeColumns() + 1));
        if (format_.times == LogFormat::Times::Number) decide(cells_.front());
        const auto time = timeOf(cells_, format_);
        if (!time || !std::isfinite(*time)) return refused("log.bad-time", number);
        if (auto done = takeTime(*time * timeFactor_, number); !done) return done;
        for (Column& column : columns_) {
            const bool isThere = column.place < cells_.size();
            if (auto done = takeValue(column, isThere ? cells_[column.place] : std::string_view(), number);
                !done)
                return done;
        }
        return {};
    }

    tl::expected<LoggedCurrents, Message> finished() {
        if (times_.size() < 2) return Refusal(Message{"log.too-short", {}});
        const double usual = usualStep();
        LoggedCurrents log;
        for (const Column& column : columns_)
            log.channels.push_back(channelFrom(column, usual));
        return log;
    }

  private:
    /// "I min" is the least of a current.
    static bool isLeast(std::string_view name) { return name.ends_with("min") && !name.ends_with("/ min"); }
    /// The first mark in any number of the log is that of all.
    void decide(std::string_view cell) {
        if (format_.decimalPoint != 0) return;
        if (const std::size_t at = cell.find_first_of(".,"); at != cell.npos) format_.decimalPoint = cell[at];
    }
    /// The name, or with a number behind it where a column bears it already: a line of units may name all.
    std::string distinct(std::string name) const {
        const std::string plain = name;
        const auto isTaken = [&](const Column& column) { return column.name == name; };
        for (int number = 2; std::ranges::any_of(columns_, isTaken); ++number)
            name = plain + " (" + std::to_string(number) + ")";
        return name;
    }
    tl::expected<void, Message> takeTime(double time, std::size_t number) {
        constexpr double day = 86400;
        time += midnights_ * day;
        if (format_.times == LogFormat::Times::ClockTime && !times_.empty() &&
            time < times_.back() - day / 2) {
            ++midnights_;
            time += day;
        }
        if (!times_.empty() && !(time > times_.back())) return refused("log.time-backwards", number);
        times_.push_back(time);
        return {};
    }
    tl::expected<void, Message> takeValue(Column& column, std::string_view cell, std::size_t number) {
        if (cell.empty()) {
            column.values.push_back(std::nan(""));
            return {};
        }
        decide(cell);
        const auto value = logNumber(cell, format_.decimalPoint);
        if (!value)
            return Refusal(Message{"log.bad-number", {static_cast<std::int64_t>(number), column.name}});
        if (!std::isfinite(*value) || *value < 0 || *value * column.head.factor > mostAmperes)
            return Refusal(Message{"log.no-current", {static_cast<std::int64_t>(number), column.name}});
        column.values.push_back(*value * column.head.factor);
        return {};
    }
    double usualStep() const {
        std::vector<double> steps;
        for (std::size_t i = 1; i < times_.size(); ++i)
            steps.push_back(times_[i] - times_[i - 1]);
        const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
        std::ranges::nth_element(steps, middle);
        return *middle;
    }
    LoggedChannel channelFrom(const Column& column, double usual) const {
        LoggedChannel channel{column.name, {}, {}, seconds(usual), {}, {}};
        const auto add = [&](double time, double current) {
            channel.seconds.push_back(time - times_.front());
            channel.amperes.push_back(current);
        };
        const auto leaveOut = [&](double from, double to) {
            const LoggedChannel::Gap gap{from - times_.front(), to - times_.front()};
            if (!channel.gapsApart.empty() && channel.gapsApart.back().to == gap.from)
                channel.gapsApart.back().to = gap.to;
            else
                channel.gapsApart.push_back(gap);
        };
        double gaps = 0;
        for (std::size_t i = 0; i < times_.size(); ++i) {
            const double next = i + 1 < times_.size() ? times_[i + 1] : times_[i] + usual;
            const double step = next - times_[i];
            const bool isThere = !std::isnan(column.values[i]);
            add(times_[i], isThere ? column.values[i] : 0);
            if (!isThere) {
                leaveOut(times_[i], next);
                gaps += step;
            } else if (step > gapSteps * usual) {
                add(times_[i] + usual, 0);
                leaveOut(times_[i] + usual, next);
                gaps += step - usual;
            }
        }
        channel.gaps = seconds(gaps);
        return channel;
    }

    static constexpr double mostAmperes = 1e6; // beyond any circuit; squares stay finite
    LogFormat format_;
    double timeFactor_ = 1;
    double midnights_ = 0;
    std::vector<Column> columns_;
    std::vector<double> times_;
    Cells cells_;
};

bool isText(std::string_view bytes) {
    return bytes.substr(0, 4096).find('\0') == bytes.npos;
}

} // namespace

tl::expected<LoggedCurrents, Message> readCurrentLog(std::string_view bytes) {
    if (bytes.size() > largestLog) return Refusal(Message{"log.too-large", {}});
    if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
    if (trimmed(bytes).empty()) return Refusal(Message{"log.empty", {}});
    if (!isText(bytes)) return Refusal(Message{"log.not-text", {}});

    constexpr std::size_t longestPreamble = 1000; // lines
    Lines lines(bytes);
    std::string_view above;
    std::optional<LogFormat> format;
    while (!format && lines.number() < longestPreamble && lines.next()) {
        format = formatOf(lines.line());
        if (!format) above = lines.line();
    }
    if (!format) return Refusal(Message{"log.no-rows", {}});
    Cells first, header;
    split(lines.line(), format->separator, first);
    split(above, format->separator, header);
    Reader reader(*format);
    if (auto done = reader.choose(first, header); !done) return Refusal(done.error());
    do {
        if (auto done = reader.take(lines.line(), lines.number()); !done) return Refusal(done.error());
    } while (lines.next());
    return reader.finished();
}

const LoggedChannel* channelOf(const LoggedCurrents& log, std::string_view name) {
    if (name.empty()) return &log.channels.front();
    const auto found = std::ranges::find(log.channels, name, &LoggedChannel::name);
    return found == log.channels.end() ? nullptr : &*found;
}

} // namespace loopwright::overload
