// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/overload_words.h"

#include "core/working/terms.h"
#include "forms/words/working_text.h"

#include <QCoreApplication>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Overload", text);
}

const Finding& findingOf(const CheckShift& shift) {
    return shift.after ? *shift.after : *shift.before;
}

/// "Board C", "Board C / F1"; of anything else the site's name.
QString nameOf(const Installation& installation, const Subject& subject) {
    if (const Circuit* circuit = find(installation.circuits, subject.id))
        return text(pathOf(installation, *circuit));
    if (const Board* board = find(installation.boards, subject.id)) return text(board->name);
    return text(installation.site.name);
}

class Facts {
  public:
    Facts(const OverloadAnswer& overload, std::string_view device, const Words& words)
      : overload_(overload)
      , answer_(overload.answer)
      , words_(words)
      , device_(words.word(device)) {}

    std::vector<OverloadFact> all() {
        addRatios();
        addEdges();
        addMargins();
        addHeat();
        return std::move(facts_);
    }

  private:
    void add(const QString& what, const QString& said, bool isAssumed = false) {
        facts_.push_back({what, said, isAssumed});
    }
    QString amperesText(Current current) const { return words_.measure(measure(current, units::ampere)); }
    QString times(Ratio ratio) const {
        constexpr double few = 10;
        return tr("%1 times").arg(words_.number(ratio, ratio < few ? 2 : 0));
    }
    QString degrees(Temperature temperature) const {
        return words_.measure(measure(temperature, units::celsius, 0));
    }

    void addRatios() {
        add(tr("Load against the rating of %1").arg(amperesText(overload_.rated)), times(answer_.toDevice));
        if (answer_.toWiring && overload_.conductor)
            add(tr("Load against the wiring’s %1").arg(amperesText(overload_.conductor->capacity)),
                times(*answer_.toWiring));
        if (answer_.overRating.above > Time() && !overload_.load.load.isSteady)
            add(tr("Above the rating"), tr("%1 in %2")
                                            .arg(spokenTime(answer_.overRating.above, words_),
                                                 spokenTime(answer_.overRating.period, words_)));
    }

    QString edgeText(const overload::Edge& edge, const QString& otherwise) const {
        if (!edge.operates()) return otherwise;
        if (edge.after < seconds(1)) return tr("operates at once");
        const QString after = spokenTime(edge.after, words_);
        if (overload_.load.load.isSteady) return tr("operates after %1").arg(after);
        if (edge.run == 1) return tr("operates in the first run, after %1").arg(after);
        return tr("operates in run %1, after %2")
            .arg(words_.number(static_cast<std::int64_t>(edge.run)), after);
    }

    QString earliestText() const {
        if (!overload_.inWarmth) return tr("may operate at any time: nothing is known of its place");
        return answer_.holdsOut || !answer_.earliest.operates()
                   ? edgeText(answer_.earliest, tr("does not operate"))
                   : tr("may operate at any time");
    }

    void addEdges() {
        add(tr("The earliest sound %1").arg(device_), earliestText());
        add(tr("The latest sound %1").arg(device_), edgeText(answer_.latest, tr("need never operate")));
        if (!overload_.inWarmth) return;
        const QString from = amperesText(answer_.agedMayOperateAt);
        add(tr("One that heat has made early"),
            answer_.agedEarliest.operates() && !answer_.earliest.operates()
                ? tr("may operate from %1 on, %2").arg(from, edgeText(answer_.agedEarliest, {}))
                : tr("may operate from %1 on").arg(from),
            true);
    }

    void addMargins() {
        const Current load = overload_.load.load.peak;
        if (overload_.inWarmth && answer_.mayOperateAt > load)
            add(tr("More load until it may operate"), amperesText(answer_.mayOperateAt - load));
        if (answer_.mustOperateAt && *answer_.mustOperateAt > load)
            add(tr("More load until it must operate"), amperesText(*answer_.mustOperateAt - load));
    }

    void addHeat() {
        add(tr("Contacts heat, against the rating"),
            overload_.load.load.isSteady ? times(answer_.contactPeak)
                                         : tr("%1 while it runs, %2 over time")
                                               .arg(times(answer_.contactPeak), times(answer_.contactMean)));
        if (!answer_.conductor) return;
        const overload::ConductorHeat& heat = *answer_.conductor;
        const QString least = words_.number(heat.leastPeak.base(), 0), most = degrees(heat.peak);
        const QString peak = degrees(heat.leastPeak) == most ? most : tr("%1 to %2").arg(least, most);
        add(tr("Conductors, warmest"),
            tr("%1, for insulation that bears %2").arg(peak, degrees(overload_.conductor->limit)));
        add(tr("Conductors, on average"), degrees(heat.mean));
        const QString ageing = times(heat.mostAgeing);
        add(tr("Insulation ages, against its limit"),
            times(heat.leastAgeing) == ageing
                ? tr("%1 (estimate)").arg(ageing)
                : tr("%1 to %2 (estimate)").arg(words_.number(heat.leastAgeing, 2), ageing),
            true);
    }

    const OverloadAnswer& overload_;
    const overload::HiddenOverload& answer_;
    const Words& words_;
    QString device_;
    std::vector<OverloadFact> facts_;
};

} // namespace

std::vector<OverloadFact> overloadFacts(const OverloadAnswer& overload, std::string_view device,
                                        const Words& words) {
    return Facts(overload, device, words).all();
}

QString remedyConsequences(const Remedy& remedy, const Installation& installation, const Words& words) {
    QStringList said{remedy.holdsThroughout ? tr("No check of the circuit fails then.")
                                            : tr("Other checks of the circuit still fail.")};
    QStringList better, worse, unknown, failing, untested, bunched;
    for (const CheckShift& shift : remedy.circuit)
        if (shift.isWorse())
            (findingOf(shift).verdict == Verdict::CannotTell ? unknown : worse)
                << checkName(findingOf(shift), words);
    for (const CheckShift& shift : remedy.elsewhere) {
        const QString name = QStringLiteral("%1 (%2)").arg(checkName(findingOf(shift), words),
                                                           nameOf(installation, shift.subject));
        if (shift.isWorse()) worse << name;
        if (shift.isBetter()) better << name;
    }
    for (const CheckShift& shift : remedy.made)
        (shift.after->verdict == Verdict::Fails ? failing : untested) << checkName(*shift.after, words);
    if (!better.isEmpty()) said << tr("Better: %1.").arg(better.join(QStringLiteral(", ")));
    if (!worse.isEmpty()) said << tr("Worse: %1.").arg(worse.join(QStringLiteral(", ")));
    if (!unknown.isEmpty()) said << tr("Then still to find out: %1.").arg(unknown.join(QStringLiteral(", ")));
    if (!failing.isEmpty())
        said << tr("The new circuit would fail: %1.").arg(failing.join(QStringLiteral(", ")));
    if (!untested.isEmpty())
        said << tr("To find out once it is there: %1.").arg(untested.join(QStringLiteral(", ")));
    for (const Finding& finding : remedy.failingInBunch)
        bunched << checkName(finding, words);
    for (const Message& note : remedy.notes)
        said << words.sentence(note);
    if (!bunched.isEmpty())
        said << tr("With the new circuit in its bunch this one would fail: %1.")
                    .arg(bunched.join(QStringLiteral(", ")));
    return said.join(u' ');
}

QString remedyAdvice(const std::vector<Remedy>& remedies, const Words& words) {
    QStringList said{words.word("remedy.advice")};
    if (std::ranges::any_of(remedies, &Remedy::isClampStale)) said.prepend(words.word("remedy.note.clamp"));
    return said.join(u' ');
}

QString spokenTime(Time time, const Words& words) {
    return words.measure(spanOf(time));
}

} // namespace loopwright
