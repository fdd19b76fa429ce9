// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/answering_field.h"

#include <array>

namespace loopwright {
namespace {

struct Row {
    std::string_view check;
    std::string_view resultSymbol; ///< empty: whatever decides
    AnsweringField field;
};

constexpr AnsweringField circuit(std::string_view key) {
    return {RecordKind::Circuit, key};
}
constexpr AnsweringField reading(std::string_view key) {
    return {RecordKind::CircuitReading, key};
}

/// The first row that fits counts.
constexpr std::array rows{
    Row{"load-device", "", circuit("load_A")},
    Row{"hidden-overload", "", circuit("load_A")},
    Row{"early-operation", "", circuit("device.ratedCurrent_A")},
    Row{"conductor-heat", "", circuit("wiring.lineSize_mm2")},
    Row{"device-wiring", "", circuit("device.ratedCurrent_A")},
    Row{"load-wiring", "", circuit("wiring.lineSize_mm2")},
    Row{"conventional", "", circuit("device.ratedCurrent_A")},
    Row{"motor-start", "", circuit("device.ratedCurrent_A")},
    Row{"selectivity", "", circuit("device.ratedCurrent_A")},
    Row{"device-rating", "", circuit("device.ratedCurrent_A")},
    Row{"conductor-sizes", "", circuit("wiring.lineSize_mm2")},
    Row{"load-agreement", "", circuit("load_A")},
    Row{"device-residual", "", circuit("residual.residualCurrent_mA")},
    Row{"equipment-voltage", "", circuit("load_A")},
    Row{"residual-type", "", circuit("residual.residualCurrent_mA")},
    Row{"residual-series", "", circuit("residual.residualCurrent_mA")},
    Row{"residual-half", "", reading("residualHalf")},
    Row{"loop-agreement", "", reading("loopImpedance_ohm")},
    Row{"continuity-agreement", "", reading("continuity_ohm")},
    Row{"changed", "", circuit("load_A")},
    Row{"drift", "Z_s", reading("loopImpedance_ohm")},
    Row{"drift", "R_1+R_2", reading("continuity_ohm")},
    Row{"drift", "", reading("insulationEarth_Mohm")},
    Row{"loop", "", reading("loopImpedance_ohm")},
    Row{"disconnection", "", reading("loopImpedance_ohm")},
    Row{"residual-touch", "", circuit("residual.residualCurrent_mA")},
    Row{"residual-time", "t_5", reading("residualTimeFive_ms")},
    Row{"residual-time", "t_1", reading("residualTime_ms")},
    Row{"residual-time", "", reading("residualButton")},
    Row{"additional-protection", "", circuit("residual.residualCurrent_mA")},
    Row{"insulation", "R_L", reading("insulationLive_Mohm")},
    Row{"insulation", "", reading("insulationEarth_Mohm")},
    Row{"breaking-capacity", "", circuit("device.breakingCapacity_kA")},
    Row{"adiabatic-line", "", circuit("wiring.lineSize_mm2")},
    Row{"adiabatic-protective", "", circuit("wiring.protectiveSize_mm2")},
    Row{"ring", "Δ(r_1, r_n)", reading("ringNeutral_ohm")},
    Row{"ring", "Δ(R_1+R_2)", reading("continuity_ohm")},
    Row{"ring", "", reading("ringProtective_ohm")},
    Row{"drop", "", circuit("wiring.length_m")},
    Row{"polarity", "", reading("polarity")},
};

} // namespace

std::optional<AnsweringField> answeringField(const Finding& finding) {
    for (const Row& row : rows)
        if (row.check == finding.check &&
            (row.resultSymbol.empty() || row.resultSymbol == finding.working->resultSymbol))
            return row.field;
    return std::nullopt;
}

} // namespace loopwright
