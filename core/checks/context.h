// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/model/installation.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"

#include <span>

namespace loopwright {

/// Everything that a check of one circuit may look at, looked up once. The pointers are valid while the installation is;
/// those that may be absent are nullptr when the record does not exist.
struct CircuitContext {
    const Installation& installation;
    const ReferenceTables& tables;
    const RuleSet& rules;
    Detail detail;
    const Visit& visit;
    const Board& board;
    const Circuit& circuit;
    const Supply* supply;
    const SupplyReading* supplyReading;
    const BoardReading* boardReading;
    const CircuitReading* reading;
    const Circuit* feeder;              ///< the circuit that feeds the board
    std::vector<const Equipment*> equipment;
    const DeviceFamily* family;         ///< of the circuit's device; nullptr when unknown
    Earthing earthing;                  ///< in force at this board: its own electrode makes it TT
};

/// A check of one circuit: a pure function of its context. One file a check, listed in checks/registry.cpp.
using CircuitCheck = Finding (*)(const CircuitContext&);

struct RegisteredCheck {
    std::string_view key; ///< stable: "load-device"
    CircuitCheck run;
};
std::span<const RegisteredCheck> circuitChecks();

} // namespace loopwright
