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
    QString html = sentence.toHtmlEscaped();
    html.replace(symbolPattern(), QStringLiteral("<i>\\1</i><sub>\\2\\3</sub>"));
    return html.replace(QStringLiteral("<i>Δ"), QStringLiteral("Δ<i>")); // an operator
}

} // namespace loopwright
