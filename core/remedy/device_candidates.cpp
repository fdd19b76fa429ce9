// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/candidates.h"
#include "core/remedy/fitting.h"

namespace loopwright {
namespace {

Message labelOf(const OverloadedCircuit& about, RemedyKind kind, const DeviceFamily& family, Current rated,
                const Wiring& wiring) {
    std::vector<Argument> said{family.label, measure(rated, units::ampere)};
    if (kind == RemedyKind::OtherDevice) return {"remedy.other-device", std::move(said)};
    const bool cable = isOtherCable(about, wiring);
    for (Argument& size : sizesOf(wiring, cable))
        said.push_back(std::move(size));
    return {cable ? "remedy.device-and-cable" : "remedy.device-and-conductor", std::move(said)};
}

/// The smallest rating that carries the load and that the wiring carries, of the first family that has one;
/// none above the rating of a board that the circuit feeds.
/// `edits` are those that make `wiring`; none: it stays.
void considerDevices(const Trial& trial, Selection& selection, RemedyKind kind, const Wiring& wiring,
                     const std::vector<Edit>& edits) {
    const OverloadedCircuit& about = trial.about();
    const Device& present = about.circuit.device;
    for (const DeviceFamily* family : familiesFor(about))
        for (const Current rated : about.tables.ratings(*family)) {
            const bool isSame =
                family->key == present.family && rated == usable(present.ratedCurrent).value_or(Current());
            if (isSame || rated < about.load.load.peak) continue;
            if (about.ratedOfFed && rated > *about.ratedOfFed) break;
            Change change{labelOf(about, kind, *family, rated, wiring), fitted(about, *family, rated)};
            change.edits.insert(change.edits.end(), edits.begin(), edits.end());
            trial.consider(selection, kind, std::move(change));
            if (selection.isMade) return;
            // The next rating is larger still; one that does not pass because of the wiring never will.
            if (about.carried && edits.empty() && rated > *about.carried) break;
        }
}

} // namespace

std::optional<Remedy> otherDevice(const Trial& trial) {
    Selection selection;
    considerDevices(trial, selection, RemedyKind::OtherDevice, trial.about().circuit.wiring, {});
    return trial.remedy(RemedyKind::OtherDevice, std::move(selection));
}

std::optional<Remedy> largerConductor(const Trial& trial, bool alsoDevice) {
    const OverloadedCircuit& about = trial.about();
    const auto size = usable(about.circuit.wiring.lineSize);
    if (!size) return std::nullopt;
    int sizesLeft = 4;
    Selection same, both;
    for (const CrossSection larger : about.tables.standardSizes(about.circuit.wiring.material)) {
        if (larger <= *size) continue;
        if (sizesLeft-- == 0 || same.isMade) break;
        const Wiring wiring = withLines(about, larger);
        const bool cable = isOtherCable(about, wiring);
        const auto edits = wired(about, wiring);
        trial.consider(
            same, RemedyKind::LargerConductor,
            {{cable ? "remedy.larger-cable" : "remedy.larger-conductor", sizesOf(wiring, cable)}, edits});
        if (!same.best && !both.isMade && alsoDevice)
            considerDevices(trial, both, RemedyKind::DeviceAndConductor, wiring, edits);
    }
    if (same.best) return trial.remedy(RemedyKind::LargerConductor, std::move(same));
    return trial.remedy(RemedyKind::DeviceAndConductor, std::move(both));
}

} // namespace loopwright
