// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/records/form_plan.h"

#include "forms/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <map>

namespace loopwright {
namespace {

using Plan = std::vector<FormSection>;

const std::map<RecordKind, Plan>& plans() {
    static const std::map<RecordKind, Plan> all{
        {RecordKind::Site,
         {{"",
           RecordKind::Site,
           {"name", "description", "address", "client", "premises", "occupancy", "notes"}}}},
        {RecordKind::Supply,
         {{"", RecordKind::Supply, {"earthing", "phases", "nominalVoltage_V", "earthedBy"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Supply fuse and conductors"),
           RecordKind::Supply,
           {"fuse.family", "fuse.ratedCurrent_A", "fuse.breakingCapacity_kA", "tails_mm2",
            "earthingConductor_mm2", "mainBonding_mm2"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Demand"), RecordKind::Supply, {"demand_A"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Read in this visit"),
           RecordKind::SupplyReading,
           {"externalLoopImpedance_ohm", "neutralLoopImpedance_ohm", "prospectiveFaultCurrent_kA",
            "electrodeResistance_ohm", "voltage_V", "polarity", "phaseSequence", "remark"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Notes"), RecordKind::Supply, {"notes"}}}},
        {RecordKind::Board,
         {{"",
           RecordKind::Board,
           {"name", "description", "location", "fedFrom", "phases", "earthing", "ratedCurrent_A",
            "withstandCurrent_kA", "ambient_degC"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Residual device for the whole board"),
           RecordKind::Board,
           {"residual.fitted", "residual.residualCurrent_mA", "residual.type", "residual.delay"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Read in this visit"),
           RecordKind::BoardReading,
           {"loopImpedance_ohm", "neutralLoopImpedance_ohm", "prospectiveFaultCurrent_kA",
            "electrodeResistance_ohm", "polarity", "phaseSequence", "residualTime_ms", "residualTimeFive_ms",
            "residualHalf", "remark"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Notes"), RecordKind::Board, {"notes"}}}},
        {RecordKind::Circuit,
         {{"",
           RecordKind::Circuit,
           {"way", "name", "section", "use", "topology", "phases", "points", "generalSockets", "outdoors",
            "takenOut"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Device"),
           RecordKind::Circuit,
           {"device.family", "device.ratedCurrent_A", "device.breakingCapacity_kA", "residual.fitted",
            "residual.residualCurrent_mA", "residual.type", "residual.delay", "deviceSince"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Settings of an adjustable circuit-breaker"),
           RecordKind::Circuit,
           {"device.thermalSetting_A", "device.thermalDelay_s", "device.shortTimeSetting_A",
            "device.shortTimeDelay_s", "device.instantaneousSetting_A"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Wiring"),
           RecordKind::Circuit,
           {"wiring.description", "wiring.lineSize_mm2", "wiring.protectiveSize_mm2",
            "wiring.protectiveConductor", "wiring.length_m", "wiring.method", "wiring.insulation",
            "wiring.material", "wiring.ambient_degC", "wiring.groupedCircuits", "wiring.insulatedLength_m",
            "wiring.parallelConductors", "wiring.soilResistivity_Km_per_W", "wiringSince"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Load"), RecordKind::Circuit, {"load_A", "demand_A"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Read in this visit"),
           RecordKind::CircuitReading,
           {"measuredLoad_A", "ringLine_ohm", "ringNeutral_ohm", "ringProtective_ohm", "continuity_ohm",
            "insulationLive_Mohm", "insulationEarth_Mohm", "polarity", "loopImpedance_ohm",
            "prospectiveFaultCurrent_kA", "residualTime_ms", "residualTimeFive_ms", "residualHalf",
            "residualButton", "remark"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Notes"), RecordKind::Circuit, {"notes"}}}},
        {RecordKind::Equipment,
         {{"", RecordKind::Equipment, {"name", "kind", "count", "fixed", "plugFuse_A", "since"}},
          {QT_TRANSLATE_NOOP("RecordForm", "What it draws"),
           RecordKind::Equipment,
           {"power_W", "ratedVoltage_V", "current_A", "powerFactor", "efficiency", "startMultiple"}},
          {QT_TRANSLATE_NOOP("RecordForm", "How long it runs"),
           RecordKind::Equipment,
           {"onTime_min", "offTime_min"}},
          {QT_TRANSLATE_NOOP("RecordForm", "Notes"), RecordKind::Equipment, {"notes"}}}},
        {RecordKind::Visit,
         {{"", RecordKind::Visit, {"label", "kind", "started", "ended", "inspector", "ruleSet", "nextDue"}},
          {QT_TRANSLATE_NOOP("RecordForm", "What was looked at"),
           RecordKind::Visit,
           {"extent", "limitations", "conductorTemperature_degC", "notes"}}}},
        {RecordKind::Instrument,
         {{"", RecordKind::Instrument, {"name", "serial", "measures", "calibrationDue"}},
          {QT_TRANSLATE_NOOP("RecordForm", "How far its readings may be off"),
           RecordKind::Instrument,
           {"continuityUncertainty_percent", "insulationUncertainty_percent", "loopUncertainty_percent",
            "residualTimeUncertainty_percent", "electrodeUncertainty_percent", "currentUncertainty_percent"}},
          {QT_TRANSLATE_NOOP("RecordForm", "How far its range goes"),
           RecordKind::Instrument,
           {"continuityFrom_ohm", "loopFrom_ohm", "insulationTo_Mohm", "currentTo_A"}}}},
        {RecordKind::Observation,
         {{"",
           RecordKind::Observation,
           {"grade", "text", "board", "circuit", "place", "action", "byWhen", "whoActs", "putRight"}}}},
        {RecordKind::Photo, {{"", RecordKind::Photo, {"caption"}}}},
        {RecordKind::CurrentLog, {{"", RecordKind::CurrentLog, {"name", "channel", "notes"}}}},
    };
    return all;
}

template <class Record>
std::vector<FieldOption> recordOptions(const SiteView& view, RecordKind kind) {
    std::vector<FieldOption> options;
    for (const Record& row : view.installation.*RecordTraits<Record>::rows)
        options.push_back({row.id.text(), recordTitle(view.installation, kind, row.id)});
    return options;
}

std::vector<FieldOption> deviceFamilies(const SiteView& view) {
    std::vector<FieldOption> options;
    for (const DeviceFamily& family : view.tables->deviceFamilies())
        options.push_back({family.key, text(family.label)});
    return options;
}

std::vector<FieldOption> ruleSetOptions() {
    std::vector<FieldOption> options;
    for (const RuleSet& rules : builtInRuleSets())
        options.push_back({rules.key, text(rules.title)});
    return options;
}

QString firstLine(const std::string& longText) {
    return text(longText).section('\n', 0, 0);
}

} // namespace

std::span<const FormSection> formPlan(RecordKind kind) {
    const auto found = plans().find(kind);
    return found == plans().end() ? std::span<const FormSection>()
                                  : std::span<const FormSection>(found->second);
}

std::span<const RecordKind> belongings(RecordKind kind) {
    static constexpr std::array ofSite{RecordKind::Supply, RecordKind::Board, RecordKind::Visit};
    static constexpr std::array ofCircuit{RecordKind::Equipment};
    static constexpr std::array ofVisit{RecordKind::Instrument};
    switch (kind) {
    case RecordKind::Site:
        return ofSite;
    case RecordKind::Circuit:
        return ofCircuit;
    case RecordKind::Visit:
        return ofVisit;
    default:
        return {};
    }
}

std::vector<FieldOption> fieldOptions(const SiteView& view, RecordKind kind, const FieldInfo& field,
                                      const Words& words) {
    std::vector<FieldOption> options;
    if (field.kind == FieldKind::Option) {
        for (const Choice& choice : field.choices->choices) {
            const std::string phraseKey =
                "choice." + std::string(field.choices->name) + "." + std::string(choice.key);
            options.push_back({std::string(choice.key), words.word(phraseKey)});
        }
    } else if (field.kind == FieldKind::Reference) {
        if (field.references == RecordKind::Board) options = recordOptions<Board>(view, field.references);
        if (field.references == RecordKind::Circuit) options = recordOptions<Circuit>(view, field.references);
        options.insert(options.begin(), {{}, QCoreApplication::translate("RecordForm", "none")});
    } else if (field.key.ends_with(".family")) {
        options = deviceFamilies(view);
        options.insert(options.begin(), {{}, QCoreApplication::translate("RecordForm", "not known")});
    } else if (kind == RecordKind::Visit && field.key == "ruleSet") {
        options = ruleSetOptions();
    }
    return options;
}

QString recordTitle(const Installation& installation, RecordKind kind, Id id) {
    const auto named = [&](const auto& rows, auto&& title) {
        const auto* row = find(rows, id);
        return row ? title(*row) : QString();
    };
    switch (kind) {
    case RecordKind::Site:
        return text(installation.site.name);
    case RecordKind::Supply: {
        const bool several = installation.supplies.size() > 1;
        const auto row = std::ranges::find(installation.supplies, id, &Supply::id);
        const QString supply = QCoreApplication::translate("RecordForm", "Supply");
        return several ? supply + ' ' + QString::number(row - installation.supplies.begin() + 1) : supply;
    }
    case RecordKind::Board:
        return named(installation.boards, [&](const Board& board) {
            const QString name = text(pathOf(installation, board));
            return board.description.empty() ? name : name + ", " + text(board.description);
        });
    case RecordKind::Circuit:
        return named(installation.circuits, [&](const Circuit& circuit) {
            const QString path = text(pathOf(installation, circuit));
            return circuit.way.empty() || circuit.name.empty() ? path : path + ", " + text(circuit.name);
        });
    case RecordKind::Equipment:
        return named(installation.equipment, [](const Equipment& row) { return text(row.name); });
    case RecordKind::Visit:
        return named(installation.visits, [](const Visit& row) { return text(row.label); });
    case RecordKind::Instrument:
        return named(installation.instruments, [](const Instrument& row) { return text(row.name); });
    case RecordKind::Observation:
        return named(installation.observations, [](const Observation& row) { return firstLine(row.text); });
    case RecordKind::Photo:
        return named(installation.photos, [](const Photo& row) { return text(row.caption); });
    case RecordKind::CurrentLog:
        return named(installation.currentLogs, [](const CurrentLog& row) { return text(row.name); });
    case RecordKind::SupplyReading:
    case RecordKind::BoardReading:
    case RecordKind::CircuitReading:
    case RecordKind::InspectionOutcome:
        break;
    }
    return {};
}

} // namespace loopwright
