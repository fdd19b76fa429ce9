// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/own_circuit.h"

#include "core/assess/visit_records.h"
#include "core/checks/capacity.h"
#include "core/checks/load_current.h"
#include "core/remedy/fitting.h"
#include "core/remedy/predicted_reading.h"
#include "core/remedy/trial.h"

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

/// Checks that no conductor helps where this device does not do.
constexpr std::array<std::string_view, 6> ofDevice{"hidden-overload", "load-device", "plug-fuse",
                                                   "early-operation", "motor-start", "breaking-capacity"};
/// Checks that larger conductors may put right.
constexpr std::array<std::string_view, 9> ofConductors{
    "device-wiring", "load-wiring",    "conductor-heat",       "conventional", "loop",
    "disconnection", "adiabatic-line", "adiabatic-protective", "drop"};

bool isOneOf(std::span<const std::string_view> checks, std::string_view check) {
    return std::ranges::find(checks, check) != checks.end();
}

/// How a circuit is: the last two ask for something else.
enum class Fit : std::uint8_t {
    Holds,
    Undecided, ///< nothing fails, but of what conductors decide something cannot be told
    LargerConductors,
    OtherDevice
};

/// Devices and conductors tried on a circuit that is not there yet.
class Layouts {
  public:
    Layouts(const OverloadedCircuit& about, Installation moved, Id circuit)
      : about_(about)
      , site_(std::move(moved))
      , circuit_(*std::ranges::find(site_.circuits, circuit, &Circuit::id))
      , reading_(*std::ranges::find_if(site_.circuitReadings, [&](const CircuitReading& reading) {
          return reading.visit == about.visit && reading.circuit == circuit;
      })) {
        lookAtTheCircuit();
    }

    std::optional<Circuit> smallest() {
        constexpr int mostRatings = 6; // of a family; beyond them it is another kind of device
        if (!load_) return std::nullopt;
        for (const DeviceFamily* family : familiesFor(about_)) {
            int ratingsLeft = mostRatings;
            for (const Current rated : about_.tables.ratings(*family)) {
                if (rated < *load_) continue;
                if (ratingsLeft-- == 0) break;
                if (auto laid = smallestFor(*family, rated)) return laid;
            }
        }
        return std::nullopt;
    }

  private:
    struct Conductors {
        CrossSection line;
        Current capacity;
    };

    /// The standard sizes that fixed wiring may have.
    std::vector<CrossSection> permitted() const {
        const Material material = circuit_.wiring.material;
        const auto least = about_.tables.leastLine(about_.rules.capacityStandard, material);
        auto sizes = about_.tables.standardSizes(material);
        std::erase_if(sizes, [&](CrossSection size) { return least && size < least->value; });
        return sizes;
    }
    void lookAtTheCircuit() {
        load_ = inCircuit(site_, about_.visit, circuit_.id, about_.tables, about_.rules,
                          [&](const CircuitContext& context) -> std::optional<Current> {
                              Worksheet scratch = sheetOf(context);
                              const auto load = loadCurrent(context, context, scratch);
                              for (const CrossSection size : permitted())
                                  if (const auto capacity = capacityOf(context, size))
                                      conductors_.push_back({size, *capacity});
                              return load ? std::optional(load->value) : std::nullopt;
                          });
        for (const Conductors& conductors : conductors_)
            sizes_.push_back(conductors.line);
    }
    static Worksheet sheetOf(const CircuitContext& context) {
        return Worksheet(phrasing<"load-device">, context, {RecordKind::Circuit, context.circuit.id});
    }
    static std::optional<Current> capacityOf(const CircuitContext& context, CrossSection line) {
        Circuit wired = context.circuit;
        wired.wiring.lineSize = planned(line);
        Worksheet scratch = sheetOf(context);
        return wiringCapacity(context, CircuitRecords{wired, nullptr, {}, nullptr}, scratch);
    }

    /// The smallest conductors with which everything holds, or else the smallest with which nothing fails.
    std::optional<Circuit> smallestFor(const DeviceFamily& family, Current rated) {
        constexpr int mostSizes = 5; // from the first on that carries the device
        circuit_.device = {family.key, planned(rated), {}, {}, {}, {}, {}, {}};
        // Of the kind that is there another is taken to break as much; of any other its plate will say.
        if (family.key == about_.circuit.device.family)
            circuit_.device.breakingCapacity = about_.circuit.device.breakingCapacity;
        std::optional<Circuit> undecided;
        int sizesLeft = mostSizes;
        for (const Conductors& conductors : conductors_) {
            if (conductors.capacity < rated) continue;
            if (sizesLeft-- == 0) break;
            lay(conductors.line);
            const Fit fit = found();
            if (fit == Fit::Holds) return circuit_;
            if (fit == Fit::OtherDevice) break;
            if (fit == Fit::Undecided && !undecided) undecided = circuit_;
        }
        return undecided;
    }

    /// The protective conductor keeps the proportion of the circuit that the equipment comes off, up to the
    /// size of the lines; where that is not known it is as large as they are. One without a size of its own,
    /// armour or conduit, stays so.
    void lay(CrossSection line) {
        const Wiring& present = about_.circuit.wiring;
        circuit_.wiring.lineSize = planned(line);
        if (present.protectiveSize.state != EntryState::NotApplicable)
            circuit_.wiring.protectiveSize =
                planned(std::min(line, inProportion(present, line, sizes_).value_or(line)));
        reading_ = predictedReading(site_, about_.visit, circuit_, about_.tables);
    }

    Fit found() const {
        Fit fit = Fit::Holds;
        for (const Finding& finding : assessCircuit(site_, about_.visit, circuit_.id, about_.tables,
                                                    about_.rules, Detail::VerdictOnly))
            fit = std::max(fit, fitBy(finding));
        return fit;
    }
    /// Of load, device and wiring everything has to be known.
    static Fit fitBy(const Finding& finding) {
        const bool isOfDevice = isOneOf(ofDevice, finding.check);
        if (!isOfDevice && !isOneOf(ofConductors, finding.check)) return Fit::Holds;
        const bool isUnknown = finding.verdict == Verdict::CannotTell;
        if (finding.verdict == Verdict::Fails || (isUnknown && isOfLoadDeviceAndWiring(finding.check)))
            return isOfDevice ? Fit::OtherDevice : Fit::LargerConductors;
        return isUnknown && !isOfDevice ? Fit::Undecided : Fit::Holds;
    }

    const OverloadedCircuit& about_;
    Installation site_;
    Circuit& circuit_;        ///< in `site_`
    CircuitReading& reading_; ///< of it, predicted
    std::optional<Current> load_;
    std::vector<Conductors> conductors_; ///< smallest first
    std::vector<CrossSection> sizes_;    ///< theirs
};

template <class Q>
void assume(Entry<Q>& entry) {
    if (entry.hasFigure()) entry.origin = Origin::Assumed;
}

/// The way along which the equipment's present circuit is laid.
Wiring alongside(const Wiring& present) {
    Wiring wiring = present;
    wiring.lineSize = {};
    if (wiring.protectiveSize.state != EntryState::NotApplicable) wiring.protectiveSize = {};
    wiring.parallelConductors = {};
    assume(wiring.length);
    assume(wiring.ambient);
    assume(wiring.groupedCircuits);
    assume(wiring.insulatedLength);
    assume(wiring.soilResistivity);
    return wiring;
}

bool isUntouched(const OverloadedCircuit& about, const Circuit& way) {
    const Installation& site = about.installation;
    const auto isElsewhere = [&](const auto& row) { return row.circuit != way.id; };
    return std::ranges::all_of(site.equipment, isElsewhere) &&
           std::ranges::all_of(site.circuitReadings, isElsewhere) &&
           std::ranges::find(site.boards, way.id, &Board::fedFrom) == site.boards.end();
}

} // namespace

const Circuit* spareWay(const OverloadedCircuit& about) {
    const bool threePhase = about.circuit.phases == Phases::Three;
    for (const Circuit& way : about.installation.circuits) {
        const bool isSpare =
            way.board == about.circuit.board && way.use == CircuitUse::Spare && !way.takenOut;
        if (isSpare && (way.phases == Phases::Three) == threePhase && isUntouched(about, way)) return &way;
    }
    return nullptr;
}

Circuit unlaidCircuit(const OverloadedCircuit& about, const Equipment& equipment, const Circuit* spare,
                      Id fresh) {
    const Circuit& present = about.circuit;
    Circuit own;
    own.id = spare ? spare->id : fresh;
    own.board = present.board;
    own.way = spare ? spare->way : std::string();
    own.name = equipment.name;
    own.section = spare ? spare->section : present.section;
    own.use = present.use == CircuitUse::Distribution ? CircuitUse::Fixed : present.use;
    own.phases = spare ? spare->phases : present.phases;
    own.residual = present.residual;
    own.wiring = alongside(present.wiring);
    own.outdoors = present.outdoors;
    own.generalSockets = present.generalSockets;
    if (spare) own.notes = spare->notes;
    return own;
}

std::optional<Circuit> laidOut(const OverloadedCircuit& about, Installation moved, Id circuit) {
    return Layouts(about, std::move(moved), circuit).smallest();
}

} // namespace loopwright
