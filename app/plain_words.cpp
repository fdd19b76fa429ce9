// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plain_words.h"

#include <QRegularExpression>

namespace loopwright {

std::string plainSentence(const Words& words, const Message& message) {
    static const QRegularExpression mark(QStringLiteral("\\b([A-Za-zθ])_(\\w)"));
    return utf8(words.sentence(message).replace(mark, QStringLiteral("\\1\\2")));
}

} // namespace loopwright
