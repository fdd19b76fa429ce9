// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"

#include <type_traits>

/// Which records stand inside which in a site file, and under which keys.
namespace loopwright::sitefile {

/// How one kind of record is written: `list` is its key in the record that holds it, `definition` its name in
/// the schema.
template <class Record>
struct Nesting;

#define LOOPWRIGHT_NESTED(TYPE, LIST, DEFINITION, HOLDER, MEMBER)                                            \
    template <>                                                                                              \
    struct Nesting<TYPE> {                                                                                   \
        using Holder = HOLDER;                                                                               \
        static constexpr std::string_view list = LIST;                                                       \
        static constexpr std::string_view definition = DEFINITION;                                           \
        static constexpr Id TYPE::*holder = &TYPE::MEMBER;                                                   \
    }
LOOPWRIGHT_NESTED(Supply, "supplies", "supply", Site, site);
LOOPWRIGHT_NESTED(Board, "boards", "board", Site, site);
LOOPWRIGHT_NESTED(Circuit, "circuits", "circuit", Board, board);
LOOPWRIGHT_NESTED(Equipment, "equipment", "equipment", Circuit, circuit);
LOOPWRIGHT_NESTED(Visit, "visits", "visit", Site, site);
LOOPWRIGHT_NESTED(Instrument, "instruments", "instrument", Visit, visit);
LOOPWRIGHT_NESTED(SupplyReading, "supplyReadings", "supplyReading", Visit, visit);
LOOPWRIGHT_NESTED(BoardReading, "boardReadings", "boardReading", Visit, visit);
LOOPWRIGHT_NESTED(CircuitReading, "circuitReadings", "circuitReading", Visit, visit);
LOOPWRIGHT_NESTED(InspectionOutcome, "inspection", "inspectionOutcome", Visit, visit);
LOOPWRIGHT_NESTED(Observation, "observations", "observation", Visit, visit);
LOOPWRIGHT_NESTED(Photo, "photos", "photo", Observation, observation);
LOOPWRIGHT_NESTED(CurrentLog, "currentLogs", "currentLog", CircuitReading, reading);
#undef LOOPWRIGHT_NESTED
template <>
struct Nesting<Site> {
    using Holder = void;
    static constexpr std::string_view definition = ""; ///< the root of the schema
};

/// Calls `visit` with a value-initialised record of each kind that stands inside a `Holder`, in the order of
/// the file.
template <class Holder, class Visitor>
void forEachHeldKind(Visitor&& visit) {
    forEachRowKind([&](auto blank) {
        if constexpr (std::is_same_v<typename Nesting<decltype(blank)>::Holder, Holder>)
            visit(std::move(blank));
    });
}

/// Whether the field says which record holds this one: in the file its place says that.
template <class Record>
bool saysHolder(const FieldInfo& field) {
    if constexpr (std::is_same_v<Record, Site>)
        return false;
    else
        return field.kind == FieldKind::Reference &&
               field.references == RecordTraits<typename Nesting<Record>::Holder>::kind;
}

} // namespace loopwright::sitefile
