// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/notation.h"

namespace loopwright {

const QRegularExpression& symbolPattern() {
    static const QRegularExpression pattern(
        QStringLiteral("(?<![\\p{L}\\p{N}_])(Δ?\\p{L})_(?:\\{([^}]*)\\}|"
                       "([\\p{L}\\p{N}∆]{1,8}(?:[,.][\\p{L}\\p{N}∆]{1,8})*)(?![\\p{L}\\p{N}_]))"));
    return pattern;
}

QString plainNotation(QString sentence) {
    return sentence.replace(symbolPattern(), QStringLiteral("\\1\\2\\3"));
}

QString richNotation(const QString& sentence) {
    return sentence.toHtmlEscaped().replace(symbolPattern(), QStringLiteral("\\1<sub>\\2\\3</sub>"));
}

} // namespace loopwright
