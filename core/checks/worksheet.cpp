// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/worksheet.h"

#include "core/phrases/phrases.h"

#include <algorithm>

namespace loopwright {
namespace {

/// The name of a field, as a word of a sentence.
Word fieldWord(const MissingInput& input) {
    std::string key("field.");
    key.append(recordName(input.kind)).append(".").append(input.field);
    const auto known = phrase(key);
    return {known ? known->key : std::string_view("check.word.input")};
}

} // namespace

Worksheet::Worksheet(const CheckPhrasing& phrasing, const VisitContext& visit, Subject subject)
  : phrasing_(phrasing)
  , rules_(visit.rules)
  , uncertainties_(visit.uncertainties)
  , detail_(visit.detail) {
    finding_.subject = subject;
    finding_.check = phrasing.check;
}

void Worksheet::lacks(RecordKind kind, Id id, std::string_view field) {
    note(kind, id, field, Lack::Missing, {});
}

void Worksheet::limited(RecordKind kind, Id id, std::string_view field, const std::string* reason) {
    if (reason && !reason->empty())
        note(kind, id, field, Lack::Limited, *reason);
    else
        note(kind, id, field, Lack::NotPossible, {});
}

void Worksheet::unpublished(RecordKind kind, Id id, std::string_view field) {
    note(kind, id, field, Lack::Unpublished, {});
}

void Worksheet::note(RecordKind kind, Id id, std::string_view field, Lack lack, const std::string& reason) {
    if (lack_ == Lack::None) {
        lack_ = lack;
        if (isFull()) reason_ = reason;
    }
    if (isFull()) finding_.missing.push_back({kind, id, field});
}

void Worksheet::noteBounded(RecordKind kind, Id id, std::string_view field, Lack lack) {
    if (boundedLack_ == Lack::None) boundedLack_ = lack;
    if (isFull()) bounded_.push_back({kind, id, field});
}

void Worksheet::noteUnusable(EntryState state, RecordKind kind, Id id, std::string_view field,
                             const std::string& reason) {
    if (state == EntryState::NotApplicable) {
        if (!notApplicable_) notApplicable_ = MissingInput{kind, id, field};
    } else {
        state == EntryState::Limited ? limited(kind, id, field, &reason) : lacks(kind, id, field);
    }
}

void Worksheet::takeOutcome(TestOutcome outcome, RecordKind kind, Id id, std::string_view field) {
    switch (outcome) {
    case TestOutcome::Correct:
        return decide(Verdict::Holds);
    case TestOutcome::Wrong:
        return decide(Verdict::Fails);
    case TestOutcome::NotDone:
        return note(kind, id, field, Lack::Missing, {});
    case TestOutcome::Limited:
        return limited(kind, id, field, nullptr);
    case TestOutcome::NotApplicable:
        return noteUnusable(EntryState::NotApplicable, kind, id, field, {});
    }
}

void Worksheet::addTerm(Term&& term) {
    if (term.origin == TermOrigin::Assumed) finding_.working.write().restsOnAssumption = true;
    finding_.working.write().terms.push_back(std::move(term));
}

void Worksheet::clause(std::string_view purpose) {
    if (!isFull()) return;
    if (const RuleSet::Clause* clause = rules_.clause(purpose)) {
        finding_.working.write().clause = clause->number;
        finding_.working.write().source = clause->source;
    }
}

void Worksheet::state(Judgement judgement, Relation relation, std::string_view symbol, Measure result,
                      Measure limit, const Uncertainty* uncertainty) {
    judged_ = true;
    uncertainty_ = uncertainty;
    finding_.verdict = judgement.verdict;
    finding_.margin = judgement.margin;
    finding_.result = result;
    finding_.limit = limit;
    if (!isFull()) return;
    Working& working = finding_.working.write();
    working.relation = relation;
    working.resultSymbol = symbol;
    working.result = result;
    working.limit = limit;
}

void Worksheet::showUncertainty() {
    if (!uncertainty_ || !isFull()) return;
    const Uncertainty& how = *uncertainty_;
    if (how.standard)
        finding_.working.write().terms.push_back(tableTerm("u", how.share, units::percent, *how.standard,
                                                           {"check.note.uncertainty-standard", {}}));
    else
        finding_.working.write().terms.push_back({"u",
                                                  measure(how.share, units::percent),
                                                  TermOrigin::Typed,
                                                  {"check.note.uncertainty-instrument", {}},
                                                  {}});
}

void Worksheet::decide(Verdict verdict) {
    if (judged_ && finding_.verdict <= verdict) return;
    judged_ = true;
    finding_.verdict = verdict;
}

void Worksheet::atWorst(Verdict verdict) {
    if (judged_ && finding_.verdict == Verdict::Fails) finding_.verdict = std::max(finding_.verdict, verdict);
}

void Worksheet::phrase(Verdict verdict, std::string_view key) {
    if (verdict == Verdict::Holds) phrasing_.holds = key;
    if (verdict == Verdict::Close) phrasing_.close = key;
    if (verdict == Verdict::Fails) phrasing_.fails = key;
}

std::string_view Worksheet::verdictPhrase() const {
    switch (finding_.verdict) {
    case Verdict::Fails:
        return phrasing_.fails;
    case Verdict::Close:
        return phrasing_.close;
    default:
        return phrasing_.holds;
    }
}

/// Whether there is a verdict; otherwise says why there is none. A failure stands whatever else is missing.
bool Worksheet::settle() {
    showUncertainty();
    if (judged_ && finding_.verdict == Verdict::Fails) {
        finding_.missing.clear();
        return true;
    }
    if (notApplicable_) {
        finding_.verdict = Verdict::DoesNotApply;
    } else if (lack_ != Lack::None || !judged_ || finding_.verdict == Verdict::CannotTell) {
        finding_.verdict = Verdict::CannotTell;
        if (lack_ == Lack::None) {
            lack_ = boundedLack_;
            finding_.missing = std::move(bounded_);
        }
    } else {
        return true;
    }
    finding_.margin.reset();
    if (isFull()) finding_.sentence = notApplicable_ ? notApplicableMessage() : lackMessage();
    return false;
}

Message Worksheet::lackMessage() const {
    const Word check{phrasing_.name};
    const auto& missing = finding_.missing;
    if (missing.empty()) return {"check.lacks.nothing-known", {check}};
    const Word first = fieldWord(missing.front());
    switch (lack_) {
    case Lack::Limited:
        return {"check.lacks.limited", {check, first, reason_}};
    case Lack::NotPossible:
        return {"check.lacks.not-possible", {check, first}};
    case Lack::BeyondRange:
        return {"check.lacks.beyond-range", {check, first}};
    case Lack::Unusable:
        return {"check.lacks.unusable", {check, first}};
    case Lack::Unpublished:
        return {"check.lacks.unpublished", {check, first}};
    case Lack::Assumed:
        return {"check.lacks.assumed", {check, first}};
    default:
        break;
    }
    if (missing.size() == 1) return {"check.lacks.one", {check, first}};
    const bool areOneField = std::ranges::all_of(missing, [&](const MissingInput& input) {
        return input.kind == missing.front().kind && input.field == missing.front().field;
    });
    if (areOneField) return {"check.lacks.times", {check, first, static_cast<std::int64_t>(missing.size())}};
    if (missing.size() == 2) return {"check.lacks.two", {check, first, fieldWord(missing[1])}};
    return {"check.lacks.more",
            {check, first, fieldWord(missing[1]), static_cast<std::int64_t>(missing.size() - 2)}};
}

Message Worksheet::notApplicableMessage() const {
    return {"check.not-applicable", {Word{phrasing_.name}, fieldWord(*notApplicable_)}};
}

Finding Worksheet::doesNotApply(std::string_view key) {
    finding_.verdict = Verdict::DoesNotApply;
    finding_.missing.clear();
    if (isFull()) finding_.sentence = {key, {}};
    return std::move(finding_);
}

} // namespace loopwright
