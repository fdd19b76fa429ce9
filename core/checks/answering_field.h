// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"

#include <optional>

namespace loopwright {

/// A field of the catalogue, of the finding's circuit or of its readings.
struct AnsweringField {
    RecordKind kind = RecordKind::CircuitReading;
    std::string_view key; ///< "loopImpedance_ohm"; static storage
    friend bool operator==(const AnsweringField&, const AnsweringField&) = default;
};

/// The field whose cell is marked with the verdict of a finding about a circuit, on the sheet and in the
/// schedule; nothing where no single field answers for it. Of a check that judges several readings the symbol
/// of its result tells which one decided.
std::optional<AnsweringField> answeringField(const Finding& finding);

} // namespace loopwright
