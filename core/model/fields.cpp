// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/fields.h"

#include "core/model/codec.h"

#include <array>

namespace loopwright {
namespace {

using codec::field;

constexpr FieldInfo text(std::string_view key) {
    return {.key = key};
}
constexpr FieldInfo longText(std::string_view key) {
    return {.key = key, .kind = FieldKind::LongText};
}
constexpr FieldInfo owner(std::string_view key, RecordKind kind) {
    return {.key = key, .references = kind, .isOwner = true};
}
constexpr FieldInfo mention(std::string_view key, RecordKind kind) {
    return {.key = key, .references = kind};
}
/// A reading: an instrument may well show 0.
constexpr FieldInfo reading(std::string_view key, const Unit& unit) {
    return {.key = key, .unit = unit};
}
/// A size, rating or length, which cannot be 0.
constexpr FieldInfo size(std::string_view key, const Unit& unit) {
    return {.key = key, .unit = unit, .allowsZero = false};
}
constexpr FieldInfo count(std::string_view key) {
    return {.key = key, .unit = units::ratio, .allowsZero = false, .wholeNumber = true};
}
constexpr FieldInfo temperature(std::string_view key) {
    return {.key = key, .unit = units::celsius, .allowsNegative = true};
}
template <class E>
FieldInfo option(std::string_view key) {
    return {.key = key, .choices = &choicesOf<E>()};
}

} // namespace

template <>
std::span<const Field<Site>> fieldsOf<Site>() {
    static const std::array fields{
        field<Site, &Site::name>(text("name")),
        field<Site, &Site::description>(text("description")),
        field<Site, &Site::address>(longText("address")),
        field<Site, &Site::client>(text("client")),
        field<Site, &Site::premises>(text("premises")),
        field<Site, &Site::occupancy>(option<Occupancy>("occupancy")),
        field<Site, &Site::notes>(longText("notes")),
    };
    return fields;
}

template <>
std::span<const Field<Supply>> fieldsOf<Supply>() {
    static const std::array fields{
        field<Supply, &Supply::site>(owner("site", RecordKind::Site)),
        field<Supply, &Supply::earthing>(option<Earthing>("earthing")),
        field<Supply, &Supply::phases>(option<Phases>("phases")),
        field<Supply, &Supply::nominalVoltage>(size("nominalVoltage_V", units::volt)),
        field<Supply, &Supply::fuse, &Device::family>(text("fuse.family")),
        field<Supply, &Supply::fuse, &Device::ratedCurrent>(size("fuse.ratedCurrent_A", units::ampere)),
        field<Supply, &Supply::fuse, &Device::breakingCapacity>(
            size("fuse.breakingCapacity_kA", units::kiloampere)),
        field<Supply, &Supply::tails>(size("tails_mm2", units::squareMillimetre)),
        field<Supply, &Supply::earthingConductor>(size("earthingConductor_mm2", units::squareMillimetre)),
        field<Supply, &Supply::mainBonding>(size("mainBonding_mm2", units::squareMillimetre)),
        field<Supply, &Supply::demand>(reading("demand_A", units::ampere)),
        field<Supply, &Supply::earthedBy>(text("earthedBy")),
        field<Supply, &Supply::notes>(longText("notes")),
    };
    return fields;
}

template <>
std::span<const Field<Board>> fieldsOf<Board>() {
    static const std::array fields{
        field<Board, &Board::site>(owner("site", RecordKind::Site)),
        field<Board, &Board::name>(text("name")),
        field<Board, &Board::description>(text("description")),
        field<Board, &Board::location>(text("location")),
        field<Board, &Board::fedFrom>(mention("fedFrom", RecordKind::Circuit)),
        field<Board, &Board::earthing>(option<BoardEarthing>("earthing")),
        field<Board, &Board::phases>(option<Phases>("phases")),
        field<Board, &Board::ratedCurrent>(size("ratedCurrent_A", units::ampere)),
        field<Board, &Board::withstandCurrent>(size("withstandCurrent_kA", units::kiloampere)),
        field<Board, &Board::ambient>(temperature("ambient_degC")),
        field<Board, &Board::residual, &ResidualDevice::fitted>(text("residual.fitted")),
        field<Board, &Board::residual, &ResidualDevice::residualCurrent>(
            size("residual.residualCurrent_mA", units::milliampere)),
        field<Board, &Board::residual, &ResidualDevice::type>(option<ResidualType>("residual.type")),
        field<Board, &Board::residual, &ResidualDevice::delay>(option<ResidualDelay>("residual.delay")),
        field<Board, &Board::notes>(longText("notes")),
    };
    return fields;
}

template <>
std::span<const Field<Circuit>> fieldsOf<Circuit>() {
    static const std::array fields{
        field<Circuit, &Circuit::board>(owner("board", RecordKind::Board)),
        field<Circuit, &Circuit::way>(text("way")),
        field<Circuit, &Circuit::name>(text("name")),
        field<Circuit, &Circuit::section>(text("section")),
        field<Circuit, &Circuit::use>(option<CircuitUse>("use")),
        field<Circuit, &Circuit::topology>(option<Topology>("topology")),
        field<Circuit, &Circuit::phases>(option<Phases>("phases")),
        field<Circuit, &Circuit::points>(count("points")),
        field<Circuit, &Circuit::device, &Device::family>(text("device.family")),
        field<Circuit, &Circuit::device, &Device::ratedCurrent>(size("device.ratedCurrent_A", units::ampere)),
        field<Circuit, &Circuit::device, &Device::breakingCapacity>(
            size("device.breakingCapacity_kA", units::kiloampere)),
        field<Circuit, &Circuit::device, &Device::thermalSetting>(
            size("device.thermalSetting_A", units::ampere)),
        field<Circuit, &Circuit::device, &Device::thermalDelay>(size("device.thermalDelay_s", units::second)),
        field<Circuit, &Circuit::device, &Device::shortTimeSetting>(
            size("device.shortTimeSetting_A", units::ampere)),
        field<Circuit, &Circuit::device, &Device::shortTimeDelay>(
            reading("device.shortTimeDelay_s", units::second)),
        field<Circuit, &Circuit::device, &Device::instantaneousSetting>(
            size("device.instantaneousSetting_A", units::ampere)),
        field<Circuit, &Circuit::residual, &ResidualDevice::fitted>(text("residual.fitted")),
        field<Circuit, &Circuit::residual, &ResidualDevice::residualCurrent>(
            size("residual.residualCurrent_mA", units::milliampere)),
        field<Circuit, &Circuit::residual, &ResidualDevice::type>(option<ResidualType>("residual.type")),
        field<Circuit, &Circuit::residual, &ResidualDevice::delay>(option<ResidualDelay>("residual.delay")),
        field<Circuit, &Circuit::wiring, &Wiring::description>(text("wiring.description")),
        field<Circuit, &Circuit::wiring, &Wiring::material>(option<Material>("wiring.material")),
        field<Circuit, &Circuit::wiring, &Wiring::insulation>(option<Insulation>("wiring.insulation")),
        field<Circuit, &Circuit::wiring, &Wiring::method>(option<InstallationMethod>("wiring.method")),
        field<Circuit, &Circuit::wiring, &Wiring::lineSize>(
            size("wiring.lineSize_mm2", units::squareMillimetre)),
        field<Circuit, &Circuit::wiring, &Wiring::protectiveSize>(
            size("wiring.protectiveSize_mm2", units::squareMillimetre)),
        field<Circuit, &Circuit::wiring, &Wiring::protectiveConductor>(
            option<ProtectiveConductor>("wiring.protectiveConductor")),
        field<Circuit, &Circuit::wiring, &Wiring::length>(size("wiring.length_m", units::metre)),
        field<Circuit, &Circuit::wiring, &Wiring::ambient>(temperature("wiring.ambient_degC")),
        field<Circuit, &Circuit::wiring, &Wiring::groupedCircuits>(count("wiring.groupedCircuits")),
        field<Circuit, &Circuit::wiring, &Wiring::insulatedLength>(
            reading("wiring.insulatedLength_m", units::metre)),
        field<Circuit, &Circuit::wiring, &Wiring::parallelConductors>(count("wiring.parallelConductors")),
        field<Circuit, &Circuit::wiring, &Wiring::soilResistivity>(
            size("wiring.soilResistivity_Km_per_W", units::kelvinMetrePerWatt)),
        field<Circuit, &Circuit::load>(reading("load_A", units::ampere)),
        field<Circuit, &Circuit::demand>(reading("demand_A", units::ampere)),
        field<Circuit, &Circuit::deviceSince>(text("deviceSince")),
        field<Circuit, &Circuit::wiringSince>(text("wiringSince")),
        field<Circuit, &Circuit::takenOut>(text("takenOut")),
        field<Circuit, &Circuit::outdoors>(text("outdoors")),
        field<Circuit, &Circuit::generalSockets>(text("generalSockets")),
        field<Circuit, &Circuit::notes>(longText("notes")),
    };
    return fields;
}

template <>
std::span<const Field<Equipment>> fieldsOf<Equipment>() {
    static const std::array fields{
        field<Equipment, &Equipment::circuit>(owner("circuit", RecordKind::Circuit)),
        field<Equipment, &Equipment::name>(text("name")),
        field<Equipment, &Equipment::kind>(option<EquipmentKind>("kind")),
        field<Equipment, &Equipment::count>(count("count")),
        field<Equipment, &Equipment::power>(reading("power_W", units::watt)),
        field<Equipment, &Equipment::ratedVoltage>(size("ratedVoltage_V", units::volt)),
        field<Equipment, &Equipment::current>(reading("current_A", units::ampere)),
        field<Equipment, &Equipment::powerFactor>(size("powerFactor", units::ratio)),
        field<Equipment, &Equipment::efficiency>(size("efficiency", units::ratio)),
        field<Equipment, &Equipment::startMultiple>(size("startMultiple", units::ratio)),
        field<Equipment, &Equipment::onTime>(size("onTime_min", units::minute)),
        field<Equipment, &Equipment::offTime>(reading("offTime_min", units::minute)),
        field<Equipment, &Equipment::plugFuse>(size("plugFuse_A", units::ampere)),
        field<Equipment, &Equipment::fixed>(text("fixed")),
        field<Equipment, &Equipment::since>(text("since")),
        field<Equipment, &Equipment::notes>(longText("notes")),
    };
    return fields;
}

template <>
std::span<const Field<Visit>> fieldsOf<Visit>() {
    static const std::array fields{
        field<Visit, &Visit::site>(owner("site", RecordKind::Site)),
        field<Visit, &Visit::label>(text("label")),
        field<Visit, &Visit::kind>(option<VisitKind>("kind")),
        field<Visit, &Visit::state>(option<VisitState>("state")),
        field<Visit, &Visit::started>(text("started")),
        field<Visit, &Visit::ended>(text("ended")),
        field<Visit, &Visit::inspector>(text("inspector")),
        field<Visit, &Visit::ruleSet>(text("ruleSet")),
        field<Visit, &Visit::ruleSetRevision>(text("ruleSetRevision")),
        field<Visit, &Visit::extent>(longText("extent")),
        field<Visit, &Visit::limitations>(longText("limitations")),
        field<Visit, &Visit::conductorTemperature>(temperature("conductorTemperature_degC")),
        field<Visit, &Visit::nextDue>(text("nextDue")),
        field<Visit, &Visit::notes>(longText("notes")),
    };
    return fields;
}

template <>
std::span<const Field<Instrument>> fieldsOf<Instrument>() {
    static const std::array fields{
        field<Instrument, &Instrument::visit>(owner("visit", RecordKind::Visit)),
        field<Instrument, &Instrument::name>(text("name")),
        field<Instrument, &Instrument::serial>(text("serial")),
        field<Instrument, &Instrument::measures>(text("measures")),
        field<Instrument, &Instrument::calibrationDue>(text("calibrationDue")),
        field<Instrument, &Instrument::continuityUncertainty>(
            size("continuityUncertainty_percent", units::percent)),
        field<Instrument, &Instrument::insulationUncertainty>(
            size("insulationUncertainty_percent", units::percent)),
        field<Instrument, &Instrument::loopUncertainty>(size("loopUncertainty_percent", units::percent)),
        field<Instrument, &Instrument::residualTimeUncertainty>(
            size("residualTimeUncertainty_percent", units::percent)),
        field<Instrument, &Instrument::electrodeUncertainty>(
            size("electrodeUncertainty_percent", units::percent)),
        field<Instrument, &Instrument::currentUncertainty>(
            size("currentUncertainty_percent", units::percent)),
        field<Instrument, &Instrument::continuityFrom>(size("continuityFrom_ohm", units::ohm)),
        field<Instrument, &Instrument::loopFrom>(size("loopFrom_ohm", units::ohm)),
        field<Instrument, &Instrument::insulationTo>(size("insulationTo_Mohm", units::megohm)),
        field<Instrument, &Instrument::currentTo>(size("currentTo_A", units::ampere)),
    };
    return fields;
}

template <>
std::span<const Field<SupplyReading>> fieldsOf<SupplyReading>() {
    using R = SupplyReading;
    static const std::array fields{
        field<R, &R::visit>(owner("visit", RecordKind::Visit)),
        field<R, &R::supply>(owner("supply", RecordKind::Supply)),
        field<R, &R::externalLoopImpedance>(reading("externalLoopImpedance_ohm", units::ohm)),
        field<R, &R::neutralLoopImpedance>(reading("neutralLoopImpedance_ohm", units::ohm)),
        field<R, &R::prospectiveFaultCurrent>(reading("prospectiveFaultCurrent_kA", units::kiloampere)),
        field<R, &R::electrodeResistance>(reading("electrodeResistance_ohm", units::ohm)),
        field<R, &R::voltage>(reading("voltage_V", units::volt)),
        field<R, &R::polarity>(option<TestOutcome>("polarity")),
        field<R, &R::phaseSequence>(option<TestOutcome>("phaseSequence")),
        field<R, &R::remark>(text("remark")),
    };
    return fields;
}

template <>
std::span<const Field<BoardReading>> fieldsOf<BoardReading>() {
    using R = BoardReading;
    static const std::array fields{
        field<R, &R::visit>(owner("visit", RecordKind::Visit)),
        field<R, &R::board>(owner("board", RecordKind::Board)),
        field<R, &R::loopImpedance>(reading("loopImpedance_ohm", units::ohm)),
        field<R, &R::neutralLoopImpedance>(reading("neutralLoopImpedance_ohm", units::ohm)),
        field<R, &R::prospectiveFaultCurrent>(reading("prospectiveFaultCurrent_kA", units::kiloampere)),
        field<R, &R::electrodeResistance>(reading("electrodeResistance_ohm", units::ohm)),
        field<R, &R::polarity>(option<TestOutcome>("polarity")),
        field<R, &R::phaseSequence>(option<TestOutcome>("phaseSequence")),
        field<R, &R::residualTime>(reading("residualTime_ms", units::millisecond)),
        field<R, &R::residualTimeFive>(reading("residualTimeFive_ms", units::millisecond)),
        field<R, &R::residualHalf>(option<TestOutcome>("residualHalf")),
        field<R, &R::remark>(text("remark")),
    };
    return fields;
}

template <>
std::span<const Field<CircuitReading>> fieldsOf<CircuitReading>() {
    using R = CircuitReading;
    static const std::array fields{
        field<R, &R::visit>(owner("visit", RecordKind::Visit)),
        field<R, &R::circuit>(owner("circuit", RecordKind::Circuit)),
        field<R, &R::ringLine>(reading("ringLine_ohm", units::ohm)),
        field<R, &R::ringNeutral>(reading("ringNeutral_ohm", units::ohm)),
        field<R, &R::ringProtective>(reading("ringProtective_ohm", units::ohm)),
        field<R, &R::continuity>(reading("continuity_ohm", units::ohm)),
        field<R, &R::insulationLive>(reading("insulationLive_Mohm", units::megohm)),
        field<R, &R::insulationEarth>(reading("insulationEarth_Mohm", units::megohm)),
        field<R, &R::polarity>(option<TestOutcome>("polarity")),
        field<R, &R::loopImpedance>(reading("loopImpedance_ohm", units::ohm)),
        field<R, &R::prospectiveFaultCurrent>(reading("prospectiveFaultCurrent_kA", units::kiloampere)),
        field<R, &R::residualTime>(reading("residualTime_ms", units::millisecond)),
        field<R, &R::residualTimeFive>(reading("residualTimeFive_ms", units::millisecond)),
        field<R, &R::residualHalf>(option<TestOutcome>("residualHalf")),
        field<R, &R::residualButton>(option<TestOutcome>("residualButton")),
        field<R, &R::measuredLoad>(reading("measuredLoad_A", units::ampere)),
        field<R, &R::remark>(text("remark")),
    };
    return fields;
}

template <>
std::span<const Field<InspectionOutcome>> fieldsOf<InspectionOutcome>() {
    using R = InspectionOutcome;
    static const std::array fields{
        field<R, &R::visit>(owner("visit", RecordKind::Visit)),
        field<R, &R::item>(text("item")),
        field<R, &R::result>(option<InspectionResult>("result")),
        field<R, &R::remark>(text("remark")),
    };
    return fields;
}

template <>
std::span<const Field<Observation>> fieldsOf<Observation>() {
    using R = Observation;
    static const std::array fields{
        field<R, &R::visit>(owner("visit", RecordKind::Visit)),
        field<R, &R::board>(mention("board", RecordKind::Board)),
        field<R, &R::circuit>(mention("circuit", RecordKind::Circuit)),
        field<R, &R::grade>(option<Grade>("grade")),
        field<R, &R::text>(longText("text")),
        field<R, &R::place>(text("place")),
        field<R, &R::action>(longText("action")),
        field<R, &R::byWhen>(text("byWhen")),
        field<R, &R::whoActs>(text("whoActs")),
        field<R, &R::putRight>(text("putRight")),
    };
    return fields;
}

template <>
std::span<const Field<Photo>> fieldsOf<Photo>() {
    static const std::array fields{
        field<Photo, &Photo::observation>(owner("observation", RecordKind::Observation)),
        field<Photo, &Photo::digest>(text("digest")),
        field<Photo, &Photo::mediaType>(text("mediaType")),
        field<Photo, &Photo::caption>(text("caption")),
    };
    return fields;
}

template <>
std::span<const Field<CurrentLog>> fieldsOf<CurrentLog>() {
    static const std::array fields{
        field<CurrentLog, &CurrentLog::reading>(owner("reading", RecordKind::CircuitReading)),
        field<CurrentLog, &CurrentLog::name>(text("name")),
        field<CurrentLog, &CurrentLog::channel>(text("channel")),
        field<CurrentLog, &CurrentLog::digest>(text("digest")),
        field<CurrentLog, &CurrentLog::mediaType>(text("mediaType")),
        field<CurrentLog, &CurrentLog::notes>(longText("notes")),
    };
    return fields;
}

std::string_view recordName(RecordKind kind) {
    std::string_view name;
    withRecordOf(kind, [&](auto record) { name = RecordTraits<decltype(record)>::name; });
    return name;
}

const FieldInfo* fieldInfo(RecordKind kind, std::string_view key) {
    const FieldInfo* info = nullptr;
    withRecordOf(kind, [&](auto record) {
        for (const auto& candidate : fieldsOf<decltype(record)>())
            if (candidate.info.key == key) info = &candidate.info;
    });
    return info;
}

std::optional<std::string> fieldText(const Installation& installation, RecordKind kind, Id id,
                                     std::string_view key) {
    std::optional<std::string> stored;
    withRecordOf(kind, [&](auto blank) {
        using Record = decltype(blank);
        const Record* row = nullptr;
        if constexpr (std::is_same_v<Record, Site>)
            row = installation.site.id == id ? &installation.site : nullptr;
        else
            row = find(installation.*RecordTraits<Record>::rows, id);
        if (!row) return;
        for (const Field<Record>& candidate : fieldsOf<Record>())
            if (candidate.info.key == key) stored = candidate.get(*row);
    });
    return stored;
}

} // namespace loopwright
