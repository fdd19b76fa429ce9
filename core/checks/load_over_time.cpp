// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/load_over_time.h"

#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/surroundings.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright {
namespace {

/// The visit for looking something up without writing it down.
VisitContext quiet(const VisitContext& visit) {
    VisitContext unseen = visit;
    unseen.detail = Detail::VerdictOnly;
    return unseen;
}
constexpr CheckPhrasing unsaid = phrasing<"hidden-overload">;

template <class Q>
bool isSilent(const Entry<Q>& entry) {
    return entry.state == EntryState::Missing || entry.state == EntryState::NotApplicable;
}
bool hasDuty(const Equipment& equipment) {
    return !isSilent(equipment.onTime) || !isSilent(equipment.offTime);
}
/// Whether what is recorded of its runs says how it runs: both times and exactly. Where neither is recorded
/// it counts as running without end.
bool isDutyUnknown(const Equipment& equipment) {
    const auto off = equipment.offTime.exact();
    const bool isKnown = usable(equipment.onTime) && off && *off >= Time() && isFinite(*off);
    return hasDuty(equipment) && !isKnown;
}

/// Figures of one piece; its current is 0 where it is not known.
overload::Piece pieceOf(const VisitContext& visit, const Circuit& circuit, const Equipment& equipment) {
    const VisitContext unseen = quiet(visit);
    Worksheet scratch(unsaid, unseen, {RecordKind::Circuit, circuit.id});
    const auto drawn = equipmentCurrent(unseen, circuit, equipment, scratch);
    const double count = usable(equipment.count).value_or(1);
    overload::Piece piece;
    if (drawn && drawn->each.bound == Bound::Exact && isUsable(drawn->each.value)) {
        piece.each = drawn->each.value;
        piece.count = piecesOnOnePhase(circuit, *drawn, count);
    }
    piece.on = usable(equipment.onTime);
    piece.off = usable(equipment.offTime).value_or(Time());
    piece.isDutyUnknown = isDutyUnknown(equipment);
    return piece;
}

Current sumOf(const std::vector<overload::Piece>& pieces) {
    Current sum;
    for (const overload::Piece& piece : pieces)
        sum += piece.each * piece.count;
    return sum;
}

/// Makes them come to the current that counts.
void fit(std::vector<overload::Piece>& pieces, Current current) {
    if (pieces.size() == 1 && pieces.front().each == Current()) pieces.front().each = current;
    const bool allKnown =
        std::ranges::all_of(pieces, [](const overload::Piece& piece) { return piece.each > Current(); });
    const Current sum = sumOf(pieces);
    if (pieces.empty() || !allKnown || !isFinite(sum)) {
        const bool ran = std::ranges::any_of(
            pieces, [](const overload::Piece& piece) { return piece.on || piece.isDutyUnknown; });
        pieces = {{current, 1, std::nullopt, {}, ran}};
        return;
    }
    for (overload::Piece& piece : pieces)
        piece.each = piece.each * (current / sum);
}

void showDuty(const Equipment& equipment, Worksheet& sheet) {
    if (!usable(equipment.onTime) || !usable(equipment.offTime)) return;
    const Message note{"check.note.equipment", {equipment.name}};
    sheet.show([&] { return recordedTerm("t_on", equipment.onTime, units::minute, note); });
    sheet.show([&] { return recordedTerm("t_off", equipment.offTime, units::minute, note); });
}

bool isInGround(InstallationMethod method) {
    return method == InstallationMethod::D1 || method == InstallationMethod::D2;
}

/// Time constants by the heat balance at I_z. Where a row is missing nothing bounds them, and they stay.
void setConstants(const CircuitContext& context, Current each, overload::Conductor& conductor) {
    const Wiring& wiring = context.circuit.wiring;
    const ReferenceTables& tables = context.tables;
    const auto size = usable(wiring.lineSize);
    if (!size) return;
    const auto cold = tables.conductorResistance(wiring.material, *size);
    const auto constants = tables.conductorConstants(wiring.material);
    if (!cold || !constants) return;
    const double coefficient = tables.temperatureCoefficient(wiring.material).value;
    const ResistancePerLength resistance =
        cold->value * (1 + coefficient * (conductor.limit - celsius(20)).base());
    const TemperatureDifference rise = conductor.limit - conductor.ambient;
    const double heat = constants->value.volumetricHeat.base() * size->base();
    conductor.quick = overload::timeConstant(heat, rise, each, resistance);
    const auto around = tables.heatAroundConductor(wiring.insulation, *size);
    const bool isBuried = isInGround(wiring.method) || !wiring.insulatedLength.isMissing();
    if (around && !isBuried)
        conductor.slow = overload::timeConstant(heat + around->value, rise, each, resistance);
}

} // namespace

LoadOverTime loadOverTime(const VisitContext& visit, const CircuitRecords& records,
                          const Figure<Current>& current, Worksheet& sheet) {
    LoadOverTime result{current, {}, {}};
    for (const Equipment* equipment : records.equipment) {
        result.pieces.push_back(pieceOf(visit, records.circuit, *equipment));
        showDuty(*equipment, sheet);
    }
    fit(result.pieces, current.value);
    result.load = overload::loadOf(result.pieces);
    return result;
}

std::optional<LoadOverTime> loadAbove(Current rated, const VisitContext& visit, const Circuit& circuit,
                                      const Equipment& equipment) {
    overload::Piece piece = pieceOf(visit, circuit, equipment);
    if (!(piece.each > rated)) return std::nullopt;
    piece.count = 1;
    LoadOverTime result{{piece.each}, {piece}, {}};
    result.load = overload::loadOf(result.pieces);
    return result;
}

std::optional<Current> overloadRating(const CircuitRecords& records, Worksheet& sheet) {
    const Circuit& circuit = records.circuit;
    if (records.family && records.family->adjustable && circuit.device.thermalSetting.hasFigure())
        return sheet.exact("I_r", circuit, circuit.device.thermalSetting, "device.thermalSetting_A");
    return ratedCurrent(records, sheet);
}

std::optional<overload::Conductor> conductorOf(const CircuitContext& context, Current capacity,
                                               bool constants, Worksheet& sheet) {
    const Wiring& wiring = context.circuit.wiring;
    const auto limit = context.tables.conductorLimit(wiring.insulation);
    const Temperature ambient =
        usable(wiring.ambient).value_or(context.tables.referenceAmbient(wiring.method));
    if (!limit || !(ambient < limit->value)) {
        sheet.unpublished(context.circuit, "wiring.ambient_degC");
        return std::nullopt;
    }
    sheet.show([&] { return tableTerm("θ_max", limit->value, units::celsius, limit->source); });
    constexpr Time atOnce = milliseconds(1);
    overload::Conductor conductor{ambient, limit->value, capacity, atOnce, {}, {}};
    if (constants) setConstants(context, capacity / usable(wiring.parallelConductors).value_or(1), conductor);
    conductor.capacity = capacity / legShare(context.rules, context.circuit);
    conductor.life = context.tables.insulationLife(wiring.insulation).value;
    conductor.coefficient = context.tables.temperatureCoefficient(wiring.material).value;
    return conductor;
}

namespace {

/// The bands of the releases that are not heat's business, in multiples of the overload rating.
struct QuickReleases {
    std::optional<InstantaneousBand> instantaneous;
    std::optional<InstantaneousBand> shortTime;
};

/// Those of an adjustable breaker lie about its settings (IEC 60947-2). One that nobody recorded may be set
/// anywhere above the overload release, so nothing keeps it from operating there, and nothing makes it.
QuickReleases adjusted(const VisitContext& visit, const Device& device, Current rated) {
    const auto [spreads, source] = visit.tables.breakerSpreads(rated);
    const InstantaneousBand anywhere{1, std::numeric_limits<double>::infinity(), source};
    QuickReleases releases;
    if (const auto setting = usable(device.instantaneousSetting)) {
        releases.instantaneous = setBand(*setting, rated, spreads.instantaneous, source);
        releases.instantaneous->within = spreads.instantaneousTime;
    } else if (device.instantaneousSetting.state != EntryState::NotApplicable) {
        releases.instantaneous = anywhere;
    }
    if (const auto setting = usable(device.shortTimeSetting)) {
        releases.shortTime = setBand(*setting, rated, spreads.shortTimeCurrent, source);
        const auto delay = device.shortTimeDelay.exact();
        if (delay) {
            releases.shortTime->notBefore = *delay * spreads.shortTimeDelay.low;
            releases.shortTime->within = *delay * spreads.shortTimeDelay.high;
        } else {
            releases.shortTime->upTo = anywhere.upTo;
        }
    }
    return releases;
}

QuickReleases quickReleases(const VisitContext& visit, const DeviceFamily& family, const Device& device,
                            Current rated) {
    if (family.adjustable) return adjusted(visit, device, rated);
    return {visit.tables.instantaneousBand(family, rated), std::nullopt};
}

} // namespace

std::optional<overload::Question> overloadQuestion(const VisitContext& visit, const DeviceFamily& family,
                                                   const Device& device, Current rated,
                                                   const overload::Load& load) {
    const auto delay = family.adjustable ? usable(device.thermalDelay) : std::nullopt;
    const auto frame = family.adjustable ? usable(device.ratedCurrent) : std::nullopt;
    const ThermalDevice* thermal = visit.tables.thermalDevice(family, rated, delay, frame);
    if (!thermal) return std::nullopt;
    const auto quick = quickReleases(visit, family, device, rated);
    return overload::Question{*thermal,       rated,        quick.instantaneous,
                              load,           std::nullopt, visit.tables.band(Band::DeviceShift).value,
                              quick.shortTime};
}

std::optional<overload::Question> ownOverloadQuestion(const CircuitContext& context, Current rated,
                                                      const overload::Load& load, Worksheet& sheet) {
    auto question = overloadQuestion(context, *context.family, context.circuit.device, rated, load);
    if (!question) return std::nullopt;
    const Figure<Ratio> warmth = shareInWarmth(context, context.board, context.family, rated, sheet);
    question->inWarmth.reset();
    if (warmth.bound == Bound::Exact || warmth.bound == Bound::OrMore) question->inWarmth = warmth.value;
    question->inCold = shareInCold(context.tables, context.board, context.family);
    return question;
}

Term earliestInWarmth(const overload::Question& question) {
    return assumedTerm("I_d", question.rated * question.inWarmth.value_or(1), units::ampere,
                       {"check.note.earliest-in-warmth", {}});
}

Term latestInCold(const overload::Question& question) {
    if (!question.inCold)
        return assumedTerm("C_a", Ratio(1), units::ratio, {"check.note.cold-not-published", {}});
    return assumedTerm("C_a", *question.inCold, units::ratio, {"check.note.latest-in-cold", {}});
}

std::optional<PlugFuseOverload> worstOnPlugFuse(const CircuitContext& context) {
    constexpr int mostAsked = 64;
    const DeviceFamily* family = context.tables.deviceFamily("1362");
    std::optional<PlugFuseOverload> worst;
    int asked = 0;
    for (const Equipment* equipment : context.equipment) {
        const auto rated = usable(equipment->plugFuse);
        if (!rated || !family || asked >= mostAsked) continue;
        auto load = loadAbove(*rated, context, context.circuit, *equipment);
        if (!load) continue;
        if (worst && load->current.value / *rated <= worst->load.current.value / worst->rated) continue;
        ++asked;
        const auto question = overloadQuestion(context, *family, {}, *rated, load->load);
        if (question && !overload::sureToOperate(*question).operates())
            worst = PlugFuseOverload{equipment, family, *rated, std::move(*load)};
    }
    return worst;
}

const Equipment* onUnknownPlugFuse(const CircuitContext& context) {
    const DeviceFamily* family = context.tables.deviceFamily("1362");
    for (const Equipment* equipment : context.equipment) {
        const auto rated = usable(equipment->plugFuse);
        if (!rated || (family && context.tables.conventionalCurrents(*family, *rated))) continue;
        if (loadAbove(*rated, context, context.circuit, *equipment)) return equipment;
    }
    return nullptr;
}

std::optional<OverloadAnswer> overloadAnswer(const CircuitContext& context) {
    const VisitContext unseen = quiet(context);
    Worksheet scratch(unsaid, unseen, {RecordKind::Circuit, context.circuit.id});
    const auto current = loadCurrent(unseen, context, scratch);
    const auto rated = overloadRating(context, scratch);
    if (!current || !rated || !context.family || !isUsable(current->value)) return std::nullopt;
    LoadOverTime load = loadOverTime(unseen, context, *current, scratch);
    auto question = ownOverloadQuestion(context, *rated, load.load, scratch);
    if (!question) return std::nullopt;
    if (const auto capacity = wiringCapacity(unseen, context, scratch))
        question->conductor = conductorOf(context, *capacity, true, scratch);
    const overload::HiddenOverload answer = overload::answer(*question);
    return OverloadAnswer{std::move(load), question->rated,    &question->device, question->conductor,
                          answer,          question->inWarmth, question->inCold};
}

std::optional<overload::LoggedQuestion> loggedQuestion(const CircuitContext& context) {
    const VisitContext unseen = quiet(context);
    Worksheet scratch(unsaid, unseen, {RecordKind::Circuit, context.circuit.id});
    const auto rated = overloadRating(context, scratch);
    if (!rated || !context.family) return std::nullopt;
    const overload::Load none; // what flowed takes its place
    const auto asked = ownOverloadQuestion(context, *rated, none, scratch);
    if (!asked) return std::nullopt;
    overload::LoggedQuestion question{asked->device,    asked->rated,    asked->instantaneous, std::nullopt,
                                      asked->shortTime, asked->inWarmth, asked->inCold};
    if (const auto capacity = wiringCapacity(unseen, context, scratch))
        question.conductor = conductorOf(context, *capacity, true, scratch);
    return question;
}

Measure spanOf(Time time) {
    const Unit& unit = time < minutes(2) ? units::second : time < hours(2) ? units::minute : units::hour;
    return measure(time, unit);
}

namespace {

/// To two digits; `round` is given how many units of the second there are.
template <class Round>
Measure inTwoDigits(Time time, Round round) {
    Measure span = spanOf(time);
    if (!(span.value > 0) || !std::isfinite(span.value)) return span;
    const int ten = static_cast<int>(std::floor(std::log10(span.value))) - 1; // of the second digit
    const double digits = round(span.value / std::pow(10, ten));
    span.value = digits * std::pow(10, ten);
    const bool endsInZero = std::fmod(digits, 10) == 0;
    span.decimals = std::max(0, -ten - (endsInZero ? 1 : 0));
    return span;
}
constexpr double hair = 1e-9; // what arithmetic may have added to a round figure

} // namespace

Measure noLessThan(Time time) {
    return inTwoDigits(time, [](double digits) { return std::floor(digits * (1 + hair)); });
}

Measure noMoreThan(Time time) {
    return inTwoDigits(time, [](double digits) { return std::ceil(digits * (1 - hair)); });
}

} // namespace loopwright
