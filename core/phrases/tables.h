// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/phrases.h"

/// Marks a text for lupdate, which is told that this is its QT_TRANSLATE_NOOP. Expands to the text alone.
#define LOOPWRIGHT_PHRASE(context, text) text

/// One table of phrases a room, each in its own file; phrases.cpp joins and sorts them.
namespace loopwright::phrase_tables {

std::span<const Phrase> checks();          ///< names and sentences of checks
std::span<const Phrase> checkBelonging();  ///< of load, device and wiring together
std::span<const Phrase> checkAgreement();  ///< of records and readings with each other
std::span<const Phrase> checkOverload();   ///< of overload over time
std::span<const Phrase> checkProtection(); ///< residual types, main conductors, starts
std::span<const Phrase> checkBoards();     ///< of boards as a whole, and of what stands before them
std::span<const Phrase> checkNotes();      ///< why there is no verdict, words and notes of workings
std::span<const Phrase> choices();         ///< words for the model's choices: "choice.earthing.tn-c-s"
std::span<const Phrase> fields();     ///< names of records and fields: "field.circuit.device.ratedCurrent_A"
std::span<const Phrase> units();      ///< why a figure was refused
std::span<const Phrase> model();      ///< why a change was refused, and what changes are called
std::span<const Phrase> rules();      ///< why a rule set was refused
std::span<const Phrase> currentLog(); ///< why a log of a current was not read
std::span<const Phrase> remedy();     ///< what puts an overload right
std::span<const Phrase> siteFile();
std::span<const Phrase> sums();       ///< titles of sums, and why one was not done
std::span<const Phrase> sumFigures(); ///< names of their inputs and results
std::span<const Phrase> workbook();

} // namespace loopwright::phrase_tables
