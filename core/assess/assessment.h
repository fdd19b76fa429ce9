// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/model/installation.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"

#include <array>

namespace loopwright {

/// How many of each verdict.
struct Tally {
    std::array<int, 5> counts{}; ///< by Verdict
    int of(Verdict verdict) const { return counts[static_cast<std::size_t>(verdict)]; }
    void add(Verdict verdict) { ++counts[static_cast<std::size_t>(verdict)]; }
};

/// Whether the installation may stay in service, by the observations and the findings.
enum class Answer : std::uint8_t { Fit, NotFit };

/// Everything that was found out about one visit. Made whole, never edited.
struct Assessment {
    Id visit;
    std::string ruleSet;
    std::string ruleSetRevision;
    std::vector<Finding> findings; ///< by place, then worst first

    /// The findings about one record, worst first.
    std::vector<const Finding*> about(Id subject) const;
    /// The worst verdict about a record; DoesNotApply when there is none.
    Verdict worst(Id subject) const;
    Tally checks() const;
    /// A board's circuits, each counted once by its worst finding.
    Tally circuits(const Installation& installation, Id board) const;
};

/// Runs every check over a visit. The result depends on nothing but the arguments.
/// A visit that the installation does not have gives an Assessment without findings.
Assessment assess(const Installation& installation, Id visit, const ReferenceTables& tables,
                  const RuleSet& rules, Detail detail = Detail::Full);

/// What every check of one circuit finds, worst first; nothing where there is no such visit or circuit in
/// use.
std::vector<Finding> assessCircuit(const Installation& installation, Id visit, Id circuit,
                                   const ReferenceTables& tables, const RuleSet& rules,
                                   Detail detail = Detail::Full);

/// What load, device and wiring of one circuit weigh on beside itself: findings about the supply, the boards
/// that it is fed through and the circuits that feed them. Where it feeds a board itself that is everything.
/// In the order of assess(); nothing about the circuit.
std::vector<Finding> assessAround(const Installation& installation, Id visit, Id circuit,
                                  const ReferenceTables& tables, const RuleSet& rules,
                                  Detail detail = Detail::Full);

/// Not fit when an observation of the visit that is not put right says Make safe, Put right or Look further,
/// or when a finding fails.
Answer answer(const Installation& installation, const Assessment& assessment);

/// How much of the visit was read: cells that are filled against cells that apply.
struct Progress {
    int done = 0;
    int needed = 0;
};
Progress readingsDone(const Installation& installation, const Assessment& assessment);

} // namespace loopwright
