// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/device.h"

namespace loopwright {

Word deviceWord(const DeviceFamily* family) {
    if (!family) return {"check.word.device"};
    switch (family->kind) {
    case DeviceKind::Breaker:
        return {"check.word.breaker"};
    case DeviceKind::Rcbo:
        return {"check.word.rcbo"};
    case DeviceKind::CartridgeFuse:
        return {"check.word.fuse"};
    case DeviceKind::RewirableFuse:
        return {"check.word.rewirable-fuse"};
    case DeviceKind::PlugFuse:
        return {"check.word.plug-fuse"};
    }
    return {"check.word.device"};
}

std::optional<Current> ratedCurrent(const CircuitRecords& records, Worksheet& sheet) {
    return sheet.exact("I_n", records.circuit, records.circuit.device.ratedCurrent, "device.ratedCurrent_A");
}

const DeviceFamily* deviceFamily(const CircuitRecords& records, Worksheet& sheet) {
    if (!records.family) sheet.lacks(records.circuit, "device.family");
    return records.family;
}

} // namespace loopwright
