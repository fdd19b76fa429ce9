// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/assessment_json.h"

#include "app/subject_path.h"
#include "app/working_json.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <array>

namespace loopwright {
namespace {

class Telling {
  public:
    Telling(const Installation& installation, const Assessment& assessment, const Words& words)
      : installation_(installation)
      , assessment_(assessment)
      , words_(words)
      , visit_(find(installation.visits, assessment.visit)) {}

    Json document() const {
        const Progress progress = readingsDone(installation_, assessment_);
        return {
            {"loopwright", "assessment"},
            {"version", 1},
            {"site", {{"id", installation_.site.id.text()}, {"name", installation_.site.name}}},
            {"visit", {{"id", assessment_.visit.text()}, {"label", visit_ ? visit_->label : std::string()}}},
            {"ruleSet", {{"key", assessment_.ruleSet}, {"revision", assessment_.ruleSetRevision}}},
            {"answer", answer(installation_, assessment_) == Answer::Fit ? "fit" : "not-fit"},
            {"verdicts", verdictCounts()},
            {"grades", gradeCounts()},
            {"readings", {{"done", progress.done}, {"needed", progress.needed}}},
            {"findings", findings()},
            {"observations", observations()}};
    }

  private:
    Json verdictCounts() const {
        Json counts = Json::object();
        const Tally tally = assessment_.checks();
        for (const Verdict verdict : worstFirst)
            counts[std::string(verdictKey(verdict))] = tally.of(verdict);
        return counts;
    }

    Json gradeCounts() const {
        Json counts = Json::object();
        for (const Choice& grade : choicesOf<Grade>().choices)
            counts[std::string(grade.key)] = 0;
        for (const Observation& each : installation_.observations)
            if (each.visit == assessment_.visit && !each.putRight)
                counts[std::string(choiceKey(each.grade))] =
                    counts[std::string(choiceKey(each.grade))].get<int>() + 1;
        return counts;
    }

    Json subjectJson(const Subject& subject) const {
        return {{"kind", recordName(subject.kind)},
                {"id", subject.id.isNone() ? Json(nullptr) : Json(subject.id.text())},
                {"path", subjectPath(installation_, subject)}};
    }

    Json findingJson(const Finding& finding) const {
        Json missing = Json::array();
        for (const MissingInput& input : finding.missing) {
            Json subject = subjectJson({input.kind, input.id});
            subject["field"] = input.field;
            missing.push_back(std::move(subject));
        }
        const Measure* shown = finding.result ? &*finding.result : finding.limit ? &*finding.limit : nullptr;
        std::optional<double> limit;
        if (finding.limit) limit = shown->unit.fromBase(finding.limit->unit.toBase(finding.limit->value));
        return {
            {"subject", subjectJson(finding.subject)},
            {"check", finding.check},
            {"name", utf8(checkName(finding, words_))},
            {"verdict", verdictKey(finding.verdict)},
            {"margin", numberOrNull(finding.margin)},
            {"result", numberOrNull(finding.result ? std::optional(finding.result->value) : std::nullopt)},
            {"resultBound", boundKey(finding.result ? finding.result->bound : Bound::Exact)},
            {"limit", numberOrNull(limit)},
            {"limitBound", boundKey(finding.limit ? finding.limit->bound : Bound::Exact)},
            {"unit", shown ? std::string(shown->unit.suffix) : std::string()},
            {"missing", missing},
            {"working", workingJson(*finding.working, words_)},
            {"source", sourceJson(finding.working->source)},
            {"sentence", utf8(plainNotation(findingText(finding, words_)))}};
    }

    Json findings() const {
        Json list = Json::array();
        for (const Finding& finding : assessment_.findings)
            list.push_back(findingJson(finding));
        return list;
    }

    Json observations() const {
        Json list = Json::array();
        for (const Observation& each : installation_.observations) {
            if (each.visit != assessment_.visit) continue;
            const Subject subject = !each.circuit.isNone() ? Subject{RecordKind::Circuit, each.circuit}
                                    : !each.board.isNone() ? Subject{RecordKind::Board, each.board}
                                                           : Subject{RecordKind::Site, installation_.site.id};
            list.push_back({{"id", each.id.text()},
                            {"subject", subjectJson(subject)},
                            {"grade", choiceKey(each.grade)},
                            {"text", each.text},
                            {"place", each.place},
                            {"action", each.action},
                            {"byWhen", each.byWhen},
                            {"whoActs", each.whoActs},
                            {"putRight", each.putRight.has_value()}});
        }
        return list;
    }

    const Installation& installation_;
    const Assessment& assessment_;
    const Words& words_;
    const Visit* visit_;
};

} // namespace

std::string assessmentJson(const Installation& installation, const Assessment& assessment,
                           const Words& words) {
    constexpr int indent = 2;
    return Telling(installation, assessment, words)
               .document()
               .dump(indent, ' ', false, Json::error_handler_t::replace) +
           "\n";
}

} // namespace loopwright
