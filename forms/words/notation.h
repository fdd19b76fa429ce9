// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

/// Symbols within sentences: "Z_s 0.54 Ω is within 0.87 Ω." A symbol there is a word with `_` before its
/// subscript; the rest of the sentence is plain text.
namespace loopwright {

/// Without marks: "Zs 0.54 Ω". For titles, menus and screen readers.
QString plainNotation(QString sentence);

/// HTML with subscripts. Nothing else in the sentence is read as HTML.
QString richNotation(const QString& sentence);

} // namespace loopwright
