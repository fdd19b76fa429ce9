// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"
#include "forms/words/words.h"

#include <span>
#include <vector>

namespace loopwright {

/// Everything that the cells of one row are made from, looked up once. Valid while `view` is.
struct RowFacts {
    const SiteView& view;
    const Words& words;
    const Circuit& circuit;
    const CircuitReading* reading;        ///< of the view's visit; nullptr: nothing has been read yet
    std::vector<const Finding*> findings; ///< about the circuit, worst first

    bool isSpare() const { return circuit.use == CircuitUse::Spare; }
};

/// The stored form of a field of the row's circuit or of its reading; empty when absent.
std::string storedText(const RowFacts& facts, RecordKind kind, std::string_view field);

} // namespace loopwright
