// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

#include <algorithm>

namespace loopwright {
namespace {

/// One end of an instrument's range: where it is recorded, and on which side of it readings lie.
template <class Q>
struct RangeEnd {
    Entry<Q> Instrument::*entry;
    Relation readingsAre;
    std::string_view symbol;
    const Unit& unit;

    bool includes(const Q& reading, const Q& end) const {
        return readingsAre == Relation::AtLeast ? reading >= end : reading <= end;
    }
};

/// The reading that lies farthest beyond a range, as a sentence tells it.
struct Beyond {
    Measure end, reading;
    std::string place;
};

/// Holds the visit's readings against the ranges of one instrument.
class Ranging {
  public:
    Ranging(const InstrumentContext& context, Worksheet& sheet)
      : context_(context)
      , sheet_(sheet) {}

    /// Takes up the readings of one quantity, `members` of the rows that `rowsOf` names.
    template <class Q, class Record>
    void hold(const RangeEnd<Q>& end, std::vector<Record> Installation::*rows,
              std::initializer_list<Entry<Q> Record::*> members) {
        const auto recorded = usable(context_.instrument.*end.entry);
        if (!recorded) return;
        isRecorded_ = true;
        for (const Record& row : context_.installation.*rows)
            if (row.visit == context_.visit.id)
                for (const auto member : members)
                    compare(end, *recorded, row, row.*member);
    }
    bool isRecorded() const { return isRecorded_; }
    const Beyond& worst() const { return worst_; }

  private:
    template <class Q, class Record>
    void compare(const RangeEnd<Q>& end, Q recorded, const Record& row, const Entry<Q>& reading) {
        const auto value = reading.exact();
        if (!value || isCovered(end, *value)) return;
        const bool decides = sheet_.compareTolerance(end.readingsAre, end.symbol,
                                                     Figure<Q>{*value, Bound::Exact, reading.decimals},
                                                     Figure<Q>{recorded}, end.unit);
        if (!decides || !sheet_.isFull()) return;
        worst_ = {measure(recorded, end.unit), measure(*value, end.unit, reading.decimals), placeOf(row)};
    }
    /// Whether another instrument of the visit says that it measures so far.
    template <class Q>
    bool isCovered(const RangeEnd<Q>& end, const Q& reading) const {
        return std::ranges::any_of(context_.installation.instruments, [&](const Instrument& other) {
            const auto recorded = usable(other.*end.entry);
            return other.visit == context_.visit.id && other.id != context_.instrument.id && recorded &&
                   end.includes(reading, *recorded);
        });
    }
    template <class Record>
    static std::string nameOf(const Installation& installation, const std::vector<Record>& records, Id id) {
        const Record* record = find(records, id);
        return record ? pathOf(installation, *record) : std::string();
    }
    std::string placeOf(const CircuitReading& row) const {
        return nameOf(context_.installation, context_.installation.circuits, row.circuit);
    }
    std::string placeOf(const BoardReading& row) const {
        return nameOf(context_.installation, context_.installation.boards, row.board);
    }
    std::string placeOf(const SupplyReading&) const { return context_.installation.site.name; }

    const InstrumentContext& context_;
    Worksheet& sheet_;
    bool isRecorded_ = false;
    Beyond worst_;
};

} // namespace

/// Every reading of the visit lies where an instrument is good for it (IEC 61557-1: the measuring range is
/// where the operating uncertainty holds). Nobody records which instrument took a reading, so that one which
/// any of them covers is left alone; what lies beyond is close at worst, as it may well be right.
Finding checkInstrumentRange(const InstrumentContext& context) {
    Worksheet sheet(phrasing<"instrument-range">, context, {RecordKind::Instrument, context.instrument.id});
    sheet.clause("instrument-range");
    const RangeEnd<Resistance> continuity{&Instrument::continuityFrom, Relation::AtLeast, "R", units::ohm},
        loop{&Instrument::loopFrom, Relation::AtLeast, "Z", units::ohm},
        insulation{&Instrument::insulationTo, Relation::AtMost, "R_iso", units::megohm};
    const RangeEnd<Current> current{&Instrument::currentTo, Relation::AtMost, "I", units::ampere};
    Ranging ranging(context, sheet);
    ranging.hold(continuity, &Installation::circuitReadings,
                 {&CircuitReading::continuity, &CircuitReading::ringLine, &CircuitReading::ringNeutral,
                  &CircuitReading::ringProtective});
    ranging.hold(loop, &Installation::circuitReadings, {&CircuitReading::loopImpedance});
    ranging.hold(loop, &Installation::boardReadings,
                 {&BoardReading::loopImpedance, &BoardReading::neutralLoopImpedance});
    ranging.hold(loop, &Installation::supplyReadings,
                 {&SupplyReading::externalLoopImpedance, &SupplyReading::neutralLoopImpedance});
    ranging.hold(insulation, &Installation::circuitReadings,
                 {&CircuitReading::insulationLive, &CircuitReading::insulationEarth});
    ranging.hold(current, &Installation::circuitReadings, {&CircuitReading::measuredLoad});
    if (!ranging.isRecorded()) return sheet.doesNotApply("check.instrument-range.not-recorded");
    sheet.decide(Verdict::Holds);
    sheet.atWorst(Verdict::Close);
    if (sheet.verdict() != Verdict::Close) return sheet.conclude(context.instrument.name);
    const Beyond& worst = ranging.worst();
    return sheet.conclude(context.instrument.name, worst.end, worst.reading, worst.place);
}

} // namespace loopwright
