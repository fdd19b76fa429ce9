// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"
#include "forms/words/words.h"

#include <QString>

/// How places are called and described on the screen, and where a record has its place.
namespace loopwright {

/// "Board C, kiln room and long walk".
QString boardTitle(const Board& board);
/// "F1 Kiln, glaze room".
QString circuitTitle(const Circuit& circuit);
/// Of any record that has a place on the screen; empty when the installation does not have it.
QString titleOf(const Installation& installation, const Subject& subject);

/// The circuit that a record is about: itself, or that of a piece of equipment, an observation or a log; none
/// where there is none.
Id circuitOf(const Installation& installation, Id record);
/// The board that a record stands on: itself, or that of what it is about.
Id boardOf(const Installation& installation, Id record);

/// "Fed from Main switchboard, way 3 · 100 A · Z_db 0.24 Ω · fault 1.0 kA", in notation.
QString boardFacts(const SiteView& view, const Board& board, const Words& words);
/// "Cartridge fuse, BS 1361, 30 A; 4.0 / 1.5 mm² at 40 °C", in notation.
QString circuitFacts(const SiteView& view, const Circuit& circuit, const Words& words);

} // namespace loopwright
