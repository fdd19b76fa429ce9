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

/// What gets close still holds, which is told and no reason against it.
bool losesItsHold(const CheckShift& shift) {
    const bool isClose = shift.after && shift.after->verdict == Verdict::Close;
    return shift.isWorse() && !isClose;
}

bool fitsADevice(RemedyKind kind) {
    return kind == RemedyKind::OtherDevice || kind == RemedyKind::DeviceAndConductor;
}

/// What could not be told stays so, but a device is chosen, and a release set higher, only where everything
/// about it is known: `isAllKnown`.
bool isInTheWay(RemedyKind kind, bool isAllKnown, const CheckShift& shift) {
    // What its plate will say is not known yet, and told as still to be found out.
    if (fitsADevice(kind) && shift.check == "breaking-capacity" && !isKnown(shift.after)) return false;
    if (losesItsHold(shift) || failsByMore(shift)) return true;
    if (!isOfLoadDeviceAndWiring(shift.check)) return false;
    return fails(shift.after) || ((isAllKnown || fails(shift.before)) && !isKnown(shift.after));
}

bool isSetHigher(const OverloadedCircuit& about, const Installation& changed) {
    const Circuit* circuit = find(changed.circuits, about.circuit.id);
    const auto setting = circuit ? usable(circuit->device.thermalSetting) : std::nullopt;
    return setting && about.rated && *setting > *about.rated;
}

} // namespace

bool isOfLoadDeviceAndWiring(std::string_view check) {
    return std::ranges::find(settled, check) != settled.end();
}

Trial::Trial(const OverloadedCircuit& circuit)
  : about_(circuit) {
    before_.circuit = foundIn(circuit.installation);
    if (isCalledFor())
        before_.around = assessAround(circuit.installation, circuit.visit, circuit.circuit.id, circuit.tables,
                                      circuit.rules, Detail::VerdictOnly);
}

bool Trial::isCalledFor() const {
    return std::ranges::any_of(before_.circuit, [](const Finding& finding) {
        return finding.verdict == Verdict::Fails && isOfLoadDeviceAndWiring(finding.check);
    });
}

std::optional<Installation> Trial::foretoldBy(const Change& change) const {
    auto changed =
        foretold(about_.installation, about_.visit, about_.circuit.id, change, about_.tables, about_.rules);
    return changed ? std::optional(std::move(*changed)) : std::nullopt;
}

std::vector<Finding> Trial::foundIn(const Installation& site) const {
    return assessCircuit(site, about_.visit, about_.circuit.id, about_.tables, about_.rules,
                         Detail::VerdictOnly);
}

Worth Trial::worthOf(RemedyKind kind, const Change& change) const {
    const auto changed = foretoldBy(change);
    if (!changed) return Worth::Nothing;
    const bool isAllKnown =
        fitsADevice(kind) || (kind == RemedyKind::OtherSetting && isSetHigher(about_, *changed));
    const auto shifts = shiftsBetween(before_.circuit, foundIn(*changed));
    if (std::ranges::any_of(shifts,
                            [&](const CheckShift& shift) { return isInTheWay(kind, isAllKnown, shift); }))
        return Worth::Nothing;
    return std::ranges::any_of(shifts, failsAfter) ? Worth::Settles : Worth::HoldsThroughout;
}

std::vector<Finding> Trial::failingAfter(const Change& change) const {
    const auto changed = foretoldBy(change);
    std::vector<Finding> found = changed ? foundIn(*changed) : std::vector<Finding>();
    std::erase_if(found, [](const Finding& finding) { return finding.verdict != Verdict::Fails; });
    return found;
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
    auto result = whatIf(about_.installation, about_.visit, about_.circuit.id, change, about_.tables,
                         about_.rules, before_);
    if (!result) return std::nullopt;
    Remedy remedy{kind,
                  std::move(change),
                  std::move(result->circuit),
                  std::move(result->elsewhere),
                  std::move(result->made),
                  false,
                  {},
                  result->isClampStale,
                  {}};
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
