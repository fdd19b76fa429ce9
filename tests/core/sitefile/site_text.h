// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/digest.h"
#include "core/phrases/phrases.h"
#include "core/sitefile/site_file.h"

#include <string>
#include <vector>

namespace loopwright::test {

/// A message in English, for what a failing test prints and for what a refusal must mention.
inline std::string told(const Message& message) {
    const auto known = phrase(message.key);
    std::string text = known ? std::string(known->text) : "?" + std::string(message.key);
    for (std::size_t i = 0; i < message.arguments.size(); ++i) {
        const Argument& argument = message.arguments[i];
        std::string filled;
        if (const auto* name = std::get_if<std::string>(&argument)) filled = *name;
        if (const auto* number = std::get_if<std::int64_t>(&argument)) filled = std::to_string(*number);
        if (const auto* word = std::get_if<Word>(&argument))
            filled = phrase(word->key).value_or(Phrase{}).text;
        const std::string place = "{" + std::to_string(i) + "}";
        if (const auto at = text.find(place); at != std::string::npos) text.replace(at, place.size(), filled);
    }
    return text;
}

inline std::string told(const std::vector<SiteFileProblem>& problems) {
    std::string text;
    for (const SiteFileProblem& problem : problems)
        text += (problem.where.empty() ? "" : problem.where + ": ") + told(problem.what) + "\n";
    return text;
}

inline std::string digestOfText(std::string_view text) {
    return digestOf(std::as_bytes(std::span(text)));
}

inline tl::expected<std::string, Message> noAttachments(std::string_view path) {
    return tl::unexpected(Message{"sitefile.unknown-name", {std::string(path)}});
}
inline std::optional<std::string> noPictures(std::string_view) {
    return std::nullopt;
}

/// A site with one record of most kinds, as a person would write it: names, no ids.
inline const char* const smallSiteText = R"json({
  "loopwright": "site",
  "version": 1,
  "name": "Oakum Row Works",
  "supplies": [{ "earthing": "tn-c-s", "nominalVoltage_V": 230, "fuse": { "family": "88-2", "ratedCurrent_A": 100 } }],
  "boards": [
    { "name": "Main switchboard", "circuits": [{ "way": "3", "use": "distribution", "wiring": { "lineSize_mm2": 25 } }] },
    {
      "name": "Board C",
      "fedFrom": "Main switchboard / 3",
      "circuits": [
        {
          "way": "F1", "name": "Kiln, glaze room", "phases": "L2",
          "device": { "family": "1361", "ratedCurrent_A": 30 },
          "residual": { "fitted": true, "residualCurrent_mA": 30, "type": "A" },
          "wiring": { "lineSize_mm2": 6, "protectiveSize_mm2": "N/A", "length_m": "18.0", "method": "C" },
          "equipment": [{ "name": "Kiln", "power_W": 8500, "onTime_min": 45, "offTime_min": 20 }]
        },
        { "way": "F2", "use": "spare" }
      ]
    }
  ],
  "visits": [
    {
      "label": "2026, periodic", "started": "2026-03-10", "ruleSet": "bs-7671-2018",
      "instruments": [{ "name": "Tester 2" }],
      "supplyReadings": [{ "externalLoopImpedance_ohm": "0.20" }],
      "boardReadings": [{ "board": "Board C", "loopImpedance_ohm": 0.31 }],
      "circuitReadings": [
        { "circuit": "Board C / F1", "insulationEarth_Mohm": ">999", "loopImpedance_ohm": "0.54 (carried)" }
      ],
      "inspection": [{ "item": "intake-sound", "result": "in-order" }],
      "observations": [{ "circuit": "Board C / F1", "grade": "put-right", "text": "The fuse is overloaded." }]
    }
  ]
})json";

inline Installation smallSite() {
    SequentialIds ids;
    return importSite(smallSiteText, ids, noAttachments).value().installation;
}

} // namespace loopwright::test
