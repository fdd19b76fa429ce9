// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/prospective.h"
#include "core/checks/surroundings.h"
#include "core/physics/selectivity.h"

#include <algorithm>

namespace loopwright {
namespace {

using physics::CurrentRange;

/// What the check has to know of one of the two devices.
struct Known {
    const DeviceFamily* family = nullptr;
    Current rated;
    Figure<Current> holds;    ///< carried without operating within the conventional time
    Figure<Current> operates; ///< sure to operate it within that time
    const Sourced<physics::DeviceTimes>* times = nullptr;
    std::optional<Current> breakingCapacity;
};

/// Conventional currents of a device: by its settings, or by its family. A family without a non-operating
/// current carries at least what it is rated for.
bool readConventional(const VisitContext& visit, const Device& device, Known& known) {
    if (known.family->adjustable) {
        const Current setting = usable(device.thermalSetting).value_or(known.rated);
        const physics::Spread spread = visit.tables.breakerSpreads(known.rated).value.conventional;
        known.holds.value = setting * spread.low;
        known.operates.value = setting * spread.high;
        return true;
    }
    const auto currents = visit.tables.conventionalCurrents(*known.family, known.rated);
    if (!currents) return false;
    known.holds.value = known.rated * currents->nonOperatingMultiple.value_or(1);
    known.operates.value = known.rated * currents->operatingMultiple;
    return true;
}

/// The device upstream carries less in the warmth of its board.
void warmUp(const VisitContext& visit, const Board& board, Known& upstream, Worksheet& sheet) {
    const Figure<Ratio> share = shareInWarmth(visit, board, upstream.family, upstream.rated, sheet);
    upstream.holds = {upstream.holds.value * share.value, share.bound};
}

/// The own device needs more in the cold of its board.
void coolDown(const BoardContext& context, Known& own, Worksheet& sheet) {
    const auto share = shareInCold(context.tables, context.board, own.family);
    if (!share) sheet.unpublishedBeyond(context.board, "ambient_degC");
    const Bound bound = share ? Bound::Exact : Bound::OrMore;
    own.operates = {own.operates.value * share.value_or(1), bound};
}

/// The record that holds a device, and its keys there.
struct Place {
    RecordKind kind;
    Id owner;
    std::string_view family;
    std::string_view rating;
};

/// What is known of a device, with its rating shown under `symbol`; nothing where too little is, which is
/// noted.
std::optional<Known> knownOf(const VisitContext& visit, const Device& device, const DeviceFamily* family,
                             const Sourced<physics::DeviceTimes>* times, const Place& place,
                             std::string_view symbol, Worksheet& sheet) {
    const auto rated = usable(device.ratedCurrent);
    if (!family) sheet.lacks(place.kind, place.owner, place.family);
    if (!rated) sheet.lacks(place.kind, place.owner, place.rating);
    if (!family || !rated) return std::nullopt;
    sheet.show([&] { return recordedTerm(symbol, device.ratedCurrent, units::ampere); });
    Known known{family, *rated, {}, {}, times, usable(device.breakingCapacity)};
    if (readConventional(visit, device, known)) return known;
    sheet.unpublished(place.kind, place.owner, place.rating);
    return std::nullopt;
}

std::optional<Known> ownDevice(const CircuitContext& context, Worksheet& sheet) {
    auto own = knownOf(context, context.circuit.device, context.family, context.times,
                       {RecordKind::Circuit, context.circuit.id, "device.family", "device.ratedCurrent_A"},
                       "I_n", sheet);
    if (own) coolDown(context, *own, sheet);
    return own;
}

std::optional<Known> deviceUpstream(const CircuitContext& context, Worksheet& sheet) {
    if (!context.feeders.empty()) {
        const Feeder& feeder = context.feeders.front();
        auto upstream =
            knownOf(context, feeder.circuit.device, feeder.family, feeder.times,
                    {RecordKind::Circuit, feeder.circuit.id, "device.family", "device.ratedCurrent_A"},
                    "I_n,up", sheet);
        if (upstream) warmUp(context, feeder.board, *upstream, sheet);
        return upstream;
    }
    const Supply& supply = *context.supply;
    return knownOf(context, supply.fuse, context.tables.deviceFamily(supply.fuse.family), context.supplyTimes,
                   {RecordKind::Supply, supply.id, "fuse.family", "fuse.ratedCurrent_A"}, "I_n,up", sheet);
}

/// The most energy that the device lets through, and at which currents that is promised.
struct LetThrough {
    Sourced<JouleIntegral> most;
    CurrentRange at;
    bool ofItsClass = false; ///< of a breaker whose energy limiting class is taken to be 3
};

/// The class of a breaker counts where it operates at once.
std::optional<LetThrough> breakerLetThrough(const VisitContext& visit, const Known& own) {
    const auto band = visit.tables.instantaneousBand(*own.family, own.rated);
    if (!own.breakingCapacity || !band) return std::nullopt;
    const auto energy = visit.tables.letThrough(*own.family, own.rated, *own.breakingCapacity);
    if (!energy) return std::nullopt;
    return LetThrough{*energy, {own.rated * band->upTo, *own.breakingCapacity}, true};
}

/// Whatever a fuse can break counts, from where it lets through less than `least`. Two gG fuses in the ratio
/// of the standard are told apart at every current: their gates do so for longer times (IEC 60269-1, 5.6),
/// and their energies for shorter ones (IEC 60269-2), both from memory.
std::optional<LetThrough> fuseLetThrough(const VisitContext& visit, const Known& upstream, const Known& own,
                                         JouleIntegral least, Current prospective) {
    const auto from = own.times ? physics::fuseWithinEnergy(own.times->value, least) : std::nullopt;
    if (const auto energy = visit.tables.fuseEnergy(*own.family, own.rated)) {
        const bool inRatio = physics::fusesSelectiveByRatio(upstream.rated, own.rated,
                                                            visit.tables.selectiveFuseRatio().value);
        if (!inRatio && !from) return std::nullopt;
        return LetThrough{{energy->value.mostLetThrough, energy->source},
                          {inRatio ? Current() : *from, prospective}};
    }
    const auto energy = from ? physics::largestFuseEnergy(own.times->value, prospective) : std::nullopt;
    if (!energy) return std::nullopt;
    return LetThrough{{*energy, own.times->source}, {*from, prospective}};
}

/// At which currents only the own device operates, by energy where the device upstream is a fuse of known
/// pre-arcing energy. Nothing where that proves nothing.
std::optional<CurrentRange> byEnergy(const VisitContext& visit, const Known& upstream, const Known& own,
                                     Current prospective, Worksheet& sheet) {
    const auto fuse = visit.tables.fuseEnergy(*upstream.family, upstream.rated);
    if (!fuse) return std::nullopt;
    const auto energy = isFuse(*own.family)
                            ? fuseLetThrough(visit, upstream, own, fuse->value.leastToMelt, prospective)
                            : breakerLetThrough(visit, own);
    if (!energy || !physics::selectiveByEnergy(fuse->value.leastToMelt, energy->most.value) ||
        energy->at.upTo <= energy->at.above || prospective <= energy->at.above)
        return std::nullopt;
    sheet.show([&] {
        return tableTerm("I^{2}t_up", fuse->value.leastToMelt, units::ampereSquaredSecond, fuse->source,
                         {"check.note.least-to-melt", {}});
    });
    sheet.show([&] {
        const auto& [value, source] = energy->most;
        return energy->ofItsClass ? assumedTerm("I^{2}t", value, units::ampereSquaredSecond,
                                                {"check.note.let-through", {}}, source)
                                  : tableTerm("I^{2}t", value, units::ampereSquaredSecond, source,
                                              {"check.note.most-let-through", {}});
    });
    return energy->at;
}

/// Whether anything is published of how long the device holds out against fault currents.
bool holdsOutAgainstFaults(const Known& known) {
    return known.times && std::ranges::any_of(known.times->value.notBefore, [&](const auto& promise) {
               return promise.current > known.holds.value;
           });
}

Message said(std::string_view key, const Known& own, const Known& upstream) {
    return {key,
            {deviceWord(own.family), measure(own.rated, units::ampere), deviceWord(upstream.family),
             measure(upstream.rated, units::ampere)}};
}

/// The currents up to `prospective` at which only the own device operates; the first of the ranges begins
/// with the overloads that the conventional currents tell apart.
std::vector<CurrentRange> provenHere(const Known& upstream, const Known& own,
                                     const std::optional<CurrentRange>& energy, Current prospective) {
    std::vector<CurrentRange> ranges;
    if (upstream.times && own.times)
        ranges = physics::provenSelectivity(upstream.times->value, own.times->value);
    if (energy) ranges = physics::joined(std::move(ranges), *energy);
    ranges = physics::joined(std::move(ranges), {Current(), upstream.holds.value});
    std::erase_if(ranges, [&](const CurrentRange& range) { return range.above >= prospective; });
    return ranges;
}

Measure shown(Current current) {
    return measure(current, current < kiloamperes(1) ? units::ampere : units::kiloampere);
}

/// Where selectivity that is proven for some faults ends, and where it begins again.
Message sayHowFar(const Known& upstream, const Known& own, const std::vector<CurrentRange>& ranges,
                  const Figure<Current>& prospective) {
    const bool mayBeMore = prospective.bound == Bound::OrMore || prospective.bound == Bound::Open;
    const Current limit = ranges.front().upTo;
    if (prospective.value <= limit && !mayBeMore) return said("check.selectivity.holds", own, upstream);
    const bool isBroken = ranges.size() > 1;
    Message partial = said(isBroken ? "check.selectivity.gap" : "check.selectivity.partial", own, upstream);
    partial.arguments.push_back(shown(limit));
    if (isBroken) {
        partial.arguments.push_back(shown(ranges[1].above));
        partial.arguments.push_back(shown(ranges[1].upTo));
    }
    partial.arguments.push_back(measure(prospective, units::kiloampere));
    return partial;
}

/// What is proven of fault currents, once overloads are told apart. Partial selectivity is a grade that the
/// standards know (IEC 60947-2, 2.17.3), and no fault, so that it holds and says how far.
Finding judgeFaults(const CircuitContext& context, const Known& upstream, const Known& own,
                    Worksheet& sheet) {
    const auto prospective = prospectiveCurrent(context, sheet);
    if (!prospective) return sheet.conclude();
    auto last = upstream.times && own.times
                    ? physics::provenUpTo(upstream.times->value, own.times->value, prospective->value)
                    : std::nullopt;
    const auto energy = byEnergy(context, upstream, own, prospective->value, sheet);
    if (energy) last = std::max(last, std::optional(energy->upTo));
    const bool isProven = last && *last > upstream.holds.value;
    if (!isProven && !holdsOutAgainstFaults(upstream))
        return sheet.concludeWith([&] { return said("check.selectivity.overload-only", own, upstream); });
    if (!isProven) {
        sheet.atWorst(Verdict::Close);
        sheet.decide(Verdict::Close);
        return sheet.concludeWith([&] { return said("check.selectivity.no-faults", own, upstream); });
    }
    if (!sheet.isFull()) return sheet.conclude();
    const auto ranges = provenHere(upstream, own, energy, prospective->value);
    sheet.show([&] {
        return computedTerm("I_s", ranges.front().upTo, units::kiloampere,
                            {"check.note.selectivity-limit", {}});
    });
    return sheet.concludeWith([&] { return sayHowFar(upstream, own, ranges, *prospective); });
}

} // namespace

/// The overcurrent device of a circuit against the next one upstream: I_2 ≤ I_nt,up tells overloads apart
/// (conventional currents); beyond that times, and energies of fuses, prove up to which current (IEC 60947-2,
/// annex A; IEC 60269-2; IEC 60364-5-53, 536.4). Where both may operate more goes out than need, which is no
/// danger in itself, so that the worst verdict is close.
Finding checkSelectivity(const CircuitContext& context) {
    Worksheet sheet(phrasing<"selectivity">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.feeders.empty() && !context.supply)
        return sheet.doesNotApply("check.selectivity.nothing-upstream");
    sheet.formula("I_2 ≤ I_nt,up; I_pf ≤ I_s");
    sheet.clause("selectivity");
    const auto own = ownDevice(context, sheet);
    const auto upstream = deviceUpstream(context, sheet);
    if (!own || !upstream) return sheet.conclude();
    sheet.show([&] {
        return computedTerm("I_2", own->operates.value, units::ampere, {"check.note.sure-to-operate", {}});
    });
    sheet.show([&] {
        return computedTerm("I_nt,up", upstream->holds.value, units::ampere, {"check.note.sure-to-hold", {}});
    });
    sheet.compareWithin(0, Relation::AtMost, "I_2", own->operates, upstream->holds, units::ampere);
    if (sheet.verdict() == Verdict::CannotTell) return sheet.conclude();
    if (sheet.verdict() == Verdict::Holds) return judgeFaults(context, *upstream, *own, sheet);
    sheet.atWorst(Verdict::Close);
    return sheet.concludeWith([&] { return said("check.selectivity.close", *own, *upstream); });
}

} // namespace loopwright
