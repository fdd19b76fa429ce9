// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/candidates.h"
#include "core/remedy/fitting.h"

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

/// Where the release may be set: at least the load, at most what frame, wiring and the board that it feeds
/// carry.
struct Room {
    Current frame, stands, least, most;
    const OverloadedCircuit& about;

    bool holds(Current setting) const { return setting >= least && setting <= most && setting != stands; }
    /// Nearer to the load or to what the wiring carries than anybody would set it by choice.
    bool isTight(Current setting) const {
        return about.load.load.peak > about.allowed(setting) ||
               (about.carried && setting > about.allowed(*about.carried));
    }
    /// What has room to spare first, of those the one that changes the setting least.
    void sort(std::vector<Current>& settings) const {
        std::erase_if(settings, [&](Current setting) { return !holds(setting); });
        std::ranges::stable_sort(settings, {}, [&](Current setting) {
            return std::pair(isTight(setting), std::abs((setting - stands).base()));
        });
    }
};

std::vector<Current> positions(const Room& room) {
    std::vector<Current> settings;
    constexpr double tenths = 10; // a dial is marked no finer
    for (const Sourced<Ratio>& share : room.about.tables.overloadSettings())
        settings.push_back(amperes(std::round((room.frame * share.value).base() * tenths) / tenths));
    room.sort(settings);
    return settings;
}

/// Between the positions, of a dial that turns freely: next to the load, and next to what is carried.
std::vector<Current> wholeAmperes(const Room& room) {
    const double load = room.least.base(), carried = room.most.base(), spare = 1 - room.about.rules.closeBand;
    std::vector<Current> settings{amperes(std::floor(carried * spare)), amperes(std::ceil(load / spare)),
                                  amperes(std::floor(carried)), amperes(std::ceil(load))};
    const auto shares = room.about.tables.overloadSettings();
    std::erase_if(settings, [&](Current setting) {
        return shares.empty() || setting < room.frame * shares.front().value;
    });
    room.sort(settings);
    return settings;
}

Change set(const Room& room, Current setting, std::string_view label) {
    return {{label, {measure(setting, units::ampere), measure(setting / room.frame, units::percent, 0)}},
            {setField(RecordKind::Circuit, room.about.circuit.id, "device.thermalSetting_A",
                      storedText(planned(setting)))}};
}

/// No more than it stands at where nobody knows what the wiring carries.
Current mostOf(const OverloadedCircuit& about, Current frame) {
    const Current wiring = about.carried.value_or(*about.rated);
    return std::min({frame, wiring, about.ratedOfFed.value_or(frame)});
}

} // namespace

std::optional<Remedy> otherSetting(const Trial& trial) {
    const OverloadedCircuit& about = trial.about();
    const auto frame = usable(about.circuit.device.ratedCurrent);
    if (!about.isAdjustable || !frame || !about.rated) return std::nullopt;
    const Room room{*frame, *about.rated, about.load.load.peak, mostOf(about, *frame), about};
    Selection selection;
    for (const Current setting : positions(room))
        if (!selection.isMade)
            trial.consider(selection, RemedyKind::OtherSetting, set(room, setting, "remedy.other-setting"));
    if (!selection.best)
        for (const Current setting : wholeAmperes(room))
            if (!selection.isMade)
                trial.consider(selection, RemedyKind::OtherSetting,
                               set(room, setting, "remedy.other-setting-between"));
    return trial.remedy(RemedyKind::OtherSetting, std::move(selection));
}

} // namespace loopwright
