// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/overloaded_circuit.h"
#include "core/remedy/remedy.h"

namespace loopwright {

/// Whether the check is one of load, device and wiring: what a remedy is for.
bool isOfLoadDeviceAndWiring(std::string_view check);

/// What a change is good for as a remedy.
enum class Worth : std::uint8_t {
    Nothing,         ///< it leaves a check of load, device and wiring failing, or unknown where it failed, or
                     ///< makes another one fail or unknown
    Settles,         ///< those hold; others still fail
    HoldsThroughout, ///< no check of the circuit fails any more
};

/// Candidates of one kind, the smallest first: the first that makes every check hold counts, or else the
/// first that settles what failed.
struct Selection {
    std::optional<Change> best;
    int alsoTried = 0;
    bool isMade = false;
};

/// Changes of a circuit tried on copies, and held against what it was before.
class Trial {
  public:
    /// `circuit` must outlive it.
    explicit Trial(const OverloadedCircuit& circuit);

    const OverloadedCircuit& about() const { return about_; }
    /// Whether there is anything for a remedy to settle.
    bool isCalledFor() const;

    Worth worthOf(RemedyKind kind, const Change& change) const;
    /// Checks of the circuit that fail then, without detail; none where the record refuses the change.
    std::vector<Finding> failingAfter(const Change& change) const;
    void consider(Selection& selection, RemedyKind kind, Change change) const;

    /// The remedy with what it shifts, and what to do where a clamp has read another load; nothing where the
    /// record refuses the change.
    std::optional<Remedy> remedy(RemedyKind kind, Change change) const;
    /// The same of what was chosen.
    std::optional<Remedy> remedy(RemedyKind kind, Selection selection) const;
    /// The same where the change is worth something.
    std::optional<Remedy> offer(RemedyKind kind, Change change) const;

  private:
    std::optional<Installation> foretoldBy(const Change& change) const;
    std::vector<Finding> foundIn(const Installation& site) const;

    const OverloadedCircuit& about_;
    AsItIs before_; ///< what is around only where it is called for
};

} // namespace loopwright
