// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/installation.h"

#include <span>
#include <tl/expected.hpp>

/// One catalogue of every field of every record: its key, unit, kind, and how to read and write it as text.
/// The workbook's columns, the site file's keys, the sheet's cells, the forms and the journal's labels all
/// come from here, so a new field is added in records.h, in fields.cpp and in the next schema version, and
/// nowhere else.
namespace loopwright {

enum class RecordKind : std::uint8_t {
    Site,
    Supply,
    Board,
    Circuit,
    Equipment,
    Visit,
    Instrument,
    SupplyReading,
    BoardReading,
    CircuitReading,
    InspectionOutcome,
    Observation,
    Photo,
    CurrentLog,
};

enum class FieldKind : std::uint8_t {
    Text,      ///< a line
    LongText,  ///< paragraphs
    Figure,    ///< an Entry: number, qualified number or reason
    Flag,      ///< "true" or "false"
    Option,    ///< a key of `choices`
    Day,       ///< "2026-03-10"
    Reference, ///< the id of a record of kind `references`
};

struct FieldInfo {
    std::string_view key; ///< "device.ratedCurrent_A"; a dot leads into an embedded struct
    FieldKind kind = FieldKind::Text;
    Unit unit = units::ratio;                 ///< of a Figure
    bool allowsZero = true;                   ///< of a Figure: whether 0 can be a value of its kind
    bool allowsNegative = false;              ///< of a Figure
    bool wholeNumber = false;                 ///< of a Figure: counts things
    const ChoiceList* choices = nullptr;      ///< of an Option
    RecordKind references = RecordKind::Site; ///< of a Reference
    bool isOwner = false; ///< of a Reference: the record goes when the one it names goes; otherwise only the
                          ///< mention goes
};

/// A field of one kind of record. Text is the stored form: C numbers, choice keys, ids; empty means absent.
template <class Record>
struct Field {
    FieldInfo info;
    std::string (*read)(const Record&, const FieldInfo&);
    tl::expected<void, Message> (*write)(Record&, const FieldInfo&, std::string_view text);

    std::string get(const Record& record) const { return read(record, info); }
    /// Refuses what cannot be a value of its kind ("abc" or a negative size in a size field) and then changes
    /// nothing. An empty text puts the field back to what a new record has.
    tl::expected<void, Message> set(Record& record, std::string_view text) const {
        return write(record, info, text);
    }
};

/// All fields of a record except its id, in the order in which they are stored and written.
template <class Record>
std::span<const Field<Record>> fieldsOf();

/// What a record kind is called and where its rows are.
template <class Record>
struct RecordTraits; // kind, name (of its table), rows (its member of Installation)

#define LOOPWRIGHT_RECORD(TYPE, NAME, ROWS)                                                                  \
    template <>                                                                                              \
    struct RecordTraits<TYPE> {                                                                              \
        static constexpr RecordKind kind = RecordKind::TYPE;                                                 \
        static constexpr std::string_view name = NAME;                                                       \
        static constexpr auto rows = &Installation::ROWS;                                                    \
    }
LOOPWRIGHT_RECORD(Supply, "supply", supplies);
LOOPWRIGHT_RECORD(Board, "board", boards);
LOOPWRIGHT_RECORD(Circuit, "circuit", circuits);
LOOPWRIGHT_RECORD(Equipment, "equipment", equipment);
LOOPWRIGHT_RECORD(Visit, "visit", visits);
LOOPWRIGHT_RECORD(Instrument, "instrument", instruments);
LOOPWRIGHT_RECORD(SupplyReading, "supply_reading", supplyReadings);
LOOPWRIGHT_RECORD(BoardReading, "board_reading", boardReadings);
LOOPWRIGHT_RECORD(CircuitReading, "circuit_reading", circuitReadings);
LOOPWRIGHT_RECORD(InspectionOutcome, "inspection_outcome", inspectionOutcomes);
LOOPWRIGHT_RECORD(Observation, "observation", observations);
LOOPWRIGHT_RECORD(Photo, "photo", photos);
LOOPWRIGHT_RECORD(CurrentLog, "current_log", currentLogs);
#undef LOOPWRIGHT_RECORD
template <>
struct RecordTraits<Site> {
    static constexpr RecordKind kind = RecordKind::Site;
    static constexpr std::string_view name = "site";
};

/// Calls `visit` with a value-initialised record of each kind that has rows, parents before children.
template <class Visitor>
void forEachRowKind(Visitor&& visit) {
    visit(Supply{});
    visit(Board{});
    visit(Circuit{});
    visit(Equipment{});
    visit(Visit{});
    visit(Instrument{});
    visit(SupplyReading{});
    visit(BoardReading{});
    visit(CircuitReading{});
    visit(InspectionOutcome{});
    visit(Observation{});
    visit(Photo{});
    visit(CurrentLog{});
}

/// Calls `action` with a value-initialised record of that kind.
template <class Action>
void withRecordOf(RecordKind kind, Action&& action) {
    if (kind == RecordKind::Site) return action(Site{});
    forEachRowKind([&](auto record) {
        if (RecordTraits<decltype(record)>::kind == kind) action(std::move(record));
    });
}

std::string_view recordName(RecordKind kind);
/// The field's description, or nullptr if the record kind has no such key.
const FieldInfo* fieldInfo(RecordKind kind, std::string_view key);
/// The stored form of one field; nothing if the record or the key does not exist.
std::optional<std::string> fieldText(const Installation& installation, RecordKind kind, Id id,
                                     std::string_view key);

} // namespace loopwright
