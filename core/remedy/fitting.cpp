// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/fitting.h"

#include "core/phrases/phrases.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright {
namespace {

/// Families that new devices are fitted from, the most usual first.
constexpr std::array<std::string_view, 5> usualFamilies{"60898-B", "60898-C", "61009-B", "88-2", "88-3"};

int decimalsOf(double value) {
    return value == std::floor(value) ? 0 : 1;
}
std::string textOf(const Entry<CrossSection>& size) {
    return formatEntry(toText(size, units::squareMillimetre));
}

} // namespace

Entry<Current> planned(Current current) {
    return Entry<Current>::of(current, decimalsOf(current.base()), Origin::Typed);
}

Entry<CrossSection> planned(CrossSection size) {
    return Entry<CrossSection>::of(size, decimalsOf(size.base()), Origin::Typed);
}

std::string storedText(const Entry<Current>& current) {
    return formatEntry(toText(current, units::ampere));
}

Edit setLoad(Id circuit, Current load) {
    return setField(RecordKind::Circuit, circuit, "load_A",
                    storedText(Entry<Current>::of(load, 1, Origin::Computed)));
}

Current inTenths(Current load) {
    constexpr double tenths = 10, hair = 1e-6; // what arithmetic may have added
    return amperes(std::ceil(load.base() * tenths - hair) / tenths);
}

Argument spokenName(const Equipment& equipment) {
    if (!equipment.name.empty()) return equipment.name;
    switch (equipment.kind) { // the others say nothing about it
    case EquipmentKind::Unknown:
    case EquipmentKind::General:
    case EquipmentKind::SocketFed:
        return Word{"remedy.word.equipment"};
    default:
        return Word{phrase("choice.equipment-kind." + std::string(choiceKey(equipment.kind)))->key};
    }
}

std::vector<const DeviceFamily*> familiesFor(const OverloadedCircuit& about) {
    std::vector<const DeviceFamily*> families;
    const DeviceFamily* own = about.tables.deviceFamily(about.circuit.device.family);
    const bool isFitted = own && !own->legacy && !own->adjustable && own->kind != DeviceKind::PlugFuse;
    if (isFitted) families.push_back(own);
    if (own && own->kind == DeviceKind::Rcbo) return families;
    for (const std::string_view key : usualFamilies)
        if (const DeviceFamily* family = about.tables.deviceFamily(key); family && family != own)
            families.push_back(family);
    return families;
}

std::vector<Edit> fitted(const OverloadedCircuit& about, const DeviceFamily& family, Current rated) {
    std::vector<Edit::Value> values{{"device.ratedCurrent_A", storedText(planned(rated))}};
    if (family.key != about.circuit.device.family)
        values.insert(values.end(), {{"device.family", family.key}, {"device.breakingCapacity_kA", ""}});
    if (about.isAdjustable) // its settings go with it
        for (const char* setting :
             {"device.thermalSetting_A", "device.thermalDelay_s", "device.shortTimeSetting_A",
              "device.shortTimeDelay_s", "device.instantaneousSetting_A"})
            values.push_back({setting, ""});
    return {{Edit::Step::Set, RecordKind::Circuit, about.circuit.id, std::move(values)}};
}

std::optional<CrossSection> inProportion(const Wiring& present, CrossSection line,
                                         std::span<const CrossSection> sizes) {
    const auto lines = usable(present.lineSize), protective = usable(present.protectiveSize);
    if (!lines || !protective) return std::nullopt;
    const auto next = std::ranges::lower_bound(sizes, *protective * (line / *lines));
    return next == sizes.end() ? std::nullopt : std::optional(*next);
}

Wiring withLines(const OverloadedCircuit& about, CrossSection line) {
    Wiring wiring = about.circuit.wiring;
    wiring.lineSize = planned(line);
    if (wiring.protectiveConductor != ProtectiveConductor::InCable) return wiring;
    const auto sizes = about.tables.standardSizes(wiring.material);
    if (const auto protective = inProportion(about.circuit.wiring, line, sizes))
        wiring.protectiveSize = planned(*protective);
    return wiring;
}

std::vector<Edit> wired(const OverloadedCircuit& about, const Wiring& wiring) {
    std::vector<Edit::Value> values{{"wiring.lineSize_mm2", textOf(wiring.lineSize)}};
    if (isOtherCable(about, wiring))
        values.push_back({"wiring.protectiveSize_mm2", textOf(wiring.protectiveSize)});
    return {{Edit::Step::Set, RecordKind::Circuit, about.circuit.id, std::move(values)}};
}

bool isOtherCable(const OverloadedCircuit& about, const Wiring& wiring) {
    return wiring.protectiveSize != about.circuit.wiring.protectiveSize;
}

std::vector<Argument> sizesOf(const Wiring& wiring, bool cable) {
    std::vector<Argument> sizes{measure(wiring.lineSize.value, units::squareMillimetre)};
    if (cable) sizes.push_back(measure(wiring.protectiveSize.value, units::squareMillimetre));
    return sizes;
}

} // namespace loopwright
