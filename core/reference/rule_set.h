// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/choices.h"
#include "core/phrases/message.h"
#include "core/reference/source.h"
#include "core/units/quantity.h"

#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace loopwright {

/// Which of the two temperature rules for a measured loop decides; the other is shown beside it.
enum class LoopRule : std::uint8_t {
    GuardedLimit,    ///< reading at ambient against the permitted value times `loopGuard`
    CorrectedReading ///< reading corrected to the conductors' operating temperature against the permitted
                     ///< value
};

struct DisconnectionRow {
    Earthing earthing = Earthing::TnS; ///< TnS stands for both TN systems
    Voltage above;                     ///< U0, exclusive
    Voltage upTo;                      ///< U0, inclusive
    Time time;
};

/// The limits of one edition of one country's rules, read from resources/rulesets. A visit is judged by one
/// of them for ever. Values that a published table holds are not repeated here: the rule set names the table
/// and its edition.
struct RuleSet {
    std::string key;      ///< "bs-7671-2018"
    std::string revision; ///< ours: "r1"
    std::string title;
    Voltage nominalVoltage;        ///< line to earth, where the supply does not say
    Ratio voltageFactorMin = 0.95; ///< c_min, for disconnection
    Ratio voltageFactorMax = 1.1;  ///< c_max, for breaking capacity

    std::string loopTableEdition; ///< `edition` of max_zs.csv; empty: computed from the device
    std::string capacityStandard; ///< `standard` of current_capacity.csv
    std::string capacityElse;     ///< the one to turn to for a cable that it has no row for; empty: none
    std::string bondingStandard;  ///< `rules` of bonding_sizes.csv
    std::string ambientStandard;  ///< `standard` of correction_factors.csv, ambient rows

    std::vector<DisconnectionRow> disconnection; ///< final circuits
    Time distributionTn;
    Time distributionTt;
    Current finalThresholdSockets; ///< the table's times hold for socket circuits up to this rating
    Current finalThresholdFixed;   ///< and for circuits of fixed equipment up to this one
    LoopRule loopRule = LoopRule::GuardedLimit;
    Ratio loopGuard = 0.8;
    Temperature testTemperature;               ///< of conductors when nothing else is recorded
    Voltage touchVoltage;                      ///< U_L: R_A I_delta_n must not pass it
    Current additionalProtection;              ///< residual current asked for general sockets
    Current additionalProtectionSocketsUpTo;   ///< rating of socket circuits that it is asked for
    bool additionalProtectionLighting = false; ///< whether it is asked for the lights of a dwelling
    Ratio dropLighting = 0.03;
    Ratio dropOther = 0.05;
    Ratio conventionalFactor = 1.45; ///< I_2 <= factor I_z
    Time adiabaticTime;              ///< up to which no heat is taken to leave a conductor in a fault
    Ratio closeBand = 0.05;          ///< a margin smaller than this share of the limit is "close"
    Ratio ringTolerance = 0.05;      ///< by which r_1 and r_n may differ
    Ratio ringProtectiveTolerance = 0.15;
    Current ringRatedCurrent;
    Current ringLeastCapacity; ///< of each leg, in its installation
    CrossSection ringLeastSize;
    /// Families for which I_n <= I_z is taken to meet I_2 <= conventionalFactor I_z as well.
    std::vector<std::string> conventionalByRating;

    /// Clause numbers by purpose ("overload", "loop", "insulation", ...) for the working's last line.
    struct Clause {
        std::string purpose;
        std::string number;
        Source source;
    };
    std::vector<Clause> clauses;
    const Clause* clause(std::string_view purpose) const;

    /// Where each limit was published, by its key in the JSON file ("loopGuard", "disconnection").
    struct LimitSource {
        std::string limit;
        Source source;
    };
    std::vector<LimitSource> limitSources;
    /// An empty source for a key that there is not.
    Source sourceOf(std::string_view limit) const;

    /// Reads a rule set from JSON text. The refusal names the key that is missing, unknown or wrong.
    static tl::expected<RuleSet, Message> parse(std::string_view json);
};

/// The rule sets built into the program, the default first.
std::vector<RuleSet> builtInRuleSets();
/// The one of that key, or the default when there is none.
const RuleSet& ruleSetFor(std::span<const RuleSet> ruleSets, std::string_view key);

} // namespace loopwright
