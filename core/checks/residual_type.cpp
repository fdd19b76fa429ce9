// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/residual_path.h"

namespace loopwright {
namespace {

/// The most demanding piece of equipment, and what it asks for.
struct Demand {
    const Equipment* equipment = nullptr;
    const ResidualTypeNeed* need = nullptr;
};

Demand mostDemanding(const CircuitContext& context) {
    Demand most;
    for (const Equipment* equipment : context.equipment) {
        const auto* need =
            context.tables.residualTypeFor(equipment->kind, context.circuit.phases == Phases::Three);
        if (need && (!most.need || need->type > most.need->type)) most = {equipment, need};
    }
    return most;
}

Verdict suits(ResidualType type, const ResidualTypeNeed& need) {
    if (type >= need.type) return Verdict::Holds;
    return need.onCondition && type >= *need.onCondition ? Verdict::Close : Verdict::Fails;
}

/// A choice's key in static storage, for a sentence.
Word typeWord(ResidualType type) {
    switch (type) {
    case ResidualType::AC:
        return {"choice.residual-type.AC"};
    case ResidualType::A:
        return {"choice.residual-type.A"};
    case ResidualType::F:
        return {"choice.residual-type.F"};
    case ResidualType::B:
        return {"choice.residual-type.B"};
    case ResidualType::Unknown:
        break;
    }
    return {"choice.residual-type.unknown"};
}

} // namespace

/// Every residual current device on the way must see the residual current that the equipment can feed it, and
/// not be blinded by it (IEC 60364-5-53, 531.3.3; IEC 60755; IEC 62423).
Finding checkResidualType(const CircuitContext& context) {
    Worksheet sheet(phrasing<"residual-type">, context, {RecordKind::Circuit, context.circuit.id});
    if (!mostSensitive(context)) return sheet.doesNotApply("check.residual-type.none");
    const Demand demand = mostDemanding(context);
    if (!demand.need) return sheet.doesNotApply("check.residual-type.not-asked");
    sheet.clause("residual-type");
    ResidualType worst = ResidualType::B;
    forEachResidual(context, [&](const ResidualInPath& path) {
        if (path.device->type == ResidualType::Unknown)
            return sheet.lacks(path.kind, path.owner, "residual.type");
        worst = std::min(worst, path.device->type);
        sheet.decide(suits(path.device->type, *demand.need));
    });
    sheet.source(demand.need->source);
    const bool isModest = demand.need->onCondition == ResidualType::AC;
    if (isModest) sheet.phrase(Verdict::Close, "check.residual-type.close-alternating");
    return sheet.conclude(typeWord(worst), demand.equipment->name, typeWord(demand.need->type));
}

} // namespace loopwright
