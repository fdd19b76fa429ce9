// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/remedy.h"

#include "core/assess/visit_records.h"
#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright {
namespace {

/// Checks of load, device and wiring: what a remedy is for.
constexpr std::array<std::string_view, 7> settled{"hidden-overload", "load-device",    "device-wiring",
                                                  "load-wiring",     "conductor-heat", "conventional",
                                                  "plug-fuse"};

bool isSettled(std::string_view check) {
    return std::ranges::find(settled, check) != settled.end();
}
bool fails(const std::optional<Finding>& finding) {
    return finding && finding->verdict == Verdict::Fails;
}
bool isKnown(const std::optional<Finding>& finding) {
    return !finding || finding->verdict != Verdict::CannotTell;
}

/// What fails before and after, and is farther from holding after.
bool failsByMore(const CheckShift& shift) {
    constexpr double alike = 1e-9; // of the limit
    return fails(shift.before) && fails(shift.after) && shift.before->margin && shift.after->margin &&
           *shift.after->margin < *shift.before->margin - alike;
}

/// Families that new devices are fitted from, the most usual first.
constexpr std::array<std::string_view, 5> usualFamilies{"60898-B", "60898-C", "61009-B", "88-2", "88-3"};

template <class Q>
std::string stored(Q value, const Unit& unit, int decimals, Origin origin = Origin::Typed) {
    return formatEntry(toText(Entry<Q>::of(value, decimals, origin), unit));
}

/// A value rounded down to so many decimals of its unit.
double floored(double value, int decimals) {
    const double scale = std::pow(10, decimals);
    return std::floor(value * scale) / scale;
}

class Finder {
  public:
    Finder(const Installation& installation, Id visit, Id circuit, const ReferenceTables& tables,
           const RuleSet& rules)
      : installation_(installation)
      , visit_(visit)
      , id_(circuit)
      , circuit_(*find(installation.circuits, circuit))
      , tables_(tables)
      , rules_(rules)
      , before_(assessCircuit(installation, visit, circuit, tables, rules, Detail::VerdictOnly)) {
        lookAtTheCircuit();
    }

    std::vector<Remedy> found() {
        if (!load_ || !std::ranges::any_of(before_, [](const Finding& finding) {
                return isSettled(finding.check) && finding.verdict == Verdict::Fails;
            }))
            return {};
        otherSetting();
        runInTurns();
        lessLoad();
        otherDevice();
        withoutPlugFuse();
        separateCircuit();
        largerConductor();
        return std::move(remedies_);
    }

  private:
    void lookAtTheCircuit() {
        const Visit* visit = find(installation_.visits, visit_);
        const Board* board = find(installation_.boards, circuit_.board);
        if (!visit || !board) return;
        const VisitRecords records(installation_, *visit, tables_, rules_, Detail::VerdictOnly);
        const CircuitContext context = records.forCircuit(records.forBoard(*board), circuit_);
        Worksheet scratch(phrasing<"load-device">, context, {RecordKind::Circuit, id_});
        if (const auto current = loadCurrent(context, context, scratch))
            load_ = loadOverTime(context, context, *current, scratch);
        capacity_ = wiringCapacity(context, context, scratch);
        rated_ = overloadRating(context, scratch);
        if (rated_) shareInWarmth_ = shareInWarmth(context, *rated_, scratch).value;
        isAdjustable_ = context.family && context.family->adjustable;
        equipment_.assign(context.equipment.begin(), context.equipment.end());
    }

    /// What cannot be told stays so, but a device is chosen only where everything about it is known.
    static bool isInTheWay(RemedyKind kind, const CheckShift& shift) {
        const bool fitsADevice = kind == RemedyKind::OtherDevice || kind == RemedyKind::DeviceAndConductor;
        // What its plate will say is not known yet, and told as still to be found out.
        if (fitsADevice && shift.check == "breaking-capacity" && !isKnown(shift.after)) return false;
        if (shift.isWorse() || failsByMore(shift)) return true;
        if (!isSettled(shift.check)) return false;
        return fails(shift.after) || (fitsADevice && !isKnown(shift.after));
    }
    enum class Worth : std::uint8_t { Nothing, Settles, HoldsThroughout };
    Worth worthOf(RemedyKind kind, const Change& change) const {
        const auto changed = foretold(installation_, visit_, id_, change, tables_);
        if (!changed) return Worth::Nothing;
        const auto shifts = shiftsBetween(
            before_, assessCircuit(*changed, visit_, id_, tables_, rules_, Detail::VerdictOnly));
        if (std::ranges::any_of(shifts, [&](const CheckShift& shift) { return isInTheWay(kind, shift); }))
            return Worth::Nothing;
        const bool stillFails =
            std::ranges::any_of(shifts, [](const CheckShift& shift) { return fails(shift.after); });
        return stillFails ? Worth::Settles : Worth::HoldsThroughout;
    }
    bool add(RemedyKind kind, Change change) {
        auto result = whatIf(installation_, visit_, id_, change, tables_, rules_);
        if (!result) return false;
        Remedy remedy{kind, std::move(change), std::move(result->circuit), std::move(result->elsewhere),
                      true};
        remedy.holdsThroughout =
            std::ranges::none_of(remedy.circuit, [](const CheckShift& shift) { return fails(shift.after); });
        std::erase_if(remedy.circuit,
                      [](const CheckShift& shift) { return !shift.isBetter() && !shift.isWorse(); });
        remedies_.push_back(std::move(remedy));
        return true;
    }
    /// Adds the remedy if it is one.
    bool offer(RemedyKind kind, Change change) {
        return worthOf(kind, change) != Worth::Nothing && add(kind, std::move(change));
    }
    bool isOffered(RemedyKind kind) const {
        return std::ranges::find(remedies_, kind, &Remedy::kind) != remedies_.end();
    }

    /// Candidates of one kind, the smallest first: the first that makes every check hold counts, or else the
    /// first that settles what failed.
    struct Choice {
        std::optional<Change> best;
        int alsoTried = 0;
        bool isMade = false;
    };
    void consider(Choice& choice, RemedyKind kind, Change change) const {
        constexpr int mostBeyondFirst = 8; // larger ones will hardly hold where these do not
        const Worth worth = worthOf(kind, change);
        if (choice.best) choice.isMade = ++choice.alsoTried >= mostBeyondFirst;
        if (worth == Worth::HoldsThroughout || (worth == Worth::Settles && !choice.best))
            choice.best = std::move(change);
        choice.isMade = choice.isMade || worth == Worth::HoldsThroughout;
    }

    Edit setLoad(Current load) const {
        return setField(RecordKind::Circuit, id_, "load_A", stored(load, units::ampere, 1));
    }
    /// With so much left that the check is not even close.
    Current allowed(Current limit) const { return limit * (1 - rules_.closeBand); }

    /// What the wiring carries of one device's current.
    std::optional<Current> carried() const {
        return capacity_ ? std::optional(*capacity_ / legShare(rules_, circuit_)) : std::nullopt;
    }

    /// The lowest whole ampere that carries the load, within the breaker's rating and what the wiring
    /// carries.
    void otherSetting() {
        const auto frame = usable(circuit_.device.ratedCurrent);
        if (!isAdjustable_ || !frame || !rated_) return;
        const Current most = carried() ? std::min(*frame, *carried()) : *frame;
        Choice choice;
        for (const double share : {1 - rules_.closeBand, 1.0}) {
            const Current setting = amperes(std::ceil(load_->load.peak.base() / share));
            if (setting > most || setting == *rated_ || choice.isMade) continue;
            consider(choice, RemedyKind::OtherSetting,
                     {{"remedy.other-setting", {measure(setting, units::ampere)}},
                      {setField(RecordKind::Circuit, id_, "device.thermalSetting_A",
                                stored(setting, units::ampere, 0))}});
        }
        if (choice.best) add(RemedyKind::OtherSetting, std::move(*choice.best));
    }

    /// Only where there is time for each: their runs come to no more than all of it.
    void runInTurns() {
        Current steady, largest;
        std::size_t inTurns = 0;
        Ratio share = 0;
        for (const overload::Piece& piece : load_->pieces) {
            const bool rests = piece.on && piece.off > Time();
            if (!rests) steady += piece.each * piece.count;
            if (!rests) continue;
            largest = std::max(largest, piece.each);
            inTurns += piece.count > 1 ? 2 : 1;
            share += std::max(piece.count, 1.0) * (*piece.on / (*piece.on + piece.off));
        }
        constexpr Ratio allTime = 1 + 1e-9;
        if (inTurns < 2 || share > allTime) return;
        const Current load = amperes(std::ceil((steady + largest).base() * 10 - 1e-6) / 10);
        offer(RemedyKind::RunInTurns,
              {{"remedy.run-in-turns", {measure(load, units::ampere)}}, {setLoad(load)}});
    }

    void lessLoad() {
        if (!rated_) return;
        Current most = allowed(*rated_ * shareInWarmth_);
        if (carried()) most = std::min(most, allowed(*carried()));
        most = amperes(floored(most.base(), 1));
        if (!(most < load_->load.peak) || !(most > Current())) return;
        offer(RemedyKind::LessLoad,
              {{"remedy.less-load",
                {measure(load_->load.peak - most, units::ampere, 1), measure(most, units::ampere, 1)}},
               {setLoad(most)}});
    }

    std::vector<const DeviceFamily*> families() const {
        std::vector<const DeviceFamily*> families;
        const DeviceFamily* own = tables_.deviceFamily(circuit_.device.family);
        const bool isMade = own && !own->legacy && !own->adjustable && own->kind != DeviceKind::PlugFuse;
        if (isMade) families.push_back(own);
        // A residual device that is part of the device goes with it.
        if (own && own->kind == DeviceKind::Rcbo) return families;
        for (const std::string_view key : usualFamilies)
            if (const DeviceFamily* family = tables_.deviceFamily(key); family && family != own)
                families.push_back(family);
        return families;
    }
    /// The edits that fit another device. What its plate will say of its breaking capacity is not known yet.
    std::vector<Edit> fitted(const DeviceFamily& family, Current rated) const {
        std::vector<Edit::Value> values{
            {"device.ratedCurrent_A",
             stored(rated, units::ampere, rated.base() == std::floor(rated.base()) ? 0 : 1)}};
        if (family.key != circuit_.device.family)
            values.insert(values.end(), {{"device.family", family.key}, {"device.breakingCapacity_kA", ""}});
        if (isAdjustable_) // its settings go with it
            for (const char* setting :
                 {"device.thermalSetting_A", "device.thermalDelay_s", "device.shortTimeSetting_A",
                  "device.shortTimeDelay_s", "device.instantaneousSetting_A"})
                values.push_back({setting, ""});
        return {{Edit::Step::Set, RecordKind::Circuit, id_, std::move(values)}};
    }

    Message labelOf(RemedyKind kind, const DeviceFamily& family, Current rated, const Wiring& wiring) const {
        std::vector<Argument> said{family.label, measure(rated, units::ampere)};
        if (kind == RemedyKind::OtherDevice) return {"remedy.other-device", std::move(said)};
        const bool cable = isCable(wiring);
        for (Argument& size : sizesOf(wiring, cable))
            said.push_back(std::move(size));
        return {cable ? "remedy.device-and-cable" : "remedy.device-and-conductor", std::move(said)};
    }

    /// The smallest rating that carries the load and that the wiring carries, of the first family that has
    /// one. `wired` are the edits that make `wiring`.
    void considerDevices(Choice& choice, const Wiring& wiring, RemedyKind kind,
                         const std::vector<Edit>& wired = {}) const {
        for (const DeviceFamily* family : families())
            for (const Current rated : tables_.ratings(*family)) {
                const bool isSame = family->key == circuit_.device.family &&
                                    rated == usable(circuit_.device.ratedCurrent).value_or(Current());
                if (isSame || rated < load_->load.peak) continue;
                Change change{{}, fitted(*family, rated)};
                change.edits.insert(change.edits.end(), wired.begin(), wired.end());
                change.label = labelOf(kind, *family, rated, wiring);
                consider(choice, kind, std::move(change));
                if (choice.isMade) return;
                // The next rating is larger still; one that does not pass because of the wiring never will.
                if (carried() && wired.empty() && rated > *carried()) break;
            }
    }
    void otherDevice() {
        Choice choice;
        considerDevices(choice, circuit_.wiring, RemedyKind::OtherDevice);
        if (choice.best) add(RemedyKind::OtherDevice, std::move(*choice.best));
    }

    /// A piece that is alone on its circuit needs no fuse of its own: it is connected to the circuit, whose
    /// device serves it.
    void withoutPlugFuse() {
        if (equipment_.size() != 1 || circuit_.use != CircuitUse::Fixed) return;
        const Equipment& only = *equipment_.front();
        if (!usable(only.plugFuse) || usable(only.count).value_or(1) > 1) return;
        offer(RemedyKind::WithoutPlugFuse, {{"remedy.without-plug-fuse", {only.name}},
                                            {setField(RecordKind::Equipment, only.id, "plugFuse_A", "N/A")}});
    }

    /// Moves the heaviest piece whose going suffices. Where it is the only one nothing would be left to
    /// judge.
    void separateCircuit() {
        std::vector<const Equipment*> heaviest = equipment_;
        std::ranges::stable_sort(heaviest, std::greater<>{}, [&](const Equipment* equipment) {
            return pieceOf(*equipment).each * pieceOf(*equipment).count;
        });
        for (const Equipment* equipment : heaviest) {
            Change change{{"remedy.separate-circuit", {equipment->name}},
                          {removeRecord(RecordKind::Equipment, equipment->id)}};
            const overload::Piece piece = pieceOf(*equipment);
            const Current left = load_->load.peak - piece.each * piece.count;
            if (equipment_.size() < 2 && !circuit_.load.hasFigure()) return;
            if (circuit_.load.hasFigure()) {
                if (!(left > Current())) continue;
                change.edits.push_back(setLoad(amperes(std::ceil(left.base() * 10) / 10)));
            }
            if (offer(RemedyKind::SeparateCircuit, std::move(change))) return;
        }
    }
    overload::Piece pieceOf(const Equipment& equipment) const {
        const auto at = std::ranges::find(equipment_, &equipment);
        const auto index = static_cast<std::size_t>(at - equipment_.begin());
        return index < load_->pieces.size() ? load_->pieces[index] : overload::Piece{};
    }

    /// The wiring with larger line conductors. Where the protective conductor lies in the same cable it keeps
    /// its proportion, up to the next standard size.
    Wiring enlarged(CrossSection line) const {
        const auto sized = [](CrossSection size) {
            return Entry<CrossSection>::of(size, decimalsOf(size), Origin::Typed);
        };
        Wiring wiring = circuit_.wiring;
        wiring.lineSize = sized(line);
        const auto before = usable(circuit_.wiring.lineSize),
                   protective = usable(circuit_.wiring.protectiveSize);
        if (!before || !protective || wiring.protectiveConductor != ProtectiveConductor::InCable)
            return wiring;
        for (const CrossSection size : tables_.standardSizes(wiring.material))
            if (size >= *protective * (line / *before)) {
                wiring.protectiveSize = sized(size);
                break;
            }
        return wiring;
    }
    /// The edits that make it.
    std::vector<Edit> wired(const Wiring& wiring) const {
        std::vector<Edit::Value> values{{"wiring.lineSize_mm2", sizeText(wiring.lineSize)}};
        if (wiring.protectiveSize != circuit_.wiring.protectiveSize)
            values.push_back({"wiring.protectiveSize_mm2", sizeText(wiring.protectiveSize)});
        return {{Edit::Step::Set, RecordKind::Circuit, id_, std::move(values)}};
    }
    static std::string sizeText(const Entry<CrossSection>& size) {
        return formatEntry(toText(size, units::squareMillimetre));
    }
    /// "10 mm2", or "10 mm2" and "4 mm2" of the cable.
    static std::vector<Argument> sizesOf(const Wiring& wiring, bool cable) {
        std::vector<Argument> sizes{measure(wiring.lineSize.value, units::squareMillimetre)};
        if (cable) sizes.push_back(measure(wiring.protectiveSize.value, units::squareMillimetre));
        return sizes;
    }
    bool isCable(const Wiring& wiring) const {
        return wiring.protectiveSize != circuit_.wiring.protectiveSize;
    }

    /// Up to a few sizes more; beyond them it is another circuit. With another device only where no device
    /// passes by itself.
    void largerConductor() {
        const auto size = usable(circuit_.wiring.lineSize);
        if (!size) return;
        int sizesLeft = 4;
        Choice same, both;
        for (const CrossSection larger : tables_.standardSizes(circuit_.wiring.material)) {
            if (larger <= *size) continue;
            if (sizesLeft-- == 0 || same.isMade) break;
            const Wiring wiring = enlarged(larger);
            const bool cable = isCable(wiring);
            consider(same, RemedyKind::LargerConductor,
                     {{cable ? "remedy.larger-cable" : "remedy.larger-conductor", sizesOf(wiring, cable)},
                      wired(wiring)});
            if (!same.best && !both.isMade && !isOffered(RemedyKind::OtherDevice))
                considerDevices(both, wiring, RemedyKind::DeviceAndConductor, wired(wiring));
        }
        if (same.best)
            add(RemedyKind::LargerConductor, std::move(*same.best));
        else if (both.best)
            add(RemedyKind::DeviceAndConductor, std::move(*both.best));
    }
    static int decimalsOf(CrossSection size) { return size.base() == std::floor(size.base()) ? 0 : 1; }

    const Installation& installation_;
    Id visit_, id_;
    const Circuit& circuit_;
    const ReferenceTables& tables_;
    const RuleSet& rules_;
    std::vector<Finding> before_;
    std::optional<LoadOverTime> load_;
    std::optional<Current> capacity_;
    std::optional<Current> rated_; ///< of the overload release
    Ratio shareInWarmth_ = 1;      ///< of it that is carried in the warmth of the board
    bool isAdjustable_ = false;
    std::vector<const Equipment*> equipment_;
    std::vector<Remedy> remedies_;
};

} // namespace

std::vector<Remedy> remedies(const Installation& installation, Id visit, Id circuit,
                             const ReferenceTables& tables, const RuleSet& rules) {
    if (!find(installation.circuits, circuit)) return {};
    return Finder(installation, visit, circuit, tables, rules).found();
}

} // namespace loopwright
