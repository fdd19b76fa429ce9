// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/context.h"
#include "core/checks/phrasing.h"
#include "core/checks/verdict.h"
#include "core/checks/working_terms.h"

#include <cmath>
#include <type_traits>

namespace loopwright {

/// Whether a figure of 0 can be reckoned with, or stands for a reading that cannot be.
enum class Zero : std::uint8_t { Unusable, Counts };

/// A note beside a term: the key of a phrase, and the name that it mentions.
struct Note {
    std::string_view key;
    const std::string* about = nullptr;
    Message message() const { return {key, about ? std::vector<Argument>{*about} : std::vector<Argument>{}}; }
};

/// Which quantity a reading is of, as far as the instrument's uncertainty goes; of a fault current it is that
/// of the loop that it is worked out from (IEC 61557-3).
constexpr Measurand measurandOf(Entry<Resistance> SupplyReading::*member) {
    return member == &SupplyReading::electrodeResistance ? Measurand::Electrode : Measurand::Loop;
}
constexpr Measurand measurandOf(Entry<Resistance> BoardReading::*member) {
    return member == &BoardReading::electrodeResistance ? Measurand::Electrode : Measurand::Loop;
}
constexpr Measurand measurandOf(Entry<Resistance> CircuitReading::*member) {
    if (member == &CircuitReading::loopImpedance) return Measurand::Loop;
    const bool isInsulation =
        member == &CircuitReading::insulationLive || member == &CircuitReading::insulationEarth;
    return isInsulation ? Measurand::Insulation : Measurand::Continuity;
}
constexpr Measurand measurandOf(Entry<Current> CircuitReading::*member) {
    return member == &CircuitReading::measuredLoad ? Measurand::LoadCurrent : Measurand::Loop;
}
template <class Record>
constexpr Measurand measurandOf(Entry<Current> Record::*) {
    return Measurand::Loop;
}
template <class Record>
constexpr Measurand measurandOf(Entry<Time> Record::*) {
    return Measurand::ResidualTime;
}

/// What a check writes on its way to a finding: inputs taken, terms shown, comparisons made. Inputs that are
/// missing are noted here, so that a check only asks and, where it got nothing, concludes. Nothing is
/// allocated without Detail::Full.
class Worksheet {
  public:
    Worksheet(const CheckPhrasing& phrasing, const VisitContext& visit, Subject subject);

    bool isFull() const { return detail_ == Detail::Full; }

    /// A recorded figure, shown under `symbol`. Nothing when there is none to reckon with; then the record's
    /// `field` is noted as missing, or the check as not applicable where the entry says N/A.
    template <class Record, class Q>
    std::optional<Figure<Q>> figure(std::string_view symbol, const Record& record, const Entry<Q>& entry,
                                    std::string_view field, Zero zero = Zero::Unusable, Note note = {});
    /// The same, of a row of readings that may not exist yet.
    template <class Record, class Q>
    std::optional<Figure<Q>> figure(std::string_view symbol, const Record* record, Entry<Q> Record::*member,
                                    std::string_view field, Zero zero = Zero::Unusable);
    /// A size, rating or length off a plate or drawing: only an exact one will do.
    template <class Record, class Q>
    std::optional<Q> exact(std::string_view symbol, const Record& record, const Entry<Q>& entry,
                           std::string_view field);

    /// A choice or a record that is needed and not there.
    void lacks(RecordKind kind, Id id, std::string_view field);
    template <class Record>
    void lacks(const Record& record, std::string_view field) {
        lacks(RecordTraits<Record>::kind, record.id, field);
    }
    /// A reading that could not be taken, and why.
    void limited(RecordKind kind, Id id, std::string_view field, const std::string* reason);
    /// A test that somebody did or did not do: Correct holds, Wrong fails, anything else is noted as figures
    /// are.
    template <class Record>
    void outcome(const Record* record, TestOutcome Record::*member, std::string_view field) {
        takeOutcome(record ? record->*member : TestOutcome::NotDone, RecordTraits<Record>::kind,
                    record ? record->id : Id{}, field);
    }
    /// A figure that no published table has a row for.
    void unpublished(RecordKind kind, Id id, std::string_view field);
    template <class Record>
    void unpublished(const Record& record, std::string_view field) {
        unpublished(RecordTraits<Record>::kind, record.id, field);
    }
    /// No published table reaches as far as what stands in this field; what it says at most is used.
    template <class Record>
    void unpublishedBeyond(const Record& record, std::string_view field) {
        noteBounded(RecordTraits<Record>::kind, record.id, field, Lack::Unpublished);
    }
    /// A figure that stands there and cannot be: a power factor of 95.
    template <class Record>
    void unusable(const Record& record, std::string_view field) {
        note(RecordTraits<Record>::kind, record.id, field, Lack::Unusable, {});
    }
    /// A stand-in that could turn the verdict is used for this field.
    void leansOn(RecordKind kind, Id id, std::string_view field) {
        noteBounded(kind, id, field, Lack::Assumed);
    }
    template <class Record>
    void leansOn(const Record& record, std::string_view field) {
        leansOn(RecordTraits<Record>::kind, record.id, field);
    }

    /// A figure that holds on one side only is used for this field.
    template <class Record>
    void beyondRange(const Record& record, std::string_view field) {
        noteBounded(RecordTraits<Record>::kind, record.id, field, Lack::BeyondRange);
    }

    /// Where the limit was published, where the rule set does not say.
    void source(const Source& published) {
        if (isFull() && finding_.working->source.title.empty()) finding_.working.write().source = published;
    }

    /// Adds the term that `make` returns, which is asked only where a working is written.
    template <class Make>
    void show(Make&& make) {
        if (isFull()) addTerm(make());
    }
    /// The same for what is told beside the working: the answer does not rest on it, even where it is
    /// assumed.
    template <class Make>
    void showAside(Make&& make) {
        if (isFull()) finding_.working.write().terms.push_back(make());
    }
    void formula(std::string_view text) {
        if (isFull()) finding_.working.write().formula = text;
    }
    /// Clause and source of the rule that the check goes by.
    void clause(std::string_view purpose);

    /// Judges result against limit; what rests on a reading is close within its uncertainty, anything else
    /// within the rule set's band. Of several comparisons the worst counts; returns whether this one does.
    template <class Q>
    bool compare(Relation relation, std::string_view symbol, const Figure<Q>& result, const Figure<Q>& limit,
                 const Unit& unit) {
        const bool isRead = result.uncertainty || limit.uncertainty;
        return compareWithin(isRead ? uncertainBand(result, limit) : rules_.closeBand, relation, symbol,
                             result, limit, unit);
    }
    /// The same between two nominal ratings, which are never close: a 30 mA device is what 30 mA asks for.
    template <class Q>
    bool compareRatings(Relation relation, std::string_view symbol, Q result, Q limit, const Unit& unit) {
        return compareWithin(0, relation, symbol, Figure<Q>{result}, Figure<Q>{limit}, unit);
    }
    /// The same with a limit that allows for uncertainties already, so that nothing is close to it.
    template <class Q>
    bool compareTolerance(Relation relation, std::string_view symbol, const Figure<Q>& result,
                          const Figure<Q>& limit, const Unit& unit) {
        const auto sure = [](Figure<Q> figure) {
            figure.uncertainty = nullptr;
            return figure;
        };
        return compareWithin(0, relation, symbol, sure(result), sure(limit), unit);
    }
    /// The same with a band of the caller's own: what comes nearer to the limit than this share is close.
    template <class Q>
    bool compareWithin(Ratio closeBand, Relation relation, std::string_view symbol, const Figure<Q>& result,
                       const Figure<Q>& limit, const Unit& unit);
    /// A verdict that rests on no figures.
    void decide(Verdict verdict);
    /// A failure becomes this one. What nobody can tell stays so: the truth may well lie on either side.
    void atWorst(Verdict verdict);
    Verdict verdict() const { return finding_.verdict; }
    bool hasVerdict() const { return judged_; }

    /// Says something else than usual where the verdict is `verdict`.
    void phrase(Verdict verdict, std::string_view key);

    /// The finding. The arguments are those of the check's phrases; they are not used where an input was
    /// missing.
    template <class... Arguments>
    Finding conclude(Arguments&&... arguments) {
        if (!settle()) return std::move(finding_);
        if (isFull())
            finding_.sentence = {verdictPhrase(),
                                 std::vector<Argument>{Argument(std::forward<Arguments>(arguments))...}};
        return std::move(finding_);
    }
    /// The finding with the sentence that `make` returns, which is asked only where it is used.
    template <class Make>
    Finding concludeWith(Make&& make) {
        if (settle() && isFull()) finding_.sentence = make();
        return std::move(finding_);
    }
    /// The finding where figures were compared and something that is missing could turn what they say.
    Finding cannotTell() {
        judged_ = false;
        finding_.verdict = Verdict::CannotTell;
        return conclude();
    }
    /// The check has nothing to say about its subject, and why.
    Finding doesNotApply(std::string_view key);

  private:
    /// The margin, as a share of the limit, that the uncertainty of both may use up.
    template <class Q>
    static Ratio uncertainBand(const Figure<Q>& result, const Figure<Q>& limit) {
        const Ratio share = detail::baseOf(result.value) / detail::baseOf(limit.value);
        return (result.uncertainty ? result.uncertainty->share * share : 0) +
               (limit.uncertainty ? limit.uncertainty->share : 0);
    }
    enum class Lack : std::uint8_t {
        None,
        Missing,
        Limited,
        NotPossible,
        BeyondRange,
        Unusable,
        Unpublished,
        Assumed
    };

    void note(RecordKind kind, Id id, std::string_view field, Lack lack, const std::string& reason);
    void noteBounded(RecordKind kind, Id id, std::string_view field, Lack lack);
    void noteUnusable(EntryState state, RecordKind kind, Id id, std::string_view field,
                      const std::string& reason);
    void takeOutcome(TestOutcome outcome, RecordKind kind, Id id, std::string_view field);
    void addTerm(Term&& term);
    void state(Judgement judgement, Relation relation, std::string_view symbol, Measure result, Measure limit,
               const Uncertainty* uncertainty);
    void showUncertainty();
    bool settle();
    Message lackMessage() const;
    Message notApplicableMessage() const;
    std::string_view verdictPhrase() const;

    CheckPhrasing phrasing_;
    const RuleSet& rules_;
    const Uncertainties& uncertainties_;
    Detail detail_;
    Finding finding_;
    bool judged_ = false;
    const Uncertainty* uncertainty_ = nullptr; ///< of the comparison that decides
    Lack lack_ = Lack::None;                   ///< of the first missing input
    std::string reason_;                       ///< of a Limited one
    Lack boundedLack_ = Lack::None;            ///< of the first figure that holds on one side only
    std::vector<MissingInput> bounded_;
    std::optional<MissingInput> notApplicable_;
};

template <class Record, class Q>
std::optional<Figure<Q>> Worksheet::figure(std::string_view symbol, const Record& record,
                                           const Entry<Q>& entry, std::string_view field, Zero zero,
                                           Note shownAs) {
    constexpr RecordKind kind = RecordTraits<Record>::kind;
    constexpr bool isPoint = std::is_same_v<Q, Temperature>;
    const double base = detail::baseOf(entry.value);
    if (!entry.hasFigure()) {
        noteUnusable(entry.state, kind, record.id, field, entry.reason);
        return std::nullopt;
    }
    if (!std::isfinite(base) || (!isPoint && (base < 0 || (base == 0 && zero == Zero::Unusable &&
                                                           entry.state == EntryState::Value)))) {
        note(kind, record.id, field, Lack::Unusable, {});
        return std::nullopt;
    }
    show([&] { return recordedTerm(symbol, entry, fieldInfo(kind, field)->unit, shownAs.message()); });
    const Bound bound = boundOf(entry.state);
    if (bound != Bound::Exact) noteBounded(kind, record.id, field, Lack::BeyondRange);
    return Figure<Q>{entry.value, bound, entry.decimals, nullptr, bound != Bound::Exact};
}

template <class Record, class Q>
std::optional<Figure<Q>> Worksheet::figure(std::string_view symbol, const Record* record,
                                           Entry<Q> Record::*member, std::string_view field, Zero zero) {
    if (record) {
        auto read = figure(symbol, *record, record->*member, field, zero);
        if (read) read->uncertainty = &uncertainties_[static_cast<std::size_t>(measurandOf(member))];
        return read;
    }
    lacks(RecordTraits<Record>::kind, Id{}, field);
    return std::nullopt;
}

template <class Record, class Q>
std::optional<Q> Worksheet::exact(std::string_view symbol, const Record& record, const Entry<Q>& entry,
                                  std::string_view field) {
    if (entry.state == EntryState::Above || entry.state == EntryState::Below) {
        note(RecordTraits<Record>::kind, record.id, field, Lack::BeyondRange, {});
        return std::nullopt;
    }
    const auto found = figure(symbol, record, entry, field);
    return found ? std::optional<Q>(found->value) : std::nullopt;
}

template <class Q>
bool Worksheet::compareWithin(Ratio closeBand, Relation relation, std::string_view symbol,
                              const Figure<Q>& result, const Figure<Q>& limit, const Unit& unit) {
    const auto plain = [](const Figure<Q>& figure) {
        return Figure<double>{detail::baseOf(figure.value), figure.bound, -1, nullptr, figure.isStrict};
    };
    const Judgement judgement = judge(relation, plain(result), plain(limit), closeBand);
    const bool worse = !judged_ || judgement.verdict < finding_.verdict ||
                       (judgement.verdict == finding_.verdict && judgement.margin < finding_.margin);
    if (worse)
        state(judgement, relation, symbol, measure(result, unit), measure(limit, unit),
              lessSure(result.uncertainty, limit.uncertainty));
    return worse;
}

} // namespace loopwright
