// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/shared_inputs.h"

#include "core/physics/loop.h"

#include <algorithm>

namespace loopwright::sums {

Source ruleSource(const SumContext& context, std::string_view purpose) {
    const RuleSet::Clause* clause = context.rules.clause(purpose);
    if (!clause) return {};
    Source source = clause->source;
    source.title = std::string(source.title.view()) + ", " + clause->number;
    return source;
}

tl::expected<const DeviceFamily*, Refusal> madeFamily(const Given& given, const SumContext& context) {
    const DeviceFamily* family = context.tables.deviceFamily(given[deviceFamily]);
    const std::vector<Current> ratings = context.tables.ratings(*family);
    const Current rated = given[ratedCurrent];
    if (std::ranges::find(ratings, rated) != ratings.end()) return family;
    const std::string_view why = ratings.empty() ? "sum.device-without-data" : "sum.device-not-made";
    return tl::unexpected(
        Refusal{std::string(ratedCurrent.key), {why, {family->label, measure(rated, units::ampere)}}});
}

tl::expected<Sourced<Resistance>, Refusal> publishedLoop(const Given& given, const SumContext& context) {
    const auto made = madeFamily(given, context);
    if (!made) return tl::unexpected(made.error());
    const DeviceFamily& family = **made;
    const Current rated = given[ratedCurrent];
    const Time time = given[disconnectionTime];
    const bool isOwnFactor = given[voltageFactor] != context.rules.voltageFactorMin;
    if (!isOwnFactor) {
        auto published = context.tables.permittedLoop(context.rules, given[lineToEarth], family, rated, time);
        if (published) return std::move(*published);
    } else if (const auto operating = context.tables.operatingCurrent(family, rated, time)) {
        return Sourced<Resistance>{
            physics::permittedLoop(given[lineToEarth], given[voltageFactor], operating->value),
            operating->source};
    }
    return tl::unexpected(
        Refusal{std::string(ratedCurrent.key),
                {"sum.device-not-published",
                 {family.label, measure(rated, units::ampere), measure(time, units::second)}}});
}

std::optional<Refusal> refuseUnlike(const Input& one, std::size_t oneCount, const Input& other,
                                    std::size_t otherCount) {
    if (oneCount == otherCount) return std::nullopt;
    return Refusal{std::string(other.key),
                   {"sum.lists-unlike",
                    {std::string(one.key), static_cast<std::int64_t>(oneCount), std::string(other.key),
                     static_cast<std::int64_t>(otherCount)}}};
}

} // namespace loopwright::sums
