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
/// Checks that ask for a residual device where nothing on the way has a suitable one.
constexpr std::array<std::string_view, 2> ofResidual{"additional-protection", "residual-touch"};

bool isOneOf(std::span<const std::string_view> checks, std::string_view check) {
    return std::ranges::find(checks, check) != checks.end();
}

/// How a circuit is: the last three ask for something else.
enum class Fit : std::uint8_t {
    Holds,
    Undecided, ///< nothing fails, but of what conductors decide something cannot be told
    LargerConductors,
    OtherDevice,
    ResidualDevice
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

    tl::expected<Circuit, Unlaid> smallest() {
        if (!load_) return tl::unexpected(Unlaid::LoadOpen);
        if (conductors_.empty()) return tl::unexpected(Unlaid::WiringOpen);
        for (const DeviceFamily* family : familiesFor(about_))
            if (auto laid = smallestOf(*family)) return std::move(*laid);
        return tl::unexpected(Unlaid::NoneHolds);
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
                              const bool isExact = load && load->bound == Bound::Exact;
                              return isExact ? std::optional(load->value) : std::nullopt;
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

    std::optional<Circuit> smallestOf(const DeviceFamily& family) {
        constexpr int mostRatings = 6; // of a family; beyond them it is another kind of device
        int ratingsLeft = mostRatings;
        for (const Current rated : about_.tables.ratings(family)) {
            if (rated < *load_) continue;
            const bool isLacking = asksForResidual_ && family.kind != DeviceKind::Rcbo;
            if (isLacking || ratingsLeft-- == 0) break;
            const bool wasAsked = asksForResidual_;
            if (auto laid = smallestFor(family, rated)) return laid;
            const bool isNewlyAsked = asksForResidual_ && !wasAsked && family.kind == DeviceKind::Rcbo;
            if (!isNewlyAsked) continue;
            if (auto laid = smallestFor(family, rated)) return laid; // with a more sensitive one
        }
        return std::nullopt;
    }

    /// That of the circuit which the equipment comes off. Where that has none, or will not do, what is part
    /// of the device: the most sensitive that anything asks for, of type A at least (common practice, no
    /// source).
    ResidualDevice residualOf(const DeviceFamily& family) const {
        const ResidualDevice& present = about_.circuit.residual;
        const bool isPart = family.kind == DeviceKind::Rcbo && (asksForResidual_ || !present.fitted);
        if (!isPart) return present;
        constexpr int inMilliamperes = 0;
        ResidualDevice part{true, {}, ResidualType::A, ResidualDelay::General};
        part.residualCurrent =
            Entry<Current>::of(about_.rules.additionalProtection, inMilliamperes, Origin::Typed);
        for (const Equipment& equipment : site_.equipment) {
            if (equipment.circuit != circuit_.id) continue;
            const bool isThree = circuit_.phases == Phases::Three;
            if (const auto* need = about_.tables.residualTypeFor(equipment.kind, isThree))
                part.type = std::max(part.type, need->type);
        }
        return part;
    }

    /// The smallest conductors with which everything holds, or else the smallest with which nothing fails.
    std::optional<Circuit> smallestFor(const DeviceFamily& family, Current rated) {
        constexpr int mostSizes = 5; // from the first on that carries the device
        circuit_.device = {family.key, planned(rated), {}, {}, {}, {}, {}, {}};
        // Of the kind that is there another is taken to break as much; of any other its plate will say.
        if (family.key == about_.circuit.device.family)
            circuit_.device.breakingCapacity = about_.circuit.device.breakingCapacity;
        circuit_.residual = residualOf(family);
        std::optional<Circuit> undecided;
        int sizesLeft = mostSizes;
        for (const Conductors& conductors : conductors_) {
            if (conductors.capacity < rated) continue;
            if (sizesLeft-- == 0) break;
            lay(conductors.line);
            const Fit fit = found();
            if (fit == Fit::Holds) return circuit_;
            asksForResidual_ = asksForResidual_ || fit == Fit::ResidualDevice;
            if (fit == Fit::OtherDevice || fit == Fit::ResidualDevice) break;
            if (fit == Fit::Undecided && !undecided) undecided = circuit_;
        }
        return undecided;
    }

    /// The protective conductor keeps the proportion of the circuit that the equipment comes off, up to the
    /// size of the lines; where that is not known it is as large as they are. Nobody chooses armour or
    /// conduit by its size.
    void lay(CrossSection line) {
        const Wiring& present = about_.circuit.wiring;
        circuit_.wiring.lineSize = planned(line);
        if (isProtectiveAConductor(present) && present.protectiveSize.state != EntryState::NotApplicable)
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
        if (isOneOf(ofResidual, finding.check) && finding.verdict == Verdict::Fails)
            return Fit::ResidualDevice;
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
    bool asksForResidual_ = false;       ///< nothing else will do
};

template <class Q>
void assume(Entry<Q>& entry) {
    if (entry.hasFigure()) entry.origin = Origin::Assumed;
}

/// The way along which the equipment's present circuit is laid. How long a ring is says how far it goes round
/// and back: somewhere halfway.
Wiring alongside(const Circuit& circuit) {
    Wiring wiring = circuit.wiring;
    if (circuit.topology == Topology::Ring && wiring.length.hasFigure()) {
        wiring.length.value = wiring.length.value / 2;
        wiring.length.decimals = std::max<std::uint8_t>(wiring.length.decimals, 1);
    }
    wiring.lineSize = {};
    if (wiring.protectiveSize.state != EntryState::NotApplicable) wiring.protectiveSize = {};
    wiring.parallelConductors = {};
    assume(wiring.length);
    assume(wiring.ambient);
    wiring.groupedCircuits = withOneMore(wiring.groupedCircuits);
    assume(wiring.insulatedLength);
    assume(wiring.soilResistivity);
    return wiring;
}

/// Whether nothing is recorded of it but what it is called and where it is: a device or a note may say that
/// it is kept for something.
bool isBlank(const Circuit& way) {
    const Circuit blank{.id = way.id,
                        .board = way.board,
                        .way = way.way,
                        .name = way.name,
                        .section = way.section,
                        .use = way.use,
                        .phases = way.phases};
    return way == blank;
}

bool isUntouched(const OverloadedCircuit& about, const Circuit& way) {
    const Installation& site = about.installation;
    const auto isElsewhere = [&](const auto& row) { return row.circuit != way.id; };
    return std::ranges::all_of(site.equipment, isElsewhere) &&
           std::ranges::all_of(site.circuitReadings, isElsewhere) &&
           std::ranges::find(site.boards, way.id, &Board::fedFrom) == site.boards.end();
}

} // namespace

namespace {

/// Several single-phase pieces alike are spread over the phases, and stay so.
bool isForThreePhases(const OverloadedCircuit& about, const RecordedPiece& piece) {
    const bool isOneOfOnePhase = piece.isSinglePhase && !(usable(piece.equipment->count).value_or(1) > 1);
    return about.circuit.phases == Phases::Three && !isOneOfOnePhase;
}

Phases phasesOf(const OverloadedCircuit& about, const RecordedPiece& piece, const Circuit* spare) {
    if (spare) return spare->phases;
    const bool isParted = about.circuit.phases == Phases::Three && !isForThreePhases(about, piece);
    return isParted ? Phases::L1 : about.circuit.phases;
}

} // namespace

const Circuit* spareWay(const OverloadedCircuit& about, const RecordedPiece& piece) {
    const bool threePhase = isForThreePhases(about, piece);
    for (const Circuit& way : about.installation.circuits) {
        const bool isSpare = way.board == about.circuit.board && way.use == CircuitUse::Spare && isBlank(way);
        if (isSpare && (way.phases == Phases::Three) == threePhase && isUntouched(about, way)) return &way;
    }
    return nullptr;
}

Entry<Ratio> withOneMore(const Entry<Ratio>& groupedCircuits) {
    Entry<Ratio> more = groupedCircuits;
    if (more.isMissing() || more.state == EntryState::NotApplicable) more = Entry<Ratio>::of(1, 0); // alone
    if (!more.hasFigure()) return more;
    more.value += 1;
    more.origin = Origin::Assumed;
    return more;
}

Circuit unlaidCircuit(const OverloadedCircuit& about, const RecordedPiece& piece, const Circuit* spare,
                      Id fresh) {
    const Circuit& present = about.circuit;
    Circuit own;
    own.id = spare ? spare->id : fresh;
    own.board = present.board;
    own.way = spare ? spare->way : std::string();
    own.name = piece.equipment->name;
    own.section = spare ? spare->section : present.section;
    own.use = present.use == CircuitUse::Distribution ? CircuitUse::Fixed : present.use;
    own.phases = phasesOf(about, piece, spare);
    own.residual = present.residual;
    own.wiring = alongside(present);
    own.outdoors = present.outdoors;
    own.generalSockets = present.generalSockets;
    return own;
}

tl::expected<Circuit, Unlaid> laidOut(const OverloadedCircuit& about, Installation moved, Id circuit) {
    return Layouts(about, std::move(moved), circuit).smallest();
}

} // namespace loopwright
