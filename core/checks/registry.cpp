// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include <array>

/// The order here is the order in which equally bad findings are told.
namespace loopwright {

std::span<const RegisteredCheck<CircuitContext>> circuitChecks() {
    using Check = RegisteredCheck<CircuitContext>;
    static constexpr std::array checks{
        Check{"hidden-overload", checkHiddenOverload},
        Check{"load-device", checkLoadDevice},
        Check{"device-wiring", checkDeviceWiring},
        Check{"load-wiring", checkLoadWiring},
        Check{"conductor-heat", checkConductorHeat},
        Check{"conventional", checkConventional},
        Check{"plug-fuse", checkPlugFuse},
        Check{"early-operation", checkEarlyOperation},
        Check{"motor-start", checkMotorStart},
        Check{"loop", checkLoop},
        Check{"disconnection", checkDisconnection},
        Check{"residual-touch", checkResidualTouch},
        Check{"residual-time", checkResidualTime},
        Check{"additional-protection", checkAdditionalProtection},
        Check{"residual-type", checkResidualType},
        Check{"residual-half", checkResidualHalf},
        Check{"residual-series", checkResidualSeries},
        Check{"selectivity", checkSelectivity},
        Check{"insulation", checkInsulation},
        Check{"breaking-capacity", checkBreakingCapacity},
        Check{"adiabatic-line", checkAdiabaticLine},
        Check{"adiabatic-protective", checkAdiabaticProtective},
        Check{"ring", checkRing},
        Check{"loop-agreement", checkLoopAgreement},
        Check{"continuity-agreement", checkContinuityAgreement},
        Check{"drop", checkDrop},
        Check{"polarity", checkPolarity},
        Check{"phases", checkPhases},
        Check{"device-rating", checkDeviceRating},
        Check{"conductor-sizes", checkConductorSizes},
        Check{"load-agreement", checkLoadAgreement},
        Check{"device-residual", checkDeviceResidual},
        Check{"equipment-voltage", checkEquipmentVoltage},
        Check{"drift", checkDrift},
        Check{"changed", checkChanged},
        Check{"completeness", checkCompleteness},
    };
    return checks;
}

std::span<const RegisteredCheck<BoardContext>> boardChecks() {
    using Check = RegisteredCheck<BoardContext>;
    static constexpr std::array checks{
        Check{"board-demand", checkBoardDemand},
        Check{"board-withstand", checkBoardWithstand},
        Check{"phase-balance", checkPhaseBalance},
        Check{"electrode", checkBoardElectrode},
        Check{"residual-time", checkBoardResidualTime},
        Check{"residual-half", checkBoardResidualHalf},
        Check{"polarity", checkBoardPolarity},
        Check{"phases", checkBoardPhases},
        Check{"drift", checkBoardDrift},
        Check{"completeness", checkBoardCompleteness},
    };
    return checks;
}

std::span<const RegisteredCheck<VisitContext>> supplyChecks() {
    using Check = RegisteredCheck<VisitContext>;
    static constexpr std::array checks{
        Check{"supply-demand", checkSupplyDemand},      Check{"supply-loop", checkSupplyLoop},
        Check{"electrode", checkSupplyElectrode},       Check{"earthing-conductor", checkEarthingConductor},
        Check{"main-bonding", checkMainBonding},        Check{"polarity", checkSupplyPolarity},
        Check{"completeness", checkSupplyCompleteness},
    };
    return checks;
}

std::span<const RegisteredCheck<InstrumentContext>> instrumentChecks() {
    using Check = RegisteredCheck<InstrumentContext>;
    static constexpr std::array checks{
        Check{"calibration", checkCalibration},
        Check{"instrument-uncertainty", checkInstrumentUncertainty},
        Check{"instrument-range", checkInstrumentRange},
    };
    return checks;
}

} // namespace loopwright
