// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRegularExpression>
#include <QString>

/// Symbols within sentences: "Z_s 0.54 Ω is within 0.87 Ω." A symbol there is a letter with `_` before its
/// subscript, which is letters and digits, joined by commas or points between them, or anything in braces.
/// The rest of the sentence is plain text; longer words before `_` are names that somebody typed.
namespace loopwright {

/// Letter, subscript in braces, subscript without.
const QRegularExpression& symbolPattern();

/// Without marks: "Zs 0.54 Ω". For titles, menus and screen readers.
QString plainNotation(QString sentence);

/// HTML with italic symbols and subscripts. Nothing else in the sentence is read as HTML.
QString richNotation(const QString& sentence);

} // namespace loopwright
