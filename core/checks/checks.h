// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/context.h"

/// Every check, each in a file of its own name; registry.cpp gives them their keys.
namespace loopwright {

Finding checkLoadDevice(const CircuitContext& context);
Finding checkHiddenOverload(const CircuitContext& context);
Finding checkEarlyOperation(const CircuitContext& context);
Finding checkConductorHeat(const CircuitContext& context);
Finding checkDeviceWiring(const CircuitContext& context);
Finding checkLoadWiring(const CircuitContext& context);
Finding checkConventional(const CircuitContext& context);
Finding checkPlugFuse(const CircuitContext& context);
Finding checkLoop(const CircuitContext& context);
Finding checkDisconnection(const CircuitContext& context);
Finding checkResidualTouch(const CircuitContext& context);
Finding checkResidualTime(const CircuitContext& context);
Finding checkAdditionalProtection(const CircuitContext& context);
Finding checkInsulation(const CircuitContext& context);
Finding checkBreakingCapacity(const CircuitContext& context);
Finding checkAdiabaticLine(const CircuitContext& context);
Finding checkAdiabaticProtective(const CircuitContext& context);
Finding checkRing(const CircuitContext& context);
Finding checkDrop(const CircuitContext& context);
Finding checkPolarity(const CircuitContext& context);
Finding checkLoopAgreement(const CircuitContext& context);
Finding checkContinuityAgreement(const CircuitContext& context);
Finding checkResidualType(const CircuitContext& context);
Finding checkResidualHalf(const CircuitContext& context);
Finding checkResidualSeries(const CircuitContext& context);
Finding checkMotorStart(const CircuitContext& context);
Finding checkSelectivity(const CircuitContext& context);
Finding checkPhases(const CircuitContext& context);
Finding checkDeviceRating(const CircuitContext& context);
Finding checkConductorSizes(const CircuitContext& context);
Finding checkLoadAgreement(const CircuitContext& context);
Finding checkDeviceResidual(const CircuitContext& context);
Finding checkEquipmentVoltage(const CircuitContext& context);
Finding checkDrift(const CircuitContext& context);
Finding checkChanged(const CircuitContext& context);
Finding checkCompleteness(const CircuitContext& context);

Finding checkBoardDemand(const BoardContext& context);
Finding checkPhaseBalance(const BoardContext& context);
Finding checkBoardWithstand(const BoardContext& context);
Finding checkBoardElectrode(const BoardContext& context);
Finding checkBoardResidualTime(const BoardContext& context);
Finding checkBoardPolarity(const BoardContext& context);
Finding checkBoardResidualHalf(const BoardContext& context);
Finding checkBoardPhases(const BoardContext& context);
Finding checkBoardDrift(const BoardContext& context);
Finding checkBoardCompleteness(const BoardContext& context);

Finding checkSupplyLoop(const VisitContext& context);
Finding checkSupplyDemand(const VisitContext& context);
Finding checkSupplyElectrode(const VisitContext& context);
Finding checkSupplyPolarity(const VisitContext& context);
Finding checkEarthingConductor(const VisitContext& context);
Finding checkMainBonding(const VisitContext& context);
Finding checkSupplyCompleteness(const VisitContext& context);

Finding checkCalibration(const InstrumentContext& context);
Finding checkInstrumentUncertainty(const InstrumentContext& context);
Finding checkInstrumentRange(const InstrumentContext& context);

} // namespace loopwright
