// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/notation.h"

#include <QRegularExpression>

namespace loopwright {
namespace {

/// A subscript: letters and digits, joined by commas or points between them, or anything in braces.
const QRegularExpression& subscript() {
    static const QRegularExpression form(QStringLiteral(
        "_(?:\\{([^}]*)\\}|((?:[\\p{L}\\p{N}∆]+)(?:[,.](?=[\\p{L}\\p{N}])[\\p{L}\\p{N}∆]+)*))"));
    return form;
}

} // namespace

QString plainNotation(QString sentence) {
    return sentence.replace(subscript(), QStringLiteral("\\1\\2"));
}

QString richNotation(const QString& sentence) {
    return sentence.toHtmlEscaped().replace(subscript(), QStringLiteral("<sub>\\1\\2</sub>"));
}

} // namespace loopwright
