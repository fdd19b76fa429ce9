// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/trial.h"

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

constexpr std::array<std::string_view, 7> settled{"hidden-overload", "load-device",    "device-wiring",
                                                  "load-wiring",     "conductor-heat", "conventional",
                                                  "plug-fuse"};

bool fails(const std::optional<Finding>& finding) {
    return finding && finding->verdict == Verdict::Fails;
}
bool isKnown(const std::optional<Finding>& finding) {
    return !finding || finding->verdict != Verdict::CannotTell;
}
bool failsAfter(const CheckShift& shift) {
    return fails(shift.after);
}

/// What fails before and after, and is farther from holding after.
bool failsByMore(const CheckShift& shift) {
    constexpr double alike = 1e-9; // of the limit
    return fails(shift.before) && fails(shift.after) && shift.before->margin && shift.after->margin &&
           *shift.after->margin < *shift.before->margin - alike;
}

/// What cannot be told stays so, but a device is chosen only where everything about it is known.
bool isInTheWay(RemedyKind kind, const CheckShift& shift) {
    const bool fitsADevice = kind == RemedyKind::OtherDevice || kind == RemedyKind::DeviceAndConductor;
    // What its plate will say is not known yet, and told as still to be found out.
    if (fitsADevice && shift.check == "breaking-capacity" && !isKnown(shift.after)) return false;
    if (shift.isWorse() || failsByMore(shift)) return true;
    if (!isOfLoadDeviceAndWiring(shift.check)) return false;
    return fails(shift.after) || (fitsADevice && !isKnown(shift.after));
}

} // namespace

bool isOfLoadDeviceAndWiring(std::string_view check) {
    return std::ranges::find(settled, check) != settled.end();
}

Trial::Trial(const OverloadedCircuit& circuit)
  : about_(circuit)
  , before_(assessCircuit(circuit.installation, circuit.visit, circuit.circuit.id, circuit.tables,
                          circuit.rules, Detail::VerdictOnly)) {}

bool Trial::isCalledFor() const {
    return std::ranges::any_of(before_, [](const Finding& finding) {
        return finding.verdict == Verdict::Fails && isOfLoadDeviceAndWiring(finding.check);
    });
}

Worth Trial::worthOf(RemedyKind kind, const Change& change) const {
    const Id circuit = about_.circuit.id;
    const auto changed = foretold(about_.installation, about_.visit, circuit, change, about_.tables);
    if (!changed) return Worth::Nothing;
    const auto shifts = shiftsBetween(before_, assessCircuit(*changed, about_.visit, circuit, about_.tables,
                                                             about_.rules, Detail::VerdictOnly));
    if (std::ranges::any_of(shifts, [&](const CheckShift& shift) { return isInTheWay(kind, shift); }))
        return Worth::Nothing;
    return std::ranges::any_of(shifts, failsAfter) ? Worth::Settles : Worth::HoldsThroughout;
}

void Trial::consider(Selection& selection, RemedyKind kind, Change change) const {
    constexpr int mostBeyondFirst = 8; // larger ones will hardly hold where these do not
    const Worth worth = worthOf(kind, change);
    if (selection.best) selection.isMade = ++selection.alsoTried >= mostBeyondFirst;
    if (worth == Worth::HoldsThroughout || (worth == Worth::Settles && !selection.best))
        selection.best = std::move(change);
    selection.isMade = selection.isMade || worth == Worth::HoldsThroughout;
}

std::optional<Remedy> Trial::remedy(RemedyKind kind, Change change) const {
    auto result =
        whatIf(about_.installation, about_.visit, about_.circuit.id, change, about_.tables, about_.rules);
    if (!result) return std::nullopt;
    Remedy remedy{kind,
                  std::move(change),
                  std::move(result->circuit),
                  std::move(result->elsewhere),
                  std::move(result->made),
                  false};
    remedy.holdsThroughout = std::ranges::none_of(remedy.circuit, failsAfter);
    std::erase_if(remedy.circuit,
                  [](const CheckShift& shift) { return !shift.isBetter() && !shift.isWorse(); });
    std::erase_if(remedy.made,
                  [](const CheckShift& shift) { return !fails(shift.after) && isKnown(shift.after); });
    return remedy;
}

std::optional<Remedy> Trial::remedy(RemedyKind kind, Selection selection) const {
    return selection.best ? remedy(kind, std::move(*selection.best)) : std::nullopt;
}

std::optional<Remedy> Trial::offer(RemedyKind kind, Change change) const {
    return worthOf(kind, change) != Worth::Nothing ? remedy(kind, std::move(change)) : std::nullopt;
}

} // namespace loopwright
