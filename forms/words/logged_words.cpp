// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/logged_words.h"

#include "core/working/terms.h"

#include <QCoreApplication>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Overload", text);
}

class LoggedWords {
  public:
    LoggedWords(const CircuitLog& log, const Words& words)
      : log_(log)
      , found_(log.found)
      , words_(words)
      , device_(words.word(log.picture.device)) {}

    QString sentences() const {
        QStringList said{currentSentence(), deviceSentence()};
        if (found_.conductor) said << conductorSentence();
        if (beganUnderLoad())
            said << tr("It began with %1; device and wiring are taken as cold at its beginning, so they may "
                       "have been warmer and the device sooner.")
                        .arg(amperesText(found_.atFirst));
        said << warmSentences();
        if (found_.gaps > Time())
            said
                << tr("Nothing was logged for %1 of it, and no current is reckoned with there: more may have "
                      "happened.")
                       .arg(spokenTime(found_.gaps, words_));
        return said.join(u' ');
    }

    std::vector<OverloadFact> facts() {
        add(tr("Logged"), found_.gaps > Time()
                              ? tr("%1, with gaps of %2")
                                    .arg(spokenTime(found_.length, words_), spokenTime(found_.gaps, words_))
                              : spokenTime(found_.length, words_));
        add(tr("Highest current"), tr("%1, %2 times the rating").arg(amperesText(found_.peak), timesRated()));
        add(tr("Current over time (r.m.s.)"), amperesText(found_.rms));
        add(tr("Above the rating of %1").arg(amperesText(log_.rated)), tr("%1 of the time").arg(shareText()));
        add(tr("The earliest sound %1").arg(device_), earliestText());
        add(tr("The latest sound %1").arg(device_), latestText());
        if (found_.conductor) addHeat(*found_.conductor);
        addWarm();
        return std::move(facts_);
    }

  private:
    void add(const QString& what, const QString& said, bool isAssumed = false) {
        facts_.push_back({what, said, isAssumed});
    }
    QString amperesText(Current current) const {
        const bool isWhole = current == log_.rated; // a rating has the decimals that it has
        return words_.measure(isWhole ? measure(current, units::ampere) : measure(current, units::ampere, 1));
    }
    QString timesRated() const { return words_.number(found_.peak / log_.rated, 2); }
    QString shareText() const { return words_.measure(measure(found_.shareAbove, units::percent, 0)); }
    QString degrees(Temperature temperature) const {
        return words_.measure(measure(temperature, units::celsius, 0));
    }
    /// A tenth of the rating is a hundredth of its heat, and less changes nothing.
    bool beganUnderLoad() const {
        constexpr Ratio idle = 0.1;
        return found_.atFirst > log_.rated * idle;
    }

    /// Whether what is said from cold may be other than what was: it began under load, or would have been
    /// warmer had it gone on like this before.
    bool mayHaveBeenWarm() const {
        return beganUnderLoad() || isEarliestSooner() || isSooner(found_.warm.latest, found_.latest) ||
               isWarmer();
    }

    QString currentSentence() const {
        const QString length = spokenTime(found_.length - found_.gaps, words_);
        const QString peak = amperesText(found_.peak);
        if (!(found_.shareAbove > 0))
            return tr("It went up to %1 and never above the rating of %2 in %3.")
                .arg(peak, amperesText(log_.rated), length);
        return tr("It went up to %1, %2 times the rating, and was above the rating for %3 of %4.")
            .arg(peak, timesRated(), shareText(), length);
    }

    QString deviceSentence() const {
        const bool fromCold = mayHaveBeenWarm();
        if (found_.latest) return everySentence(spokenTime(*found_.latest, words_));
        if (!log_.isWarmthKnown)
            return tr("How soon a sound %1 operates at the temperature of its place is not known; it need "
                      "not have.")
                .arg(device_);
        if (log_.mayOperateAtAnyTime())
            return tr("A sound %1 may have operated at any time above its rating, and need not have.")
                .arg(device_);
        if (found_.earliest)
            return (fromCold ? tr("From cold, the earliest sound %1 would have operated after %2; the latest "
                                  "need not have.")
                             : tr("The earliest sound %1 would have operated after %2; the latest need not "
                                  "have."))
                .arg(device_, spokenTime(*found_.earliest, words_));
        return (fromCold ? tr("From cold, no sound %1 would have operated.")
                         : tr("No sound %1 would have operated."))
            .arg(device_);
    }

    /// Every sound device would have operated after `latest`.
    QString everySentence(const QString& latest) const {
        const bool fromCold = mayHaveBeenWarm();
        if (!log_.isWarmthKnown)
            return tr("How soon a sound %1 operates at the temperature of its place is not known; every one "
                      "would have after %2.")
                .arg(device_, latest);
        if (log_.mayOperateAtAnyTime())
            return tr("A sound %1 may have operated at any time above its rating, and every one would have "
                      "after %2.")
                .arg(device_, latest);
        if (found_.earliest)
            return (fromCold ? tr("From cold, the earliest sound %1 would have operated after %2, and every "
                                  "one after %3.")
                             : tr("The earliest sound %1 would have operated after %2, and every one after "
                                  "%3."))
                .arg(device_, spokenTime(*found_.earliest, words_), latest);
        return (fromCold ? tr("From cold, every sound %1 would have operated after %2.")
                         : tr("Every sound %1 would have operated after %2."))
            .arg(device_, latest);
    }

    QString earliestText() const {
        if (!log_.isWarmthKnown) return tr("may have operated at any time: nothing is known of its place");
        if (log_.mayOperateAtAnyTime()) return tr("may have operated at any time");
        return operatedText(found_.earliest, tr("would not have operated"),
                            tr("from cold, would not have operated"));
    }
    QString latestText() const {
        return operatedText(found_.latest, tr("need not have operated"),
                            tr("from cold, need not have operated"));
    }
    QString operatedText(const std::optional<Time>& operated, const QString& otherwise,
                         const QString& otherwiseFromCold) const {
        const bool fromCold = mayHaveBeenWarm();
        if (!operated) return fromCold ? otherwiseFromCold : otherwise;
        return (fromCold ? tr("from cold, would have operated after %1") : tr("would have operated after %1"))
            .arg(spokenTime(*operated, words_));
    }

    QString conductorSentence() const {
        const Temperature peak = found_.conductor->peak, limit = log_.conductor->limit;
        const bool isAbove = peak > limit;
        const QString cold = isAbove ? tr("From cold, conductors got as warm as %1 at most, more than the %2 "
                                          "that their insulation bears.")
                                     : tr("From cold, conductors got as warm as %1 at most; their insulation "
                                          "bears %2.");
        const QString plain = isAbove
                                  ? tr("Conductors got as warm as %1 at most, more than the %2 that "
                                       "their insulation bears.")
                                  : tr("Conductors got as warm as %1 at most; their insulation bears %2.");
        return (mayHaveBeenWarm() ? cold : plain).arg(degrees(peak), degrees(limit));
    }

    void addHeat(const overload::LoggedHeat& heat) {
        add(mayHaveBeenWarm() ? tr("Conductors, warmest from cold") : tr("Conductors, warmest"),
            tr("%1 to %2, for insulation that bears %3")
                .arg(words_.number(heat.leastPeak.base(), 0), degrees(heat.peak),
                     degrees(log_.conductor->limit)));
        const QString least = words_.number(heat.leastAgeing, 2), most = words_.number(heat.mostAgeing, 2);
        add(tr("Insulation ages, against its limit"),
            least == most ? tr("%1 times (estimate)").arg(most)
                          : tr("%1 to %2 times (estimate)").arg(least, most),
            true);
    }

    // Had it gone on before the log began as it did in it: only where that makes a difference to read.

    static bool isAtOnce(const std::optional<Time>& operated) { return operated && *operated == Time(); }
    bool isSooner(const std::optional<Time>& warm, const std::optional<Time>& cold) const {
        return warm && (!cold || isAtOnce(warm) || spokenTime(*warm, words_) != spokenTime(*cold, words_));
    }
    bool isEarliestSooner() const {
        return !log_.mayOperateAtAnyTime() && isSooner(found_.warm.earliest, found_.earliest);
    }
    bool isWarmer() const {
        return found_.conductor && found_.warm.peak &&
               degrees(*found_.warm.peak) != degrees(found_.conductor->peak);
    }

    QStringList warmSentences() const {
        QStringList said;
        if (isEarliestSooner())
            said << (isAtOnce(found_.warm.earliest)
                         ? tr("Had it gone on like this before, the earliest sound %1 would have operated by "
                              "the time that it began.")
                               .arg(device_)
                         : tr("Had it gone on like this before, the earliest sound %1 would have operated "
                              "after %2.")
                               .arg(device_, spokenTime(*found_.warm.earliest, words_)));
        if (isWarmer())
            said
                << (*found_.warm.peak > log_.conductor->limit
                        ? tr("Had it gone on like this before, conductors would have got as warm as %1, more "
                             "than their insulation bears.")
                        : tr("Had it gone on like this before, conductors would have got as warm as %1."))
                       .arg(degrees(*found_.warm.peak));
        return said;
    }

    QString warmText(const Time& operated) const {
        return isAtOnce(operated) ? tr("would have operated by the time that it began")
                                  : tr("would have operated after %1").arg(spokenTime(operated, words_));
    }
    void addWarm() {
        if (isEarliestSooner())
            add(tr("The earliest, had it gone on like this before"), warmText(*found_.warm.earliest), true);
        if (isSooner(found_.warm.latest, found_.latest))
            add(tr("The latest, had it gone on like this before"), warmText(*found_.warm.latest), true);
        if (isWarmer())
            add(tr("Conductors, had it gone on like this before"),
                tr("up to %1").arg(degrees(*found_.warm.peak)), true);
    }

    const CircuitLog& log_;
    const overload::LoggedAnswer& found_;
    const Words& words_;
    QString device_;
    std::vector<OverloadFact> facts_;
};

} // namespace

QString loggedSentences(const CircuitLog& log, const Words& words) {
    return LoggedWords(log, words).sentences();
}

std::vector<OverloadFact> loggedFacts(const CircuitLog& log, const Words& words) {
    return LoggedWords(log, words).facts();
}

} // namespace loopwright
