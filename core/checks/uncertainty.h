// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/records.h"
#include "core/reference/practice.h"

#include <array>
#include <string_view>

namespace loopwright {

/// How far the readings of one quantity may be off in a visit: the most that one of its instruments records,
/// otherwise the most that IEC 61557 allows.
struct Uncertainty {
    Ratio share = 0;                  ///< of the reading
    const Source* standard = nullptr; ///< nothing where an instrument records it
};
using Uncertainties = std::array<Uncertainty, measurandCount>; ///< in the order of Measurand

/// Where an instrument records how far its readings of one quantity may be off.
struct RecordedUncertainty {
    Entry<Ratio> Instrument::*entry;
    std::string_view field; ///< its key
};
/// In the order of Measurand.
inline constexpr std::array<RecordedUncertainty, measurandCount> recordedUncertainties{{
    {&Instrument::continuityUncertainty, "continuityUncertainty_percent"},
    {&Instrument::insulationUncertainty, "insulationUncertainty_percent"},
    {&Instrument::loopUncertainty, "loopUncertainty_percent"},
    {&Instrument::residualTimeUncertainty, "residualTimeUncertainty_percent"},
    {&Instrument::electrodeUncertainty, "electrodeUncertainty_percent"},
    {&Instrument::currentUncertainty, "currentUncertainty_percent"},
}};

} // namespace loopwright
