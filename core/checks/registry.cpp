// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include <array>

/// The order here is the order in which equally bad findings are told.
namespace loopwright {

std::span<const RegisteredCheck<CircuitContext>> circuitChecks() {
    using Check = RegisteredCheck<CircuitContext>;
    static constexpr std::array checks{
        Check{"load-device", checkLoadDevice},
        Check{"device-wiring", checkDeviceWiring},
        Check{"load-wiring", checkLoadWiring},
        Check{"conventional", checkConventional},
        Check{"plug-fuse", checkPlugFuse},
        Check{"loop", checkLoop},
        Check{"disconnection", checkDisconnection},
        Check{"residual-touch", checkResidualTouch},
        Check{"residual-time", checkResidualTime},
        Check{"additional-protection", checkAdditionalProtection},
        Check{"insulation", checkInsulation},
        Check{"breaking-capacity", checkBreakingCapacity},
        Check{"adiabatic-line", checkAdiabaticLine},
        Check{"adiabatic-protective", checkAdiabaticProtective},
        Check{"ring", checkRing},
        Check{"drop", checkDrop},
        Check{"polarity", checkPolarity},
        Check{"completeness", checkCompleteness},
    };
    return checks;
}

std::span<const RegisteredCheck<BoardContext>> boardChecks() {
    using Check = RegisteredCheck<BoardContext>;
    static constexpr std::array checks{
        Check{"board-withstand", checkBoardWithstand},  Check{"electrode", checkBoardElectrode},
        Check{"residual-time", checkBoardResidualTime}, Check{"polarity", checkBoardPolarity},
        Check{"completeness", checkBoardCompleteness},
    };
    return checks;
}

std::span<const RegisteredCheck<VisitContext>> supplyChecks() {
    using Check = RegisteredCheck<VisitContext>;
    static constexpr std::array checks{
        Check{"supply-loop", checkSupplyLoop},
        Check{"electrode", checkSupplyElectrode},
        Check{"polarity", checkSupplyPolarity},
        Check{"completeness", checkSupplyCompleteness},
    };
    return checks;
}

} // namespace loopwright
